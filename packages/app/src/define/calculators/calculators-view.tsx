import '../../examine/figures/figures.css';
import { CyclesCalculator } from './cycles-calculator.tsx';
import { LearningCalculator } from './learning-calculator.tsx';
import {
  ChartCalculator,
  ObservationsCalculator,
  RoundsCalculator,
  SampledStandardCalculator,
  SeenCalculator,
} from './sampling-calculators.tsx';

/** Small sums of the step that belong to no sheet. Nothing here is kept. */
export function CalculatorsView() {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
    <div className="calculators" tabIndex={0} role="group" aria-label="Calculators">
      <p className="soft">Nothing that is written here is kept in the study.</p>
      <h2>Cycles</h2>
      <CyclesCalculator />
      <h2>Work sampling</h2>
      <ObservationsCalculator />
      <RoundsCalculator />
      <SeenCalculator />
      <ChartCalculator />
      <SampledStandardCalculator />
      <h2>Learning</h2>
      <LearningCalculator />
    </div>
  );
}
