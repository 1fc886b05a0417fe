import {
  heightAdvice,
  type PeopleRange,
  type Posture,
  peopleRanges,
  reachOfBench,
} from '@evenhand/core/develop';
import type { Edit } from '@evenhand/core/ground/edit';
import type { KeptWork } from '@evenhand/core/ground/study';
import { CheckedField } from '../../define/checked-field.tsx';
import { readNumber } from '../../define/field-numbers.ts';
import { type BenchFields, benchOf, changeBench } from './bench-of.ts';
import { type GridStep, gridSteps } from './plan-geometry.ts';

type Take = (edit: Edit | undefined) => void;
const kinds = { precision: 'precise', light: 'light', heavy: 'heavy' } as const;

/** For whom the bench is laid out, at which height, how large it is, and the grid of the drawing. */
export function PlanChoices(props: {
  readonly kept: KeptWork;
  readonly take: Take;
  readonly grid: GridStep;
  readonly onGrid: (grid: GridStep) => void;
}) {
  const { kept, take, grid, onGrid } = props;
  const bench = benchOf(kept.work);
  const reach = reachOfBench(kept.work.bench);
  const set = (to: BenchFields) => take(changeBench(kept, to));
  const size = readNumber({ least: 100, most: 5000 });
  return (
    <div className="plan-choices">
      <Choice
        label="Laid out for"
        value={reach.people}
        options={Object.entries(peopleRanges).map(([id, { name }]) => [id, name])}
        onChange={(value) => set({ people: value as PeopleRange })}
      />
      <Choice
        label="They"
        value={reach.posture}
        options={[
          ['sitting', 'sit'],
          ['standing', 'stand'],
        ]}
        onChange={(value) => set({ posture: value as Posture })}
      />
      <Choice
        label="Work"
        value={bench.kindOfWork ?? 'light'}
        options={Object.entries(kinds)}
        onChange={(value) => set({ kindOfWork: value as keyof typeof kinds })}
      />
      <HeightChoice kept={kept} set={set} />
      <CheckedField
        label="Bench width"
        unit="mm"
        value={String(bench.width)}
        read={size}
        onCommit={(width) => set({ width })}
      />
      <CheckedField
        label="Depth"
        unit="mm"
        value={String(bench.depth)}
        read={size}
        onCommit={(depth) => set({ depth })}
      />
      <Choice
        label="Grid"
        value={String(grid)}
        options={gridSteps.map((step) => [String(step), `${step} mm`])}
        onChange={(value) => onGrid(Number(value) as GridStep)}
      />
    </div>
  );
}

/** At the elbow of each person, off it, or one height above the floor. */
function HeightChoice(props: { readonly kept: KeptWork; readonly set: (to: BenchFields) => void }) {
  const { kept, set } = props;
  const { height } = benchOf(kept.work);
  const choose = (value: string) => {
    if (value === 'at') return set({ height: null });
    const { fromElbow, smallest, largest } = adviceOf(kept);
    const middle = (fromElbow[0] + fromElbow[1]) / 2;
    const floor = Math.round((smallest.low + largest.high) / 2);
    set({ height: value === 'elbow' ? { from: 'elbow', mm: middle } : { from: 'floor', mm: floor } });
  };
  return (
    <>
      <Choice
        label="Hands work"
        value={height?.from ?? 'at'}
        options={[
          ['at', 'at the elbow of each'],
          ['elbow', 'so far above the elbow'],
          ['floor', 'at one height above the floor'],
        ]}
        onChange={choose}
      />
      {height === undefined ? null : (
        <CheckedField
          label={height.from === 'elbow' ? 'Above the elbow' : 'Above the floor'}
          unit="mm"
          value={String(height.mm)}
          read={readNumber(height.from === 'elbow' ? { least: -500, most: 500 } : { least: 300, most: 2000 })}
          onCommit={(mm) => set({ height: { from: height.from, mm } })}
        />
      )}
    </>
  );
}

export function adviceOf({ work }: KeptWork) {
  const { people, posture } = reachOfBench(work.bench);
  return heightAdvice(work.bench?.kindOfWork ?? 'light', posture, people);
}

function Choice(props: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly (readonly [string, string])[];
  readonly onChange: (value: string) => void;
}) {
  return (
    <label className="step-choice">
      <span className="label">{props.label}</span>
      <select value={props.value} onChange={(event) => props.onChange(event.target.value)}>
        {props.options.map(([value, text]) => (
          <option key={value} value={value}>
            {text}
          </option>
        ))}
      </select>
    </label>
  );
}
