import type { Figures, MethodReading, Trace } from '@evenhand/core/examine';
import type { TimeUnit } from '@evenhand/core/ground/units';

/** What every part of the figures is given. */
export interface SectionProps {
  readonly reading: MethodReading;
  readonly figures: Figures;
  readonly unit: TimeUnit;
  /** Tables stand open beside the plots. */
  readonly open: boolean;
  readonly onTrace: (traces: readonly Trace[]) => void;
}
