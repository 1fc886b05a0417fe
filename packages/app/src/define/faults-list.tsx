import type { SheetFault, TimeStudySheet } from '@evenhand/core/define';
import type { Finding } from '@evenhand/core/ground/findings';

import { useMemo, useState } from 'react';
import { once } from './sheet-words.ts';

/** More lines than this are told as a number until they are asked for. */
const fewLines = 6;

/** What stands in the way of a standard, each line leading to its place, and what limits the conclusion. */
export function FaultsList(props: {
  readonly sheet: TimeStudySheet;
  readonly onAddMissing: () => void;
  readonly onGo: (fault: Pick<SheetFault, 'element' | 'cycle' | 'field'>) => void;
}) {
  const { faults, notes, missing, rows } = props.sheet;
  const told = useMemo(() => once(faults, faultKey), [faults]);
  const [all, setAll] = useState(false);
  const shown = all ? told.slice(0, 200) : told.slice(0, fewLines);
  return (
    <div className="faults-and-notes">
      {told.length === 0 ? null : (
        <ul className="sheet-faults" aria-label="What stands in the way of a standard">
          {shown.map((fault) => (
            <li key={faultKey(fault)}>
              <button type="button" className="quiet" onClick={() => props.onGo(fault)}>
                {fault.finding.message}
              </button>
            </li>
          ))}
          {told.length > shown.length ? (
            <li>
              <button type="button" className="quiet" onClick={() => setAll(true)}>
                … and {told.length - shown.length} more
              </button>
            </li>
          ) : null}
        </ul>
      )}
      {missing.length === 0 ? null : (
        <p className="sheet-note">
          The record has elements that this study lacks: {missing.join(', ')}. Their time is in no figure
          here.
        </p>
      )}
      <NotesList notes={notes} rows={rows} onGo={(element) => props.onGo({ element })} />
    </div>
  );
}

function NotesList(props: {
  readonly notes: readonly Finding[];
  readonly rows: TimeStudySheet['rows'];
  readonly onGo: (element: string) => void;
}) {
  if (props.notes.length === 0) return null;
  const whose = ({ message }: Finding) =>
    props.rows.filter(({ summary }) => summary?.notes.some((note) => note.message === message) === true);
  return (
    <ul className="sheet-notes" aria-label="What limits the conclusion">
      {props.notes.slice(0, 12).map((note) => (
        <li key={note.message}>
          {whose(note)
            .slice(0, 5)
            .map(({ element }) => (
              <button key={element.id} type="button" className="quiet" onClick={() => props.onGo(element.id)}>
                {element.name}
              </button>
            ))}{' '}
          {note.message}
        </li>
      ))}
    </ul>
  );
}

function faultKey({ finding, element, cycle }: SheetFault): string {
  return `${element ?? ''} ${cycle ?? ''} ${finding.message}`;
}
