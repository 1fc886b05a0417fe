import { fail, ok } from '@evenhand/core/ground/base';
import type { Edit, TimedElementFields } from '@evenhand/core/ground/edit';
import { shortNumber } from '@evenhand/core/ground/findings';
import type { TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';
import type { RecordDesk } from '../record/desk.ts';
import { CheckedField } from './checked-field.tsx';
import { changeElement, moveElement, removeElement } from './define-edits.ts';
import { orNone, percentNumber, readOccurs, readPercent } from './field-numbers.ts';
import { readRating } from './readings/cell-text.ts';

const works: readonly (readonly [TimeStudyElement['work'], string])[] = [
  ['worker', 'worker'],
  ['process', 'machine'],
  ['inside', 'worker, inside machine time'],
];

/** What is agreed about each element: its break point, who paces it, how often it occurs, its own rating and relaxation. */
export function ElementsTable(props: { readonly desk: RecordDesk; readonly timeStudy: TimeStudy }) {
  const { desk, timeStudy } = props;
  const take = (edit: Edit | undefined) => {
    if (edit !== undefined) desk.dispatch(edit);
  };
  return (
    <section className="elements-part" aria-label="Elements">
      <header>
        <h3>Elements</h3>
        <p className="soft">
          Empty fields of rating and relaxation take what the study says. An element that does not occur in
          every cycle says how often: once in five cycles is 1 in 5.
        </p>
      </header>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
      <div className="scroll-x" tabIndex={0} role="group" aria-label="Elements table">
        <table className="plain elements-table">
          <thead>
            <tr>
              <th scope="col">Element</th>
              <th scope="col">Ends when</th>
              <th scope="col">Paced by</th>
              <th scope="col">Occurs</th>
              <th scope="col">Rating</th>
              <th scope="col">Relaxation</th>
              <th scope="col">
                <span className="hidden">Order and removing</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {timeStudy.elements.map((element, index) => (
              <ElementRow
                key={element.id}
                timeStudy={timeStudy}
                element={element}
                first={index === 0}
                last={index === timeStudy.elements.length - 1}
                onTake={take}
              />
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

interface RowProps {
  readonly timeStudy: TimeStudy;
  readonly element: TimeStudyElement;
  readonly first: boolean;
  readonly last: boolean;
  readonly onTake: (edit: Edit | undefined) => void;
}

function ElementRow(props: RowProps) {
  const { timeStudy, element, onTake } = props;
  const { name, work } = element;
  const change = (to: TimedElementFields) => onTake(changeElement(timeStudy, element, to));
  return (
    <tr>
      <td>
        <CheckedField
          bare
          label={`Name of ${name}`}
          value={name}
          read={(text) => (text.trim() === '' ? fail('An element has a name.') : ok(text.trim()))}
          onCommit={(to) => change({ name: to })}
        />
      </td>
      <td>
        <CheckedField
          bare
          label={`Break point of ${name}`}
          value={element.endsWhen ?? ''}
          placeholder="what is seen or heard"
          read={(text) => ok(text.trim())}
          onCommit={(to) => change({ endsWhen: to === '' ? null : to })}
        />
      </td>
      <td>
        <select
          aria-label={`${name} is paced by`}
          value={work}
          onChange={(event) => change({ work: event.target.value as TimeStudyElement['work'] })}
        >
          {works.map(([value, words]) => (
            <option key={value} value={value}>
              {words}
            </option>
          ))}
        </select>
      </td>
      <ElementNumbers timeStudy={timeStudy} element={element} onChange={change} />
      <RowActions {...props} />
    </tr>
  );
}

function ElementNumbers(props: {
  readonly timeStudy: TimeStudy;
  readonly element: TimeStudyElement;
  readonly onChange: (to: TimedElementFields) => void;
}) {
  const { timeStudy, element, onChange: change } = props;
  const { name, work } = element;
  return (
    <>
      <td className="narrow">
        <CheckedField
          bare
          label={`How often ${name} occurs`}
          value={occursText(element)}
          read={readOccurs}
          onCommit={(occurs) => change({ occurs })}
        />
      </td>
      <td className="narrow">
        <CheckedField
          bare
          label={`Rating of ${name}`}
          value={element.rating === undefined ? '' : shortNumber(element.rating)}
          placeholder={
            work === 'process' ? 'none' : timeStudy.rating === undefined ? '' : shortNumber(timeStudy.rating)
          }
          disabled={work === 'process'}
          read={(text) => readRating(text, `“${name}”`, timeStudy.scale)}
          onCommit={(rating) => change({ rating })}
        />
      </td>
      <td className="narrow">
        <CheckedField
          bare
          label={`Relaxation of ${name}`}
          unit="%"
          value={element.relaxation === undefined ? '' : percentNumber(element.relaxation)}
          read={orNone(
            readPercent({
              least: 0,
              below: timeStudy.allowances.convention === 'share-of-shift' ? 100 : 1000,
            }),
          )}
          onCommit={(relaxation) => change({ relaxation })}
        />
      </td>
    </>
  );
}

function RowActions(props: RowProps) {
  const { timeStudy, element, onTake } = props;
  const { name } = element;
  return (
    <td className="row-actions">
      <button
        type="button"
        className="quiet"
        disabled={props.first}
        aria-label={`Move ${name} up`}
        onClick={() => onTake(moveElement(timeStudy, element, -1))}
      >
        Up
      </button>
      <button
        type="button"
        className="quiet"
        disabled={props.last}
        aria-label={`Move ${name} down`}
        onClick={() => onTake(moveElement(timeStudy, element, 1))}
      >
        Down
      </button>
      <button
        type="button"
        className="quiet"
        aria-label={`Remove ${name}`}
        onClick={() => onTake(removeElement(timeStudy, element))}
      >
        Remove
      </button>
    </td>
  );
}

function occursText({ occurs }: TimeStudyElement): string {
  return occurs === undefined ? 'every cycle' : `${occurs.times} in ${occurs.cycles}`;
}
