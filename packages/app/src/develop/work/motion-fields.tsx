import { fail, micros, ok, type Result } from '@evenhand/core/ground/base';
import type { KeptWork, StepMotion, WorkStep } from '@evenhand/core/ground/study';
import { motionFactsOf, motionKinds } from '@evenhand/core/ground/tables';
import { parseTime, type TimeUnit, timeNumber, timeUnits } from '@evenhand/core/ground/units';
import { CheckedField } from '../../define/checked-field.tsx';
import { orNone, percentNumber, readNumber, readPercent } from '../../define/field-numbers.ts';
import { fullCellText } from '../../define/readings/cell-text.ts';
import type { StepSource } from '../developed-plain.ts';

/** Moves are found with the method, and what is not marked says nothing: neither is part of a step. */
const kinds = motionKinds.filter((kind) => !['TE', 'TL', 'unmarked'].includes(kind));

/** What the hand does there, motion after motion: the kind, on what, and its time, typed or predicted. */
export function MotionFields(props: {
  readonly kept: KeptWork;
  readonly step: WorkStep;
  readonly source: StepSource | undefined;
  readonly unit: TimeUnit;
  readonly objects: string;
  readonly onChange: (motions: WorkStep['motions']) => void;
}) {
  const { step, onChange } = props;
  const { motions } = step;
  const set = (index: number, motion: StepMotion) => onChange(motions.with(index, motion));
  return (
    <fieldset className="step-motions">
      <legend className="label">Motions, in their order</legend>
      {motions.map((motion, index) => (
        <MotionRow
          // biome-ignore lint/suspicious/noArrayIndexKey: motions of a step have no name but their position
          key={index}
          {...props}
          motion={motion}
          number={index + 1}
          predicted={props.source?.motions[index]}
          onSet={(to) => set(index, to)}
          onUp={index === 0 ? undefined : () => onChange(swapped(motions, index))}
          onRemove={motions.length === 1 ? undefined : () => onChange(motions.toSpliced(index, 1))}
        />
      ))}
      <button
        type="button"
        className="quiet"
        onClick={() => onChange([...motions, { ...objectOf(motions.at(-1)), kind: 'RL' }])}
      >
        Add a motion
      </button>
    </fieldset>
  );
}

function objectOf(motion: StepMotion | undefined): { readonly object?: string } {
  return motion?.object === undefined ? {} : { object: motion.object };
}

function swapped(motions: WorkStep['motions'], index: number): WorkStep['motions'] {
  const [one, other] = [motions[index - 1], motions[index]];
  return one === undefined || other === undefined ? motions : motions.with(index - 1, other).with(index, one);
}

/** The motion with some fields set, or taken away where they are undefined. */
function changed(
  motion: StepMotion,
  to: { readonly [Key in keyof StepMotion]?: StepMotion[Key] | undefined },
): StepMotion {
  const entries = Object.entries({ ...motion, ...to }).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as StepMotion;
}

function MotionRow(props: {
  readonly step: WorkStep;
  readonly motion: StepMotion;
  readonly number: number;
  readonly predicted: StepSource['motions'][number] | undefined;
  readonly unit: TimeUnit;
  readonly objects: string;
  readonly onSet: (motion: StepMotion) => void;
  readonly onUp: (() => void) | undefined;
  readonly onRemove: (() => void) | undefined;
}) {
  const { step, motion, number, predicted, unit, onSet } = props;
  const what = `motion ${number} of ${step.name}`;
  const told = predicted === undefined ? 'predicted' : timeNumber(micros(Math.round(predicted.us)), unit);
  return (
    <div className="motion-row">
      <select
        aria-label={`Kind of ${what}`}
        value={motion.kind}
        onChange={(event) => onSet(changed(motion, { kind: event.target.value as StepMotion['kind'] }))}
      >
        {kinds.map((kind) => (
          <option key={kind} value={kind}>
            {motionFactsOf(kind).name}
          </option>
        ))}
      </select>
      <CheckedField
        bare
        label={`Object of ${what}`}
        value={motion.object ?? ''}
        placeholder="no object"
        list={props.objects}
        read={(text) => ok(text.trim())}
        onCommit={(name) => onSet(changed(motion, { object: name === '' ? undefined : name }))}
      />
      <CheckedField
        bare
        label={`Time of ${what}`}
        value={motion.us === undefined ? '' : fullCellText(motion.us, unit)}
        placeholder={told}
        unit={timeUnits[unit].symbol}
        read={(text) => readMotionTime(text, unit)}
        onCommit={(us) =>
          onSet(us === null ? changed(motion, { us: undefined, spread: undefined }) : changed(motion, { us }))
        }
      />
      <span className="motion-actions">
        <button
          type="button"
          className="quiet"
          disabled={props.onUp === undefined}
          onClick={props.onUp}
          aria-label={`Move ${what} up`}
        >
          Up
        </button>
        <button
          type="button"
          className="quiet"
          disabled={props.onRemove === undefined}
          onClick={props.onRemove}
          aria-label={`Remove ${what}`}
        >
          Remove
        </button>
      </span>
      {motion.us === undefined ? (
        <p className="soft">{predicted?.words ?? 'The time is predicted.'}</p>
      ) : (
        <CheckedField
          label="Typed; may err by"
          value={percentNumber(motion.spread ?? 0)}
          unit="%"
          read={readPercent({ least: 0, most: 500 })}
          onCommit={(spread) => onSet(changed(motion, { spread: spread === 0 ? undefined : spread }))}
        />
      )}
      {motion.kind === 'P' ? (
        <CheckedField
          label="Play of the fit"
          value={motion.clearance === undefined ? '' : String(motion.clearance)}
          placeholder="not known"
          unit="mm"
          read={orNone(readNumber({ above: 0, most: 1000 }))}
          onCommit={(clearance) => onSet(changed(motion, { clearance: clearance ?? undefined }))}
        />
      ) : null}
    </div>
  );
}

/** Nothing means that the time is predicted. */
function readMotionTime(text: string, unit: TimeUnit): Result<number | null, string> {
  if (text.trim() === '') return ok(null);
  const time = parseTime(text, unit);
  if (!time.ok) return time;
  if (time.value < 0) return fail('A time is not below 0. Leave the field empty to have it predicted.');
  if (time.value >= 3_600_000_000) return fail('No hand motion takes an hour. Write the time of one motion.');
  return ok(time.value);
}
