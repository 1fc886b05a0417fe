import { redoName, undoName } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import { lazy, Suspense, useEffect, useState, useSyncExternalStore } from 'react';
import { ChartPage } from '../chart/chart-page.tsx';
import { pagePorts } from '../editor/page-ports.ts';
import { StudyDocument } from '../editor/study-document.ts';
import { RecordDesk } from '../record/desk.ts';
import { RecordDeskView } from '../record/record-desk-view.tsx';
import { FindingsList } from './findings-list.tsx';
import { Link } from './link.tsx';
import { LookChoice } from './look-choice.tsx';
import { usePageTitle } from './page-title.ts';
import { preferences } from './preferences.ts';
import type { Route } from './route.ts';
import { SaveState } from './save-state.tsx';

/** The examination brings its own mathematics: only who opens the desk pays for it. */
const ExamineDeskView = lazy(() =>
  import('../examine/examine-desk-view.tsx').then((module) => ({ default: module.ExamineDeskView })),
);

const DefineDeskView = lazy(() =>
  import('../define/define-desk-view.tsx').then((module) => ({ default: module.DefineDeskView })),
);
const WatchView = lazy(() =>
  import('../define/watch/watch-view.tsx').then((module) => ({ default: module.WatchView })),
);
const DevelopDeskView = lazy(() =>
  import('../develop/develop-desk-view.tsx').then((module) => ({ default: module.DevelopDeskView })),
);
const EvaluateDeskView = lazy(() =>
  import('../evaluate/evaluate-desk-view.tsx').then((module) => ({ default: module.EvaluateDeskView })),
);

type StudyRoute = Extract<Route, { page: 'study' }>;

/** The eight steps of method study, in their order; those with a desk can be opened. */
const steps = [
  'select',
  'record',
  'examine',
  'develop',
  'evaluate',
  'define',
  'install',
  'maintain',
] as const;

/** Steps that have a desk. */
const withDesk = ['record', 'examine', 'develop', 'evaluate', 'define'] as const;

/** One study: its steps along the top, one desk below. */
export function StudyPage(props: { readonly route: StudyRoute }) {
  const { study: id } = props.route;
  const [desk, setDesk] = useState<RecordDesk>();
  const [findings, setFindings] = useState<readonly Finding[]>();
  useEffect(() => {
    let made: RecordDesk | undefined;
    let gone = false;
    void StudyDocument.open(id, pagePorts()).then((opened) => {
      if (!opened.ok) return setFindings(opened.error);
      if (gone) return opened.value.dispose();
      made = new RecordDesk(
        opened.value,
        preferences,
        new URLSearchParams(location.search).get('method') ?? undefined,
      );
      setDesk(made);
    });
    return () => {
      gone = true;
      made?.dispose();
      made?.document.dispose();
    };
  }, [id]);

  if (findings !== undefined) {
    return (
      <main className="sorry">
        <h1>This study cannot be opened</h1>
        <FindingsList findings={findings} />
        <Link to={{ page: 'studies' }}>To the list of studies</Link>
      </main>
    );
  }
  return desk === undefined ? (
    <p className="soft opening">Opening the study …</p>
  ) : (
    <OpenStudy desk={desk} route={props.route} />
  );
}

function OpenStudy(props: { readonly desk: RecordDesk; readonly route: StudyRoute }) {
  const { desk, route } = props;
  const state = useSyncExternalStore(desk.document.subscribe, desk.document.state);
  const { methodId } = useSyncExternalStore(desk.subscribe, desk.state);
  const here = methodId === undefined ? route : { ...route, method: methodId };
  usePageTitle(state.study.title);
  const { method: wanted } = route;
  useEffect(() => {
    if (wanted !== undefined && desk.study.methods.some(({ id }) => id === wanted)) desk.chooseMethod(wanted);
  }, [desk, wanted]);
  return (
    <div className="study-page">
      <header className="bar">
        <Link to={{ page: 'studies' }} className="wordmark">
          Evenhand
        </Link>
        <h1 title={state.study.title}>{state.study.title}</h1>
        {state.study.demo === true ? (
          <span className="tag" title="Invented data, for trying the program">
            invented
          </span>
        ) : null}
        <Steps here={here} desk={route.desk} />
        <Link
          to={deskRoute(here, route.desk === 'chart' ? 'record' : 'chart')}
          className="to-chart"
          current={route.desk === 'chart'}
        >
          {route.desk === 'chart' ? 'Back to the desk' : 'Chart'}
        </Link>
        <div className="edit-state">
          <button
            type="button"
            className="quiet"
            disabled={state.history.undo.length === 0}
            title={undoName(state.history)}
            onClick={() => desk.undo()}
          >
            Undo
          </button>
          <button
            type="button"
            className="quiet"
            disabled={state.history.redo.length === 0}
            title={redoName(state.history)}
            onClick={() => desk.redo()}
          >
            Redo
          </button>
          <SaveState document={desk.document} />
          <LookChoice />
        </div>
      </header>
      <Desk desk={desk} route={route} />
    </div>
  );
}

/** The steps along the top; on a phone behind the name of the one that is open. */
function Steps(props: { readonly here: StudyRoute; readonly desk: StudyRoute['desk'] }) {
  const { here, desk } = props;
  const [open, setOpen] = useState(false);
  // biome-ignore lint/correctness/useExhaustiveDependencies: whoever has gone to another desk has chosen
  useEffect(() => setOpen(false), [desk]);
  return (
    <>
      <button type="button" className="quiet steps-fold" aria-expanded={open} onClick={() => setOpen(!open)}>
        {shownStep(desk)} …
      </button>
      <nav aria-label="Steps of the study" className={open ? 'unfolded' : undefined}>
        <ol className="steps">
          {steps.map((step) => {
            const built = withDesk.find((name) => name === step);
            return (
              <li key={step}>
                {built === undefined ? (
                  <span className="later" title={`The ${step} step is not part of this version.`}>
                    {step}
                  </span>
                ) : (
                  <Link to={deskRoute(here, built)} current={shownStep(desk) === step}>
                    {step}
                  </Link>
                )}
              </li>
            );
          })}
        </ol>
      </nav>
    </>
  );
}

/** What was open on one desk means nothing to another. */
function deskRoute({ open: _, ...here }: StudyRoute, desk: StudyRoute['desk']): StudyRoute {
  return { ...here, desk };
}

function shownStep(desk: StudyRoute['desk']): string {
  return desk === 'watch' ? 'define' : desk;
}

function Desk(props: { readonly desk: RecordDesk; readonly route: StudyRoute }) {
  const { desk, route } = props;
  if (route.desk === 'chart') return <ChartPage desk={desk} />;
  if (route.desk === 'record') return <RecordDeskView desk={desk} />;
  return (
    <Suspense fallback={<p className="soft opening">Opening the desk …</p>}>
      {route.desk === 'examine' ? (
        <ExamineDeskView desk={desk} route={route} />
      ) : route.desk === 'develop' ? (
        <DevelopDeskView desk={desk} route={route} />
      ) : route.desk === 'evaluate' ? (
        <EvaluateDeskView desk={desk} route={route} />
      ) : route.desk === 'watch' ? (
        <WatchView desk={desk} route={route} />
      ) : (
        <DefineDeskView desk={desk} route={route} />
      )}
    </Suspense>
  );
}
