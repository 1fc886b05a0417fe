import { toUs } from '@evenhand/core/define';
import { fail, micros, ok, type Result } from '@evenhand/core/ground/base';
import type { ForeignElement, TimeStudy } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { timeNumber, timeUnits } from '@evenhand/core/ground/units';
import type { RecordDesk } from '../record/desk.ts';
import { CheckedField } from './checked-field.tsx';
import { setForeign } from './define-edits.ts';
import { readNumber } from './field-numbers.ts';

/** What happened that is no part of the work; its time is in no reading. */
export function ForeignPart(props: { readonly desk: RecordDesk; readonly timeStudy: TimeStudy }) {
  const { desk, timeStudy } = props;
  const foreign = timeStudy.foreign ?? [];
  const take = (next: readonly ForeignElement[]) => {
    const edit = setForeign(timeStudy, next);
    if (edit !== undefined) desk.dispatch(edit);
  };
  const add = () =>
    take([
      ...foreign,
      { id: crypto.randomUUID(), cycle: foreign.at(-1)?.cycle ?? 1, us: 0, what: 'say what happened' },
    ]);
  return (
    <section className="foreign-part" aria-label="Foreign elements">
      <header>
        <h3>Foreign elements</h3>
        <button type="button" onClick={add}>
          Note one
        </button>
      </header>
      {foreign.length === 0 ? (
        <p className="soft">
          None noted. What is no part of the work, such as a question from a visitor, is written here with its
          time; it is in no reading.
        </p>
      ) : (
        <table className="plain foreign-table">
          <thead>
            <tr>
              <th scope="col">Cycle</th>
              <th scope="col">During</th>
              <th scope="col">Time, {timeUnits[timeStudy.unit].symbol}</th>
              <th scope="col">What happened</th>
              <th scope="col">
                <span className="hidden">Removing</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {foreign.map((item, index) => (
              <ForeignRow
                key={item.id}
                item={item}
                place={index + 1}
                timeStudy={timeStudy}
                onChange={(to) => take(foreign.map((each) => (each.id === item.id ? to : each)))}
                onRemove={() => take(foreign.filter(({ id }) => id !== item.id))}
              />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

function readForeignTime(unit: TimeUnit): (text: string) => Result<number, string> {
  return (text) => {
    if (text.trim() === '0') return ok(0);
    const read = toUs(text, unit);
    if (!read.ok) return fail(read.error.message);
    return read.value.kind === 'time' && read.value.setAside === undefined
      ? ok(read.value.us)
      : fail(`Write how long it took in ${timeUnits[unit].name}.`);
  };
}

function ForeignRow(props: {
  readonly item: ForeignElement;
  readonly place: number;
  readonly timeStudy: TimeStudy;
  readonly onChange: (to: ForeignElement) => void;
  readonly onRemove: () => void;
}) {
  const { item, place, timeStudy, onChange } = props;
  return (
    <tr>
      <td className="narrow">
        <CheckedField
          bare
          label={`Cycle of foreign element ${place}`}
          value={String(item.cycle)}
          read={readNumber({ least: 1, most: 1_000_000, whole: true })}
          onCommit={(cycle) => onChange({ ...item, cycle })}
        />
      </td>
      <td>
        <select
          aria-label={`Element during which foreign element ${place} happened`}
          value={item.element ?? ''}
          onChange={(event) => {
            const { element: _, ...rest } = item;
            onChange(event.target.value === '' ? rest : { ...rest, element: event.target.value });
          }}
        >
          <option value="">between elements</option>
          {timeStudy.elements.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </td>
      <td className="narrow">
        <CheckedField
          bare
          label={`Time of foreign element ${place}`}
          value={timeNumber(micros(item.us), timeStudy.unit)}
          read={readForeignTime(timeStudy.unit)}
          onCommit={(us) => onChange({ ...item, us })}
        />
      </td>
      <td>
        <CheckedField
          bare
          label={`What foreign element ${place} was`}
          value={item.what}
          read={(text) => (text.trim() === '' ? fail('Say what happened.') : ok(text.trim()))}
          onCommit={(what) => onChange({ ...item, what })}
        />
      </td>
      <td className="row-actions">
        <button
          type="button"
          className="quiet"
          aria-label={`Remove foreign element ${place}`}
          onClick={props.onRemove}
        >
          Remove
        </button>
      </td>
    </tr>
  );
}
