import type { MethodReading } from '@evenhand/core/examine';
import { type DependencyList, useEffect, useMemo, useState } from 'react';

/** Records with up to this many motions are worked out while the page is drawn. Ours. */
const quickMotions = 2000;

/** Something worked out from a record: at once from a short one, after the page has been painted from a long one. */
export function useComputed<Value>(
  reading: MethodReading,
  make: () => Value,
  parts: DependencyList,
): Value | undefined {
  const { left, right } = reading.method;
  const quick = left.items.length + right.items.length <= quickMotions;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what it is made of
  const now = useMemo(() => (quick ? make() : undefined), [quick, ...parts]);
  const [later, setLater] = useState<{ readonly value: Value }>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: as above
  useEffect(() => {
    setLater(undefined);
    if (quick) return;
    const timer = setTimeout(() => setLater({ value: make() }), 30);
    return () => clearTimeout(timer);
  }, [quick, ...parts]);
  return quick ? now : later?.value;
}
