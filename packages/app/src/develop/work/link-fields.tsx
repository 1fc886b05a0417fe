import { fail, micros, ok, type Result } from '@evenhand/core/ground/base';
import type { KeptWork, WorkStep } from '@evenhand/core/ground/study';
import { parseTime, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import { CheckedField } from '../../define/checked-field.tsx';
import { fullCellText } from '../../define/readings/cell-text.ts';

type Links = NonNullable<WorkStep['follows']>;

/** The longest machine or process time that a work can hold. */
const longest = 3_600_000_000;

/** Steps that must have ended, each with what a machine or process takes in between. */
export function LinkFields(props: {
  readonly kept: KeptWork;
  readonly step: WorkStep;
  readonly unit: TimeUnit;
  readonly onChange: (follows: Links | null) => void;
}) {
  const { kept, step, unit, onChange } = props;
  const links = step.follows ?? [];
  const nameOf = (id: string) =>
    kept.work.steps.find((other) => other.id === id)?.name ?? `${id} (not there)`;
  const free = kept.work.steps.filter(({ id }) => id !== step.id && !links.some((link) => link.step === id));
  const set = (list: Links) => onChange(list.length === 0 ? null : list);
  return (
    <fieldset className="step-links">
      <legend className="label">Only after</legend>
      {links.map((link, index) => (
        <div className="step-link" key={link.step}>
          <span>{nameOf(link.step)}</span>
          <CheckedField
            label="and machine time of"
            value={link.lag === undefined ? '' : fullCellText(link.lag, unit)}
            placeholder="none"
            unit={timeUnits[unit].symbol}
            read={(text) => readLag(text, unit)}
            onCommit={(lag) =>
              set(links.with(index, lag === 0 ? { step: link.step } : { step: link.step, lag }))
            }
          />
          <button
            type="button"
            className="quiet"
            aria-label={`Not only after ${nameOf(link.step)}`}
            onClick={() => set(links.toSpliced(index, 1))}
          >
            Remove
          </button>
        </div>
      ))}
      {free.length === 0 ? null : (
        <select
          value=""
          aria-label={`${step.name} only after another step`}
          onChange={(event) => set([...links, { step: event.target.value }])}
        >
          <option value="">{links.length === 0 ? 'any time; choose a step …' : 'and after …'}</option>
          {free.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      )}
    </fieldset>
  );
}

function readLag(text: string, unit: TimeUnit): Result<number, string> {
  if (text.trim() === '') return ok(0);
  const time = parseTime(text, unit);
  if (!time.ok) return time;
  if (time.value < 0 || time.value > longest) return fail('Write a time from 0 up to an hour.');
  return ok(micros(time.value));
}
