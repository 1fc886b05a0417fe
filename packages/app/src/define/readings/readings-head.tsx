import { timeUnits } from '@evenhand/core/ground/units';
import { useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { addElement } from '../define-edits.ts';
import type { GridModel } from './grid-model.ts';
import { readingsText } from './table-text.ts';

/** Above the table of readings: what it shows, and what goes into it and out of it as a whole. */
export function ReadingsHead(props: {
  readonly desk: RecordDesk;
  readonly model: GridModel;
  readonly ratings: boolean;
  readonly onRatings: (ratings: boolean) => void;
  readonly onPaste: () => void;
}) {
  const { desk, model } = props;
  const { timeStudy } = model;
  return (
    <header>
      <h3>
        Readings <span className="soft">in {timeUnits[timeStudy.unit].name}</span>
      </h3>
      <label className="check">
        <input
          type="checkbox"
          checked={props.ratings}
          onChange={(event) => props.onRatings(event.target.checked)}
        />
        Ratings of single readings
      </label>
      <button type="button" onClick={props.onPaste}>
        Paste a table …
      </button>
      <button
        type="button"
        disabled={model.lines.length === 0}
        onClick={() => {
          const text = readingsText(model.elements, model.cycles, model.unit);
          navigator.clipboard.writeText(text).then(
            () => desk.say('The readings are on the clipboard, for a spreadsheet.'),
            () => desk.say('The browser does not let the page write to the clipboard.'),
          );
        }}
      >
        Copy the table
      </button>
      <NewElement
        onAdd={(name) => desk.dispatch(addElement(timeStudy, name, crypto.randomUUID()))}
        record={timeStudy.source.kind === 'record'}
      />
      <details className="key-help">
        <summary>Keys</summary>
        <KeyHelp />
      </details>
    </header>
  );
}

function NewElement(props: { readonly onAdd: (name: string) => void; readonly record: boolean }) {
  const [name, setName] = useState('');
  if (props.record) return null;
  return (
    <form
      className="new-timed-element"
      onSubmit={(event) => {
        event.preventDefault();
        if (name.trim() === '') return;
        props.onAdd(name.trim());
        setName('');
      }}
    >
      <input
        aria-label="Name of the new element"
        placeholder="new element"
        value={name}
        maxLength={200}
        onChange={(event) => setName(event.target.value)}
      />
      <button type="submit" disabled={name.trim() === ''}>
        Add
      </button>
    </form>
  );
}

const keys: readonly (readonly [string, string])[] = [
  ['0–9', 'write a reading'],
  ['F2', 'change the cell'],
  ['Enter', 'next element, then the next cycle'],
  ['Tab', 'next cycle'],
  ['A', 'set aside or count again'],
  ['Shift A', 'set the whole cycle aside'],
  ['M', 'missed'],
  ['Del', 'clear'],
  ['Ctrl V', 'paste a block here'],
  ['Ctrl Shift V', 'paste it turned: cycles down'],
  ['Ctrl Z', 'undo'],
  ['Esc, Tab', 'leave the table'],
];

function KeyHelp() {
  return (
    <dl>
      {keys.map(([key, words]) => (
        <div key={key}>
          <dt>
            <kbd>{key}</kbd>
          </dt>
          <dd>{words}</dd>
        </div>
      ))}
    </dl>
  );
}
