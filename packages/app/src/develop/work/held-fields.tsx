import { fail, ok } from '@evenhand/core/ground/base';
import type { KeptWork, WorkStep } from '@evenhand/core/ground/study';
import { CheckedField } from '../../define/checked-field.tsx';

type Held = NonNullable<WorkStep['held']>;

/** What is held during the step, where, by what, and what it is called once the step is done. */
export function HeldFields(props: {
  readonly kept: KeptWork;
  readonly step: WorkStep;
  readonly list: string;
  readonly onChange: (held: Held | null) => void;
}) {
  const { kept, step, list, onChange } = props;
  const { held } = step;
  const by = held?.by ?? 'nothing';
  const choose = (wanted: string) => {
    if (wanted === 'nothing') return onChange(null);
    onChange({ object: 'part', place: step.place, ...held, by: wanted as Held['by'] });
  };
  return (
    <>
      <label className="step-choice">
        <span className="label">Held meanwhile by</span>
        <select value={by} onChange={(event) => choose(event.target.value)}>
          <option value="nothing">nothing</option>
          <option value="hand">the other hand</option>
          <option value="fixture">a fixture</option>
        </select>
      </label>
      {held === undefined ? null : (
        <>
          <div className="field-pair">
            <CheckedField
              label="What is held"
              value={held.object}
              list={list}
              read={(text) => (text.trim() === '' ? fail('Say what is held.') : ok(text.trim()))}
              onCommit={(object) => onChange({ ...held, object })}
            />
            <CheckedField
              label="Called afterwards"
              value={held.becomes ?? ''}
              placeholder={held.object}
              list={list}
              read={(text) => ok(text.trim())}
              onCommit={(name) => {
                const { becomes: _, ...rest } = held;
                onChange(name === '' ? rest : { ...rest, becomes: name });
              }}
            />
          </div>
          <label className="step-choice">
            <span className="label">Held at</span>
            <select value={held.place} onChange={(event) => onChange({ ...held, place: event.target.value })}>
              {kept.work.places.some(({ id }) => id === held.place) ? null : (
                <option value={held.place}>{held.place} (not there)</option>
              )}
              {kept.work.places.map(({ id, name }) => (
                <option key={id} value={id}>
                  {name}
                </option>
              ))}
            </select>
          </label>
        </>
      )}
    </>
  );
}
