import { changeRules, leadAnswers } from '@evenhand/core/develop';
import { findExamination, type Lead, type MethodReading } from '@evenhand/core/examine';
import { principleOf, sources } from '@evenhand/core/ground/tables';
import { type ReactNode, useId } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { Link } from '../shell/link.tsx';
import { usePreferences } from '../shell/preferences.ts';
import { useRoute } from '../shell/route.ts';
import { CriticalDetails } from './critical-panel.tsx';
import { type Occurrence, occurrenceWords } from './occurrences.ts';
import { hoursText, stakeText, whereText } from './stake-text.ts';

interface Props {
  readonly desk: RecordDesk;
  readonly reading: MethodReading;
  readonly lead: Lead;
  readonly rank: number;
  readonly open: boolean;
  /** Of the open lead; empty for the others. */
  readonly occurrences: readonly Occurrence[];
  /** Which of its occurrences is shown, from 0. */
  readonly turn: number;
  /** The selected motion is part of its evidence. */
  readonly touched: boolean;
  readonly onShow: (turn: number) => void;
  readonly onClose: () => void;
}

/** One lead: what, where, evidence and worth; opened, the frames play and the rest is shown. */
export function LeadItem(props: Props) {
  const { desk, reading, lead, open, touched } = props;
  const { unit } = usePreferences();
  const { study } = useDocument(desk);
  const { lit } = useDesk(desk);
  const body = useId();
  const { decision } = findExamination(study, subjectOf(props)) ?? {};
  const hours = hoursText(lead.hoursAYear);
  const press = () => (open && lit !== undefined ? props.onClose() : props.onShow(open ? props.turn : 0));
  return (
    <li className={`lead${open ? ' open' : ''}${touched ? ' touched' : ''}`} data-lead={lead.id}>
      <button
        type="button"
        className="lead-head"
        aria-expanded={open}
        aria-controls={open ? body : undefined}
        onClick={press}
      >
        <span className="rank">{props.rank}</span>
        <span className="what">
          <span className="name">{lead.name}</span> <span className="soft">{whereText(lead, reading)}</span>
        </span>
        <span className="worth">
          <span className="number">{stakeText(lead.atStake, unit)}</span>
          {hours === undefined ? null : <span className="number soft">{hours}</span>}
        </span>
      </button>
      <p className="evidence">
        {lead.evidence}
        {touched ? <em> The selected motion is part of this.</em> : null}
        {decision === undefined ? null : <strong> Decided: {decision.choice}.</strong>}
      </p>
      {open ? (
        <div className="lead-body" id={body}>
          <LeadBody {...props} />
        </div>
      ) : null}
    </li>
  );
}

function subjectOf({ reading, lead }: Pick<Props, 'reading' | 'lead'>) {
  return { kind: 'lead' as const, method: reading.method.id, lead: lead.id };
}

function LeadBody(props: Props) {
  const { lead } = props;
  return (
    <>
      <OccurrenceRow {...props} />
      {lead.caution === undefined ? null : <p className="caution">{lead.caution}</p>}
      <dl>
        <Entry title={lead.principles.length === 1 ? 'Principle' : 'Principles'}>
          {lead.principles.map((number) => (
            <PrincipleText key={number} number={number} />
          ))}
        </Entry>
        <Entry title="Usually removed by">
          <ul>
            {lead.remedies.map(({ how, text }) => (
              <li key={text}>
                <span className="soft">{how}:</span> {text}
              </li>
            ))}
          </ul>
        </Entry>
        <Entry title="To try">
          <Answers reading={props.reading} lead={lead} />
        </Entry>
        <Entry title="To ask">
          <ul>
            {lead.questions.map((question) => (
              <li key={question}>{question}</li>
            ))}
          </ul>
        </Entry>
      </dl>
      <details>
        <summary>How the time at stake is computed</summary>
        <p>{lead.rule}</p>
        {lead.limit === undefined ? null : <p className="soft">{lead.limit}</p>}
      </details>
      <CriticalDetails desk={props.desk} subject={subjectOf(props)} what="of this lead" />
    </>
  );
}

/** The changes of the work that answer the lead, each one click away from what it is worth. */
function Answers(props: Pick<Props, 'reading' | 'lead'>) {
  const route = useRoute();
  const { changes, words } = leadAnswers[props.lead.code];
  if (route.page !== 'study') return null;
  const { study } = route;
  return (
    <>
      {changes.length === 0 ? null : (
        <ul className="lead-answers">
          {changes.map((code) => (
            <li key={code}>
              <Link
                to={{ page: 'study', study, desk: 'develop', method: props.reading.method.id, change: code }}
              >
                {changeRules.find((rule) => rule.code === code)?.name ?? code}
              </Link>
            </li>
          ))}
        </ul>
      )}
      {words === undefined ? null : <p className="soft">{words}</p>}
    </>
  );
}

/** Which occurrence is on the film and the score, and the way to the others. */
function OccurrenceRow(props: Props) {
  const { desk, reading, occurrences, turn } = props;
  const { unit } = usePreferences();
  const { lit } = useDesk(desk);
  const shown = occurrences[turn];
  if (shown === undefined) return null;
  const several = occurrences.length > 1;
  return (
    <div className="occurrence">
      {several ? (
        <span className="turns">
          <button
            type="button"
            onClick={() => props.onShow(turn - 1)}
            title="Occurrence before (comma)"
            aria-label="Occurrence before"
          >
            ◂
          </button>
          <button
            type="button"
            onClick={() => props.onShow(turn + 1)}
            title="Next occurrence (full stop)"
            aria-label="Next occurrence"
          >
            ▸
          </button>
        </span>
      ) : null}
      {lit === undefined ? (
        <button type="button" onClick={() => props.onShow(turn)}>
          Show again
        </button>
      ) : (
        <button type="button" onClick={() => desk.hideSpans()} title="Escape">
          Stop
        </button>
      )}
      <span role="status">
        {several ? `Occurrence ${turn + 1} of ${occurrences.length}: ` : 'Once: '}
        {occurrenceWords(reading, shown, unit)}
      </span>
    </div>
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
