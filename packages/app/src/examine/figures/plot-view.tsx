import type { Trace } from '@evenhand/core/examine';
import type * as Plots from '@observablehq/plot';
import { useEffect, useRef, useState } from 'react';

export type PlotLibrary = typeof Plots;
export type TraceMaker = (() => readonly Trace[]) | undefined;
/** Makes the pieces of a mark, by the index of their data, lead to what they show. */
export type HitMaker = (traces: readonly TraceMaker[]) => Plots.RenderFunction;
export type PlotMaker = (plot: PlotLibrary, width: number, hit: HitMaker) => Plots.PlotOptions;

/** A plot. The page's own style sheet gives it its look, since the policy of the page allows no other. */
export function PlotView(props: {
  readonly make: PlotMaker;
  readonly label: string;
  readonly onTrace: (traces: readonly Trace[]) => void;
}) {
  const { make, label, onTrace } = props;
  const host = useRef<HTMLDivElement>(null);
  const width = useWidth(host);
  const plot = usePlotLibrary();
  const shown = useRef(onTrace);
  shown.current = onTrace;
  useEffect(() => {
    if (host.current === null || typeof plot !== 'object' || width === 0) return;
    const hits = new Map<Element, () => readonly Trace[]>();
    const options = make(plot, width, hitMaker(hits));
    const drawn = plot.plot({ ...options, width, className: 'plot', ariaLabel: label });
    for (const sheet of drawn.querySelectorAll('style')) sheet.remove();
    // The whole is one picture with one name; the names of its parts say nothing and belong to no role.
    for (const part of drawn.querySelectorAll('[aria-label]')) part.removeAttribute('aria-label');
    drawn.setAttribute('role', 'img');
    drawn.addEventListener('click', (event) => {
      const piece = event.target instanceof Element ? event.target.closest('.hit') : null;
      const traces = piece === null ? undefined : hits.get(piece);
      if (traces !== undefined) shown.current(traces());
    });
    host.current.replaceChildren(drawn);
  }, [plot, make, label, width]);
  return (
    <div className="plot-host" ref={host}>
      {plot === 'failed' ? (
        <p className="soft">The plot could not be loaded. The table holds the same figures.</p>
      ) : null}
    </div>
  );
}

function hitMaker(hits: Map<Element, () => readonly Trace[]>): HitMaker {
  return (traces) => (index, scales, values, dimensions, context, next) => {
    const group = next?.(index, scales, values, dimensions, context) ?? null;
    [...(group?.children ?? [])].forEach((child, place) => {
      const made = traces[index[place] ?? -1];
      if (made === undefined) return;
      child.classList.add('hit');
      hits.set(child, made);
    });
    return group;
  };
}

function useWidth(host: React.RefObject<HTMLDivElement | null>): number {
  const [width, setWidth] = useState(0);
  useEffect(() => {
    const element = host.current;
    if (element === null) return;
    const measure = () => setWidth(Math.floor(element.clientWidth));
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, [host]);
  return width;
}

let library: PlotLibrary | undefined;

/** Loaded when the first plot is shown, so that other desks do not wait for it. */
function usePlotLibrary(): PlotLibrary | 'failed' | undefined {
  const [state, setState] = useState<PlotLibrary | 'failed' | undefined>(library);
  useEffect(() => {
    let gone = false;
    import('@observablehq/plot')
      .then((loaded) => {
        library = loaded;
        if (!gone) setState(loaded);
      })
      .catch(() => {
        if (!gone) setState('failed');
      });
    return () => {
      gone = true;
    };
  }, []);
  return state;
}
