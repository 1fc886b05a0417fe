import { readRecords } from '@evenhand/core/examine';
import { countText } from '@evenhand/core/ground/units';
import { useEffect, useState } from 'react';
import { api } from '../../editor/page-ports.ts';
import { failureFindings, type StudyEntry } from '../../editor/server-api.ts';
import type { PlainMethod } from '../developed-plain.ts';
import type { OtherStudies } from './use-library.ts';

/** So many studies are listed; the others are found by a part of their name. Ours. */
const mostListed = 24;

/** Which other studies lend their times, and how many motions of the work have theirs from there. */
export function LibraryChoice(props: {
  readonly study: string;
  readonly others: OtherStudies;
  readonly method: PlainMethod | undefined;
}) {
  const { study, others, method } = props;
  const [open, setOpen] = useState(false);
  const { chosen, faults, reading, unkept } = others;
  return (
    <div className="library-choice">
      <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary>
          {chosen.length === 0
            ? 'Times from this record and the laws'
            : `Times from this record, then from ${countText(chosen.length, 'other study', 'other studies')}`}
        </summary>
        {open ? <Studies study={study} others={others} /> : null}
        <p className="soft">
          A motion that this record has not is taken from there where the same is done with the same object,
          at the pace of this record. The choice is kept in this browser, not in the study.
          {unkept ? ' This browser did not keep it: it holds until the page is closed.' : ''}
        </p>
      </details>
      {reading ? <p role="status">Reading the chosen studies …</p> : null}
      {faults.map((fault) => (
        <p key={fault} role="alert" className="fault">
          {fault}
        </p>
      ))}
      {chosen.length === 0 || reading || method === undefined ? null : <p role="status">{lent(method)}</p>}
    </div>
  );
}

/** Of the motions of the steps; moves are never taken from another bench. */
function lent({ sources }: PlainMethod): string {
  const motions = Object.values(sources).flatMap((step) => step.motions);
  const from = motions.filter(({ elsewhere }) => elsewhere).length;
  return from === 0
    ? 'No motion of this work has its time from there: the record has them all, or the other studies have none of them.'
    : `${from} of ${motions.length} motions have their time from there; each says so at its step.`;
}

function Studies({ study, others }: { readonly study: string; readonly others: OtherStudies }) {
  const [entries, setEntries] = useState<readonly StudyEntry[]>();
  const [fault, setFault] = useState<string>();
  const [part, setPart] = useState('');
  useEffect(() => {
    let left = false;
    void api.studies().then((answer) => {
      if (left) return;
      if (answer.ok) setEntries(answer.value.filter(({ id, archived }) => id !== study && !archived));
      else
        setFault(
          failureFindings(answer.error)
            .map(({ message }) => message)
            .join(' '),
        );
    });
    return () => {
      left = true;
    };
  }, [study]);
  if (fault !== undefined)
    return (
      <p role="alert" className="fault">
        {fault}
      </p>
    );
  if (entries === undefined) return <p role="status">Reading the list of studies …</p>;
  if (entries.length === 0) return <p className="soft">There is no other study yet.</p>;
  const { chosen, choose } = others;
  const named = entries.filter(({ title }) => title.toLowerCase().includes(part.trim().toLowerCase()));
  const listed = [...named]
    .sort(
      (a, b) =>
        Number(chosen.includes(b.id)) - Number(chosen.includes(a.id)) || a.title.localeCompare(b.title),
    )
    .slice(0, mostListed);
  return (
    <fieldset>
      <legend className="label">Other studies</legend>
      {entries.length <= 8 ? null : (
        <input
          type="search"
          aria-label="Part of the name"
          placeholder="Part of the name"
          value={part}
          onChange={(event) => setPart(event.target.value)}
        />
      )}
      <ul>
        {listed.map((entry) => (
          <StudyRow
            key={entry.id}
            entry={entry}
            chosen={chosen.includes(entry.id)}
            onChoose={(use) => choose(use ? [...chosen, entry.id] : chosen.filter((id) => id !== entry.id))}
          />
        ))}
      </ul>
      {named.length <= listed.length ? null : (
        <p className="soft">{named.length - listed.length} more: write a part of the name.</p>
      )}
    </fieldset>
  );
}

/** How many cycles it has is read from the study itself when it comes into the list. */
function StudyRow(props: {
  readonly entry: StudyEntry;
  readonly chosen: boolean;
  readonly onChoose: (use: boolean) => void;
}) {
  const { entry, chosen, onChoose } = props;
  const [cycles, setCycles] = useState<number>();
  useEffect(() => {
    let left = false;
    void api.load(entry.id).then((answer) => {
      if (left || !answer.ok) return;
      setCycles(readRecords(answer.value.study).reduce((sum, reading) => sum + reading.cycles.length, 0));
    });
    return () => {
      left = true;
    };
  }, [entry.id]);
  return (
    <li>
      <label>
        <input type="checkbox" checked={chosen} onChange={() => onChoose(!chosen)} />
        <span>{entry.title}</span>
        <span className="number soft">
          {cycles === undefined ? '' : cycles === 0 ? 'no cycles' : countText(cycles, 'cycle')}
        </span>
      </label>
    </li>
  );
}
