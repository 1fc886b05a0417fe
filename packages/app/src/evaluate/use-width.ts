import { type RefObject, useLayoutEffect, useRef, useState } from 'react';

/** The width of an element in whole pixels, never below `least`; the element it must be put on comes with it. */
export function useWidth(least: number): readonly [RefObject<HTMLDivElement | null>, number] {
  const host = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(least);
  useLayoutEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = () => setWidth(Math.max(least, Math.floor(element.clientWidth)));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [least]);
  return [host, width];
}
