import './watch.css';
import { emptyTimeStudy } from '@evenhand/core/define';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { useEffect, useMemo, useState, useSyncExternalStore } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { useDocument } from '../../record/use-desk.ts';
import { Link } from '../../shell/link.tsx';
import { keepOpen, type Route } from '../../shell/route.ts';
import { freeName } from '../define-edits.ts';
import { useSleepWarning, useWakeLock } from './awake.ts';
import { watchOf } from './bench-watch.ts';
import { WatchBefore } from './watch-before.tsx';
import { WatchButtons } from './watch-buttons.tsx';
import { WatchElements } from './watch-elements.tsx';
import { WatchFace } from './watch-face.tsx';
import { ForeignName } from './watch-foreign.tsx';
import { keyWords, useWatchKeys } from './watch-keys.ts';
import { WatchSums } from './watch-sums.tsx';

type StudyRoute = Extract<Route, { page: 'study' }>;

/** The stopwatch page: times the elements of a time study as they are done, also in a window as small as a phone. */
export function WatchView(props: { readonly desk: RecordDesk; readonly route: StudyRoute }) {
  const { desk, route } = props;
  const { study } = useDocument(desk);
  const timed = (study.timeStudies ?? []).filter(({ source }) => source.kind === 'readings');
  const wanted = study.timeStudies?.find(({ id }) => id === route.open);
  const open = wanted === undefined ? timed[0] : wanted.source.kind === 'readings' ? wanted : undefined;
  useEffect(() => {
    if (open !== undefined && route.open === undefined) keepOpen(open.id);
  }, [open, route.open]);
  return (
    <main className="watch">
      <div className="watch-head">
        <Link to={{ ...route, desk: 'define', ...(open === undefined ? {} : { open: open.id }) }}>
          Study sheet
        </Link>
        <StudyChoice desk={desk} study={study} open={open} timed={timed} />
      </div>
      {wanted?.source.kind === 'record' ? (
        <p className="watch-note" role="status">
          “{wanted.name}” takes its times from a film, so nothing is clocked in it. Choose another time study
          or begin one.
        </p>
      ) : null}
      {open === undefined ? (
        <p className="watch-empty">
          <button type="button" className="primary" onClick={() => beginStudy(desk, study)}>
            Begin a time study
          </button>
        </p>
      ) : (
        <OpenWatch key={open.id} desk={desk} study={study} timeStudy={open} />
      )}
    </main>
  );
}

function StudyChoice(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: TimeStudy | undefined;
  readonly timed: readonly TimeStudy[];
}) {
  const { desk, study, open, timed } = props;
  if (timed.length === 0) return null;
  return (
    <label>
      <span className="hidden">Time study</span>
      <select
        value={open?.id ?? ''}
        onChange={({ target }) => {
          if (target.value === 'new') beginStudy(desk, study);
          else keepOpen(target.value);
          // The keys of the watch work again at once.
          target.blur();
        }}
      >
        {open === undefined ? <option value="">choose a time study</option> : null}
        {timed.map(({ id, name }) => (
          <option key={id} value={id}>
            {name}
          </option>
        ))}
        <option value="new">begin another …</option>
      </select>
    </label>
  );
}

function beginStudy(desk: RecordDesk, study: Study): void {
  const names = (study.timeStudies ?? []).map(({ name }) => name);
  const timeStudy = emptyTimeStudy({
    id: crypto.randomUUID(),
    name: freeName('Time study by the watch', names),
    unit: 'minutes',
    source: { kind: 'readings', timing: 'continuous' },
  });
  if (desk.dispatch({ type: 'time-study.add', timeStudy })) keepOpen(timeStudy.id);
}

function OpenWatch(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly timeStudy: TimeStudy;
}) {
  const { desk, study, timeStudy } = props;
  const bench = watchOf(desk, timeStudy);
  const shown = useSyncExternalStore(bench.subscribe, bench.state);
  const [code, setCode] = useState(timeStudy.sittings?.at(-1)?.operatorCode ?? '');
  const [changing, setChanging] = useState(timeStudy.elements.length === 0);
  const sitting = useMemo(() => ({ operatorCode: code.trim(), date: today() }), [code]);
  const { phase } = shown.watch;
  useEffect(() => bench.follow(timeStudy), [bench, timeStudy]);
  useWatchKeys(bench, timeStudy, sitting);
  useWakeLock(phase === 'running');
  useSleepWarning(bench, phase === 'running');
  return (
    <>
      <WatchFace bench={bench} shown={shown} timeStudy={timeStudy} />
      <div className="watch-middle">
        {phase === 'ready' ? <Care /> : null}
        {phase === 'ready' ? (
          <WatchBefore
            desk={desk}
            bench={bench}
            shown={shown}
            timeStudy={timeStudy}
            code={code}
            onCode={setCode}
          />
        ) : null}
        {phase === 'ended' ? <WatchSums watch={shown.watch} timeStudy={timeStudy} /> : null}
        {phase === 'running' ? null : <ForeignName bench={bench} timeStudy={timeStudy} />}
        <WatchElements
          desk={desk}
          study={study}
          bench={bench}
          shown={shown}
          timeStudy={timeStudy}
          changing={changing}
          onChanging={setChanging}
        />
        {phase === 'running' ? <ForeignName bench={bench} timeStudy={timeStudy} /> : null}
        <Keys />
        {phase === 'ready' ? null : <Care />}
      </div>
      <WatchButtons bench={bench} shown={shown} timeStudy={timeStudy} sitting={sitting} />
    </>
  );
}

/** The day where the watch is, as a sitting keeps it. */
function today(): string {
  const now = new Date();
  const part = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${part(now.getMonth() + 1)}-${part(now.getDate())}`;
}

function Care() {
  return (
    <p className="watch-note">
      The person who is timed knows it and has agreed. Note a code, never a name. A time study is about the
      work; it is no score for a person.
    </p>
  );
}

function Keys() {
  return (
    <details className="watch-keys" open={matchMedia('(min-width: 900px)').matches}>
      <summary>Keys</summary>
      <dl>
        {keyWords.map(([key, words]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{words}</dd>
          </div>
        ))}
      </dl>
    </details>
  );
}
