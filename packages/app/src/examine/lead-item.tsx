import { findExamination, type Lead, type MethodReading } from '@evenhand/core/examine';
import { principleOf, sources } from '@evenhand/core/ground/tables';
import { type ReactNode, useId } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { useDocument } from '../record/use-desk.ts';
import { usePreferences } from '../shell/preferences.ts';
import { CriticalPanel } from './critical-panel.tsx';
import { occurrencesOf, occurrenceWords } from './occurrences.ts';
import { hoursText, stakeText, whoText } from './stake-text.ts';

interface Props {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly lead: Lead;
  readonly rank: number;
  readonly open: boolean;
  /** Which of its occurrences is shown, from 0. */
  readonly turn: number;
  /** The selected motion is part of its evidence. */
  readonly touched: boolean;
  readonly onShow: (turn: number) => void;
  readonly onClose: () => void;
}

/** One lead: what, where, evidence and worth; opened, the frames play and the rest is shown. */
export function LeadItem(props: Props) {
  const { desk, lead, open, touched } = props;
  const { unit } = usePreferences();
  const { study } = useDocument(desk);
  const body = useId();
  const subject = { kind: 'lead' as const, method: props.reading.method.id, lead: lead.id };
  const decision = findExamination(study, subject)?.decision;
  const hours = hoursText(lead.hoursAYear);
  return (
    <li className={`lead${open ? ' open' : ''}${touched ? ' touched' : ''}`} data-lead={lead.id}>
      <button
        type="button"
        className="lead-head"
        aria-expanded={open}
        aria-controls={body}
        onClick={() => (open ? props.onClose() : props.onShow(0))}
      >
        <span className="rank">{props.rank}</span>
        <span className="what">
          <span className="name">{lead.name}</span>
          <span className="soft"> {whoText(lead)}</span>
        </span>
        <span className="worth">
          <span className="number">{stakeText(lead.atStake, unit)}</span>
          {hours === undefined ? null : <span className="number soft">{hours}</span>}
        </span>
      </button>
      <p className="evidence">
        {lead.evidence}
        {touched ? <em> The selected motion is part of this.</em> : null}
        {decision === undefined ? null : <em> Decided: {decision.choice}.</em>}
      </p>
      {open ? (
        <div className="lead-body" id={body}>
          <LeadBody {...props} subject={subject} />
        </div>
      ) : null}
    </li>
  );
}

function LeadBody(props: Props & { readonly subject: { kind: 'lead'; method: string; lead: string } }) {
  const { lead, reading, turn } = props;
  const occurrences = occurrencesOf(lead.traces);
  const shown = occurrences[turn];
  return (
    <>
      <div className="occurrence">
        <button type="button" onClick={() => props.onShow(turn - 1)} aria-label="Occurrence before">
          ◂
        </button>
        <span role="status">
          Occurrence {turn + 1} of {occurrences.length}
          {shown === undefined ? '' : `: ${occurrenceWords(reading, shown)}`}
        </span>
        <button type="button" onClick={() => props.onShow(turn + 1)} aria-label="Next occurrence">
          ▸
        </button>
        <button type="button" onClick={() => props.onShow(turn)}>
          Play again
        </button>
      </div>
      {lead.caution === undefined ? null : <p className="caution">{lead.caution}</p>}
      <dl>
        <Entry title={lead.principles.length === 1 ? 'Principle' : 'Principles'}>
          {lead.principles.map((number) => (
            <PrincipleText key={number} number={number} />
          ))}
        </Entry>
        <Entry title="What usually removes it">
          <ul>
            {lead.remedies.map(({ how, text }) => (
              <li key={text}>
                <span className="soft">{how}:</span> {text}
              </li>
            ))}
          </ul>
        </Entry>
        <Entry title="To ask">
          <ul>
            {lead.questions.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ul>
        </Entry>
        <Entry title="How the time is computed">
          <p>{lead.rule}</p>
          {lead.limit === undefined ? null : <p className="soft">{lead.limit}</p>}
        </Entry>
      </dl>
      <details>
        <summary>Critical examination</summary>
        <CriticalPanel desk={props.desk} subject={props.subject} />
      </details>
    </>
  );
}

function PrincipleText(props: { readonly number: Lead['principles'][number] }) {
  const { fact, numbering, source, note } = principleOf(props.number);
  const memory = numbering === 'memory' ? '; its number from memory' : '';
  return (
    <p>
      {props.number}. {fact}{' '}
      <span className="soft">
        ({sources[source].reference}
        {memory}){note === undefined ? '' : ` ${note.text}`}
      </span>
    </p>
  );
}

function Entry(props: { readonly title: string; readonly children: ReactNode }) {
  return (
    <>
      <dt>{props.title}</dt>
      <dd>{props.children}</dd>
    </>
  );
}
