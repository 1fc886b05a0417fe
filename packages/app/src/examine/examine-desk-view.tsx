import { lazy, Suspense, useEffect, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { DeskMessage } from '../record/desk-message.tsx';
import { FilmView } from '../record/record-desk-view.tsx';
import { ScoreView } from '../record/score-view.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { useDeskKeys } from '../record/use-desk-keys.ts';
import { Link } from '../shell/link.tsx';
import type { Route } from '../shell/route.ts';
import { ExamineBar } from './examine-bar.tsx';
import type { Examined } from './examined.ts';
import { FilmKeys } from './film-keys.tsx';
import { LeadsPanel } from './leads-panel.tsx';
import { useExamined } from './use-examined.ts';

const CompareView = lazy(() =>
  import('./compare/compare-view.tsx').then((module) => ({ default: module.CompareView })),
);
const FiguresSide = lazy(() =>
  import('./figures/figures-side.tsx').then((module) => ({ default: module.FiguresSide })),
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
  const [proposed, setProposed] = useState(false);
  useDeskKeys(desk, false);
  useEffect(() => () => desk.hideSpans(), [desk]);
  const { found, stale } = useExamined(study, state.methodId, cycles, proposed);
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
      proposed={proposed}
      onProposed={setProposed}
      examined={found}
    />
  );
  if (state.methodId === undefined) {
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
    <main className={state.film.kind === 'none' ? 'examine-desk no-film' : 'examine-desk'}>
      {bar}
      {state.film.kind === 'none' ? null : (
        <section className="stage" aria-label="Film">
          <div className="film">
            <FilmView desk={desk} />
          </div>
        </section>
      )}
      <FilmKeys desk={desk} />
      <ScoreView desk={desk} />
      <section className="examine-side" aria-label={view === 'leads' ? 'Leads' : 'Figures'}>
        {stale ? (
          <p className="reading" role="status">
            Reading the changed record …
          </p>
        ) : null}
        <Side
          key={state.methodId}
          desk={desk}
          view={view}
          found={found}
          route={route}
          onAllCycles={cycles === '' ? undefined : () => setCycles('')}
        />
      </section>
      <DeskMessage text={state.message} onDismiss={() => desk.say(undefined)} />
    </main>
  );
}

function Side(props: {
  readonly desk: RecordDesk;
  readonly view: ExamineView;
  readonly found: Examined | undefined;
  readonly route: Extract<Route, { page: 'study' }>;
  /** Undefined when no choice of cycles was made. */
  readonly onAllCycles: (() => void) | undefined;
}) {
  const { desk, found, route } = props;
  if (found === undefined) {
    return (
      <p className="examine-empty" role="status">
        Reading the record …
      </p>
    );
  }
  return found.kind === 'refused' ? (
    <Refused reason={found.reason} route={route} onAllCycles={props.onAllCycles} />
  ) : props.view === 'leads' ? (
    <LeadsPanel desk={desk} reading={found.reading} list={found.list} />
  ) : (
    <Suspense fallback={<p className="examine-empty">Opening …</p>}>
      <FiguresSide desk={desk} reading={found.reading} />
    </Suspense>
  );
}

function Refused(props: {
  readonly reason: string;
  readonly route: Extract<Route, { page: 'study' }>;
  readonly onAllCycles: (() => void) | undefined;
}) {
  return (
    <div className="examine-empty">
      <p role="alert">{props.reason}</p>
      <p>
        {props.onAllCycles === undefined ? (
          <Link to={{ ...props.route, desk: 'record' }}>To the record desk</Link>
        ) : (
          <button type="button" onClick={props.onAllCycles}>
            Count all cycles
          </button>
        )}
      </p>
    </div>
  );
}
