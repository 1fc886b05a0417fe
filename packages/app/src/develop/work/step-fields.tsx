import { fail, ok } from '@evenhand/core/ground/base';
import type { WorkStepFields } from '@evenhand/core/ground/edit';
import type { KeptWork, WorkStep } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { CheckedField } from '../../define/checked-field.tsx';
import { readNumber } from '../../define/field-numbers.ts';
import type { RecordDesk } from '../../record/desk.ts';
import type { StepSource } from '../developed-plain.ts';
import { HeldFields } from './held-fields.tsx';
import { LinkFields } from './link-fields.tsx';
import { MotionFields } from './motion-fields.tsx';
import { objectsOf } from './step-words.ts';
import { changeStep } from './work-edits.ts';

const handWords = {
  either: 'either hand',
  left: 'left hand',
  right: 'right hand',
  both: 'both hands together',
} as const;

/** Everything that a step says, each field one edit. */
export function StepFields(props: {
  readonly desk: RecordDesk;
  readonly kept: KeptWork;
  readonly step: WorkStep;
  readonly source: StepSource | undefined;
  readonly unit: TimeUnit;
  readonly onMove: (by: -1 | 1) => void;
  readonly onRemove: () => void;
}) {
  const { desk, kept, step } = props;
  const { places } = kept.work;
  const change = (to: WorkStepFields) => {
    const edit = changeStep(kept, step, to);
    if (edit !== undefined) desk.dispatch(edit);
  };
  const objects = `objects-${kept.id}`;
  const placeChoice = (label: string, value: string, onChange: (id: string) => void) => (
    <label className="step-choice">
      <span className="label">{label}</span>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {places.some(({ id }) => id === value) ? null : <option value={value}>{value} (not there)</option>}
        {places.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  return (
    <div className="step-fields">
      <datalist id={objects}>
        {objectsOf(kept.work).map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
      <CheckedField
        label="What is done"
        value={step.name}
        read={(text) => (text.trim() === '' ? fail('A step has a name.') : ok(text.trim()))}
        onCommit={(name) => change({ name })}
      />
      <MotionFields {...props} objects={objects} onChange={(motions) => change({ motions })} />
      <label className="step-choice">
        <span className="label">By</span>
        <select
          value={step.hand}
          onChange={(event) => {
            const hand = event.target.value as WorkStep['hand'];
            change(hand === 'both' || step.rightPlace === undefined ? { hand } : { hand, rightPlace: null });
          }}
        >
          {Object.entries(handWords).map(([hand, words]) => (
            <option key={hand} value={hand}>
              {words}
            </option>
          ))}
        </select>
      </label>
      {placeChoice(step.hand === 'both' ? 'At, left hand' : 'At', step.place, (place) => change({ place }))}
      {step.hand === 'both'
        ? placeChoice('At, right hand', step.rightPlace ?? step.place, (place) =>
            change({ rightPlace: place === step.place ? null : place }),
          )
        : null}
      <div className="field-pair">
        <Carried
          label="Comes with"
          value={step.before}
          list={objects}
          onChange={(before) => change({ before })}
        />
        <Carried
          label="Leaves with"
          value={step.after}
          list={objects}
          onChange={(after) => change({ after })}
        />
      </div>
      <HeldFields kept={kept} step={step} list={objects} onChange={(held) => change({ held })} />
      <label className="check">
        <input
          type="checkbox"
          checked={step.eyes}
          onChange={(event) => change({ eyes: event.target.checked })}
        />
        It must be looked at
      </label>
      <LinkFields {...props} onChange={(follows) => change({ follows })} />
      {kept.work.unitsPerCycle > 1 ? (
        <CheckedField
          label="Unit"
          value={String(step.unit)}
          read={readNumber({ least: 1, most: 1000, whole: true })}
          onCommit={(unit) => change({ unit })}
        />
      ) : null}
      <div className="actions">
        <button type="button" className="quiet" onClick={() => props.onMove(-1)}>
          Up
        </button>
        <button type="button" className="quiet" onClick={() => props.onMove(1)}>
          Down
        </button>
        <button type="button" className="quiet" onClick={props.onRemove}>
          Take out
        </button>
      </div>
    </div>
  );
}

/** What a hand carries: a name, or nothing. */
function Carried(props: {
  readonly label: string;
  readonly value: string | undefined;
  readonly list: string;
  readonly onChange: (name: string | null) => void;
}) {
  return (
    <CheckedField
      label={props.label}
      value={props.value ?? ''}
      placeholder="nothing"
      list={props.list}
      read={(text) => ok(text.trim())}
      onCommit={(name) => props.onChange(name === '' ? null : name)}
    />
  );
}
