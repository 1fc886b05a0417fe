import {
  answerQuestion,
  clearDecision,
  decide,
  findExamination,
  knownAnswers,
  type Noted,
} from '@evenhand/core/examine';
import type { ExaminationSubject } from '@evenhand/core/ground/study';
import {
  type DecisionChoice,
  decisionChoices,
  type ExaminationQuestionFacts,
  examinationHeads,
} from '@evenhand/core/ground/tables';
import { countText } from '@evenhand/core/ground/units';
import { useEffect, useMemo, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { useDocument } from '../record/use-desk.ts';

/** The examination of one thing behind one line that says how far it is. */
export function CriticalDetails(props: {
  readonly desk: RecordDesk;
  readonly subject: ExaminationSubject;
  /** "of this lead". */
  readonly what: string;
}) {
  const { study } = useDocument(props.desk);
  const [open, setOpen] = useState(false);
  const noted = findExamination(study, props.subject);
  const count = noted?.answers?.length ?? 0;
  const state = [
    count === 0 ? undefined : countText(count, 'answer'),
    noted?.decision === undefined ? undefined : `decided: ${noted.decision.choice}`,
  ].filter((part) => part !== undefined);
  return (
    <details open={open} onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>
        Critical examination {props.what}
        {state.length === 0 ? null : <span className="soft"> ({state.join(', ')})</span>}
      </summary>
      {open ? <CriticalPanel desk={props.desk} subject={props.subject} /> : null}
    </details>
  );
}

/** The twenty questions about one thing: what the record answers, what the analyst writes, and what is decided. */
export function CriticalPanel(props: { readonly desk: RecordDesk; readonly subject: ExaminationSubject }) {
  const { desk, subject } = props;
  const { study } = useDocument(desk);
  const { methods, places } = study;
  const key = JSON.stringify(subject);
  // Answers change nothing in what the record knows.
  // biome-ignore lint/correctness/useExhaustiveDependencies: the parts of the study that are read, and the subject as text
  const known = useMemo(() => knownAnswers(study, subject), [methods, places, key]);
  const noted = findExamination(study, subject);
  const take = (result: Noted) => {
    if (!result.ok) desk.say(result.error.message);
    else if (result.value !== undefined) desk.dispatch(result.value);
  };
  const newId = () => crypto.randomUUID();
  return (
    <div className="critical">
      {examinationHeads.map((head) => (
        <fieldset key={head.head}>
          <legend>
            {head.name} <span className="soft">leads to {head.leadsTo.join(', ')}</span>
          </legend>
          {head.questions.map((question) => (
            <Question
              key={question.id}
              question={question}
              known={known.find((item) => item.question === question.id)?.text}
              answer={noted?.answers?.find((item) => item.question === question.id)?.text ?? ''}
              onCommit={(text) => take(answerQuestion(desk.study, subject, question.id, text, newId))}
            />
          ))}
        </fieldset>
      ))}
      <DecisionFields
        key={JSON.stringify([key, noted?.decision])}
        choice={noted?.decision?.choice}
        reason={noted?.decision?.reason ?? ''}
        onDecide={(choice, reason) => take(decide(desk.study, subject, choice, reason, newId))}
        onClear={() => {
          const edit = clearDecision(desk.study, subject);
          if (edit !== undefined) desk.dispatch(edit);
        }}
      />
    </div>
  );
}

function Question(props: {
  readonly question: ExaminationQuestionFacts;
  readonly known: string | undefined;
  readonly answer: string;
  readonly onCommit: (text: string) => void;
}) {
  const [text, setText] = useState(props.answer);
  useEffect(() => setText(props.answer), [props.answer]);
  return (
    <label className="question">
      <span>{props.question.text}</span>
      {props.known === undefined ? null : <span className="known">From the record: {props.known}</span>}
      <textarea
        rows={Math.min(6, Math.max(1, text.split('\n').length))}
        value={text}
        data-question={props.question.id}
        placeholder={props.known === undefined ? '' : 'anything to add?'}
        onChange={(event) => setText(event.target.value)}
        onBlur={() => {
          if (text.trim() !== props.answer) props.onCommit(text);
        }}
        onKeyDown={(event) => {
          if (event.key === 'Escape') setText(props.answer);
        }}
      />
    </label>
  );
}

function DecisionFields(props: {
  readonly choice: DecisionChoice | undefined;
  readonly reason: string;
  readonly onDecide: (choice: DecisionChoice, reason: string) => void;
  readonly onClear: () => void;
}) {
  const [choice, setChoice] = useState(props.choice);
  const [reason, setReason] = useState(props.reason);
  const changed = choice !== props.choice || reason.trim() !== props.reason;
  return (
    <fieldset className="decision">
      <legend>Decision</legend>
      <div className="choices">
        {decisionChoices.map((name) => (
          <button
            key={name}
            type="button"
            aria-pressed={choice === name}
            onClick={() => setChoice(choice === name ? undefined : name)}
          >
            {name}
          </button>
        ))}
      </div>
      <label className="question">
        <span>Because</span>
        <textarea rows={2} value={reason} onChange={(event) => setReason(event.target.value)} />
      </label>
      <div className="actions">
        <button
          type="button"
          className="primary"
          disabled={choice === undefined || !changed}
          onClick={() => choice !== undefined && props.onDecide(choice, reason)}
        >
          Decide
        </button>
        {props.choice === undefined ? null : (
          <button type="button" className="quiet" onClick={props.onClear}>
            Take the decision back
          </button>
        )}
      </div>
    </fieldset>
  );
}
