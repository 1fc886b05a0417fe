import {
  findElements,
  type MethodReading,
  markElement,
  removeElement,
  renameElement,
  type Trace,
} from '@evenhand/core/examine';
import type { Edit } from '@evenhand/core/ground/edit';
import type { ElementMark } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import { CommitField } from '../../record/commit-field.tsx';
import { FindingsList } from '../../shell/findings-list.tsx';
import { beginningsIn, elementTable, modelPosition, modelWords } from './element-tables.ts';
import { FigureBlock } from './figure-block.tsx';

interface Props {
  readonly reading: MethodReading;
  readonly unit: TimeUnit;
  readonly onTrace: (traces: readonly Trace[]) => void;
  readonly onEdit: (edit: Edit) => void;
  readonly newId: () => string;
  readonly examination?: (element: string) => React.ReactNode;
}

/** Elements that the analyst names in one cycle; the others are searched for them by their motions. */
export function ElementsSection(props: Props) {
  const { reading, unit } = props;
  const { method, cycles } = reading;
  const marks = method.elements ?? [];
  const found = useMemo(() => findElements(reading), [reading]);
  const table = useMemo(() => elementTable(found, cycles.length, unit), [found, cycles, unit]);
  return (
    <FigureBlock
      title="Named elements"
      tables={found.elements.length === 0 ? [] : [table]}
      onTrace={props.onTrace}
    >
      {marks.length === 0 ? (
        <p>
          No element is named yet. Say with which motion an element begins in one cycle, and its beginning is
          found in the other cycles by their motions.
        </p>
      ) : (
        <>
          <p>Named in {modelWords(found.model)}, found in the other cycles by their motions.</p>
          <Marks {...props} marks={marks} />
        </>
      )}
      {found.findings.length === 0 ? null : <FindingsList findings={found.findings} />}
      <NewElement {...props} position={modelPosition(reading, found.model)} />
      <details>
        <summary>How elements are found</summary>
        <p>{found.rule}</p>
      </details>
    </FigureBlock>
  );
}

function Marks(props: Props & { readonly marks: readonly ElementMark[] }) {
  const { reading, onEdit } = props;
  const { method } = reading;
  const send = (edit: Edit | undefined) => {
    if (edit !== undefined) onEdit(edit);
  };
  const inOrder = [...props.marks].sort((a, b) => a.at - b.at);
  return (
    <ul className="element-marks">
      {inOrder.map(({ id, name, hand, at }) => (
        <li key={id}>
          <CommitField
            label="Name of the element"
            value={name}
            onCommit={(text) => send(renameElement(method, id, text))}
          />
          <span className="soft">
            begins with the {hand} hand
            {reading.clock.unit === 'frames' ? ` at frame ${at}` : ''}
          </span>
          <button type="button" className="quiet" onClick={() => send(removeElement(method, id))}>
            Remove<span className="hidden"> {name}</span>
          </button>
          {props.examination?.(id)}
        </li>
      ))}
    </ul>
  );
}

function NewElement(props: Props & { readonly position: number }) {
  const { reading, unit, position } = props;
  const choices = useMemo(() => beginningsIn(reading, position, unit), [reading, position, unit]);
  const [at, setAt] = useState('');
  const [name, setName] = useState('');
  const keyOf = ({ hand, at: place }: { hand: string; at: number }) => `${hand} ${place}`;
  const chosen = choices.find((choice) => keyOf(choice) === at) ?? choices[0];
  if (chosen === undefined) return null;
  const add = () => {
    const edit = markElement(reading.method, chosen.hand, chosen.at, name, props.newId);
    if (edit === undefined) return;
    props.onEdit(edit);
    setName('');
  };
  const cycle = modelWords(reading.cycles[position]?.number);
  return (
    <form
      className="figure-choices"
      onSubmit={(event) => {
        event.preventDefault();
        add();
      }}
    >
      <label className="inline-choice">
        <span>New element in {cycle}, begins at</span>
        <select value={keyOf(chosen)} onChange={(event) => setAt(event.target.value)}>
          {choices.map((choice) => (
            <option key={keyOf(choice)} value={keyOf(choice)}>
              {choice.words}
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice">
        <span>Name</span>
        <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
      </label>
      <button type="submit" disabled={name.trim() === ''}>
        Name it
      </button>
    </form>
  );
}
