import { lazy, Suspense, useDeferredValue, useEffect, useMemo, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { DeskMessage } from '../record/desk-message.tsx';
import { FilmView } from '../record/record-desk-view.tsx';
import { ScoreView } from '../record/score-view.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { useDeskKeys } from '../record/use-desk-keys.ts';
import { Link } from '../shell/link.tsx';
import type { Route } from '../shell/route.ts';
import { ExamineBar } from './examine-bar.tsx';
import { examined } from './examined.ts';
import { LeadsPanel } from './leads-panel.tsx';

const CompareView = lazy(() =>
  import('./compare/compare-view.tsx').then((module) => ({ default: module.CompareView })),
);

export type ExamineView = 'leads' | 'figures' | 'compare';

/** The examine desk: the film and the score beside the leads or the figures, or two methods one under the other. */
export function ExamineDeskView(props: {
  readonly desk: RecordDesk;
  readonly route: Extract<Route, { page: 'study' }>;
}) {
  const { desk, route } = props;
  const state = useDesk(desk);
  const { study } = useDocument(desk);
  const [view, setView] = useState<ExamineView>('leads');
  const [cycles, setCycles] = useState('');
  useDeskKeys(desk, false);
  useEffect(() => () => desk.hideSpans(), [desk]);
  const latest = useDeferredValue(study);
  const { methodId } = state;
  const found = useMemo(
    () => (methodId === undefined ? undefined : examined(latest, methodId, cycles)),
    [latest, methodId, cycles],
  );
  const bar = (
    <ExamineBar
      desk={desk}
      view={view}
      onView={(next) => {
        desk.hideSpans();
        setView(next);
      }}
      cycles={cycles}
      onCycles={setCycles}
      examined={found}
    />
  );
  if (found === undefined) {
    return (
      <main className="examine-desk empty">
        {bar}
        <p>
          This study has no method yet. <Link to={{ ...route, desk: 'record' }}>Add a film and mark it</Link>.
        </p>
      </main>
    );
  }
  if (view === 'compare') {
    return (
      <main className="examine-desk wide">
        {bar}
        <Suspense fallback={<p className="soft">Opening …</p>}>
          <CompareView study={study} />
        </Suspense>
      </main>
    );
  }
  return (
    <main className="examine-desk">
      {bar}
      <section className="stage" aria-label="Film">
        <div className="film">
          <FilmView desk={desk} />
        </div>
      </section>
      <ScoreView desk={desk} />
      <section className="examine-side" aria-label={view === 'leads' ? 'Leads' : 'Figures'}>
        {found.kind === 'refused' ? (
          <Refused reason={found.reason} route={route} />
        ) : (
          <LeadsPanel desk={desk} reading={found.reading} list={found.list} />
        )}
      </section>
      <DeskMessage text={state.message} onDismiss={() => desk.say(undefined)} />
    </main>
  );
}

function Refused(props: { readonly reason: string; readonly route: Extract<Route, { page: 'study' }> }) {
  return (
    <div className="examine-empty">
      <p>{props.reason}</p>
      <p>
        <Link to={{ ...props.route, desk: 'record' }}>To the record desk</Link>
      </p>
    </div>
  );
}
