import './evaluate.css';
import type { Comparison, Study } from '@evenhand/core/ground/study';
import { type ReactNode, useState } from 'react';
import { useDefineKeys } from '../define/use-define-keys.ts';
import type { RecordDesk } from '../record/desk.ts';
import { DeskMessage } from '../record/desk-message.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { Link } from '../shell/link.tsx';
import { usePreferences } from '../shell/preferences.ts';
import { keepOpen, type Route } from '../shell/route.ts';
import { ComparedView } from './compared-view.tsx';
import { newComparison } from './comparison-edits.ts';
import { EvaluateBar } from './evaluate-bar.tsx';
import { useCompared } from './use-compared.ts';

type StudyRoute = Extract<Route, { page: 'study' }>;

/** The evaluate desk: two methods side by side, the claim with what it rests on, and what the change is worth. */
export function EvaluateDeskView(props: { readonly desk: RecordDesk; readonly route: StudyRoute }) {
  const { desk, route } = props;
  useDefineKeys(desk);
  const { message } = useDesk(desk);
  const { study } = useDocument(desk);
  const comparisons = study.comparisons ?? [];
  const open = comparisons.find(({ id }) => id === route.open) ?? comparisons[0];
  return (
    <main className="evaluate-desk">
      {open === undefined ? (
        <Begin desk={desk} study={study} route={route} />
      ) : (
        <OpenComparison key={open.id} desk={desk} study={study} open={open} route={route} />
      )}
      <DeskMessage text={message} onDismiss={() => desk.say(undefined)} />
    </main>
  );
}

/** Nothing is compared yet. */
function Begin(props: { readonly desk: RecordDesk; readonly study: Study; readonly route: StudyRoute }) {
  const { desk, study, route } = props;
  const [before, setBefore] = useState<string>();
  const [after, setAfter] = useState<string>();
  const made = newComparison(study, 'asked', { before, after });
  if (study.methods.length < 2) {
    return (
      <div className="evaluate-empty">
        <p>
          To compare, the study needs two methods that are marked. It has {study.methods.length}.{' '}
          <Link to={{ page: 'study', study: route.study, desk: 'record' }}>To the record desk</Link>
        </p>
      </div>
    );
  }
  const choice = (label: string, value: string | undefined, onChange: (id: string) => void) => (
    <label className="inline-choice">
      <span>{label}</span>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {study.methods.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
  const begin = () => {
    const comparison = newComparison(study, crypto.randomUUID(), { before, after });
    if (comparison !== undefined && desk.dispatch({ type: 'comparison.add', comparison }))
      keepOpen(comparison.id);
  };
  return (
    <div className="evaluate-empty">
      <p>
        Choose two methods. What stands here then is whether the second is better, how sure that is, where the
        difference comes from and what it is worth.
      </p>
      <div className="actions">
        {choice('Before', before ?? made?.before.method, setBefore)}
        {choice('After', after ?? made?.after.method, setAfter)}
        <button type="button" className="primary" disabled={made === undefined} onClick={begin}>
          Compare
        </button>
      </div>
      {made === undefined ? <p role="alert">A method cannot be compared with itself.</p> : null}
    </div>
  );
}

function OpenComparison(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: Comparison;
  readonly route: StudyRoute;
}) {
  const { desk, study, open, route } = props;
  const { unit } = usePreferences();
  const { facts, refused, stale } = useCompared(study, open, unit);
  return (
    <>
      <EvaluateBar desk={desk} study={study} open={open} />
      {facts !== undefined ? (
        <ComparedView desk={desk} study={study} open={open} facts={facts} stale={stale} />
      ) : refused === undefined ? (
        <Empty>Comparing …</Empty>
      ) : (
        <Empty>
          {refused} <Link to={{ page: 'study', study: route.study, desk: 'record' }}>To the record desk</Link>
        </Empty>
      )}
    </>
  );
}

function Empty(props: { readonly children: ReactNode }) {
  return (
    <div className="evaluate-empty" role="status">
      <p>{props.children}</p>
    </div>
  );
}
