import { notedExaminations } from '@evenhand/core/examine';
import { countText } from '@evenhand/core/ground/units';
import { useMemo, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { useDocument } from '../record/use-desk.ts';
import { CriticalPanel } from './critical-panel.tsx';

/** All that was answered and decided about a method, also what the record does not hold any more. */
export function NotedList(props: { readonly desk: RecordDesk; readonly methodId: string }) {
  const { desk, methodId } = props;
  const { study } = useDocument(desk);
  const count = study.examinations?.filter(({ subject }) => subject.method === methodId).length ?? 0;
  const [open, setOpen] = useState(false);
  if (count === 0) return null;
  return (
    <details className="noted" open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>Answered or decided so far: {countText(count, 'subject')}</summary>
      {open ? <Rows desk={desk} methodId={methodId} /> : null}
    </details>
  );
}

function Rows(props: { readonly desk: RecordDesk; readonly methodId: string }) {
  const { study } = useDocument(props.desk);
  const rows = useMemo(
    () => notedExaminations(study).filter(({ examination }) => examination.subject.method === props.methodId),
    [study, props.methodId],
  );
  const [shown, setShown] = useState<string>();
  return (
    <ul>
      {rows.map(({ examination, subject, there, decision, open, answers }) => (
        <li key={examination.id}>
          <button
            type="button"
            className="quiet"
            aria-expanded={shown === examination.id}
            onClick={() => setShown(shown === examination.id ? undefined : examination.id)}
          >
            {subject}
          </button>
          {there ? null : <span className="soft"> (not in the record any more)</span>}
          <p>
            {decision === undefined
              ? 'Not decided.'
              : `Decided: ${decision.choice}, because ${decision.reason}`}{' '}
            <span className="soft">
              {countText(answers.filter(({ by }) => by === 'analyst').length, 'answer')} written,{' '}
              {countText(open.length, 'question')} open.
            </span>
          </p>
          {shown === examination.id ? (
            <CriticalPanel desk={props.desk} subject={examination.subject} />
          ) : null}
        </li>
      ))}
    </ul>
  );
}
