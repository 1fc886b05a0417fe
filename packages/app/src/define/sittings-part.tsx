import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Sitting, TimeStudy } from '@evenhand/core/ground/study';
import type { RecordDesk } from '../record/desk.ts';
import { CheckedField } from './checked-field.tsx';
import { setSittings } from './define-edits.ts';
import { readNumber } from './field-numbers.ts';

/** Which cycles were timed when and of whom: a code, never a name. */
export function SittingsPart(props: {
  readonly desk: RecordDesk;
  readonly timeStudy: TimeStudy;
  readonly lastCycle: number;
}) {
  const { desk, timeStudy } = props;
  const sittings = timeStudy.sittings ?? [];
  const take = (next: readonly Sitting[]) => {
    const edit = setSittings(timeStudy, next);
    if (edit !== undefined) desk.dispatch(edit);
  };
  const change = (id: string, to: (known: Sitting) => Sitting) =>
    take(sittings.map((sitting) => (sitting.id === id ? to(sitting) : sitting)));
  const free = sittings.length === 0 ? 1 : Math.max(props.lastCycle, sittings.at(-1)?.start ?? 1) + 1;
  return (
    <section className="sittings-part" aria-label="Sittings">
      <header>
        <h3>Sittings</h3>
        <button type="button" onClick={() => take([...sittings, { id: crypto.randomUUID(), start: free }])}>
          {sittings.length === 0 ? 'Note a sitting' : 'Next sitting'}
        </button>
      </header>
      {sittings.length === 0 ? (
        <p className="soft">
          A sitting says from which cycle on a person was timed: date, a code for the operator (never a name)
          and who observed. With two codes or more the study tests whether their times differ.
        </p>
      ) : (
        <table className="plain sittings-table">
          <thead>
            <tr>
              <th scope="col">From cycle</th>
              <th scope="col">Date</th>
              <th scope="col">Operator code</th>
              <th scope="col">Observer</th>
              <th scope="col">Note</th>
              <th scope="col">
                <span className="hidden">Removing</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {sittings.map((sitting, index) => (
              <SittingRow
                key={sitting.id}
                sitting={sitting}
                place={index + 1}
                taken={sittings.filter(({ id }) => id !== sitting.id).map(({ start }) => start)}
                onChange={(to) => change(sitting.id, to)}
                onRemove={() => take(sittings.filter(({ id }) => id !== sitting.id))}
              />
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}

type TextField = 'operatorCode' | 'observer' | 'note' | 'date';

function SittingRow(props: {
  readonly sitting: Sitting;
  readonly place: number;
  readonly taken: readonly number[];
  readonly onChange: (to: (known: Sitting) => Sitting) => void;
  readonly onRemove: () => void;
}) {
  const { sitting, place, onChange } = props;
  const readStart = (text: string): Result<number, string> => {
    const read = readNumber({ least: 1, most: 1_000_000, whole: true })(text);
    return read.ok && props.taken.includes(read.value)
      ? fail('Another sitting begins with this cycle.')
      : read;
  };
  const field = (name: TextField, label: string) => (
    <CheckedField
      bare
      label={`${label} of sitting ${place}`}
      value={sitting[name] ?? ''}
      type={name === 'date' ? 'date' : 'text'}
      read={(text) => ok(text.trim())}
      onCommit={(text) => onChange((known) => withText(known, name, text))}
    />
  );
  return (
    <tr>
      <td className="narrow">
        <CheckedField
          bare
          label={`First cycle of sitting ${place}`}
          value={String(sitting.start)}
          read={readStart}
          onCommit={(start) => onChange((known) => ({ ...known, start }))}
        />
      </td>
      <td>{field('date', 'Date')}</td>
      <td>{field('operatorCode', 'Operator code')}</td>
      <td>{field('observer', 'Observer')}</td>
      <td>{field('note', 'Note')}</td>
      <td className="row-actions">
        <button
          type="button"
          className="quiet"
          aria-label={`Remove sitting ${place}`}
          onClick={props.onRemove}
        >
          Remove
        </button>
      </td>
    </tr>
  );
}

function withText(sitting: Sitting, field: TextField, text: string): Sitting {
  const { [field]: _, ...rest } = sitting;
  return text === '' ? (rest as Sitting) : { ...sitting, [field]: text };
}
