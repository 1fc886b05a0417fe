import './develop.css';
import { type DrawnWork, workFromRecord } from '@evenhand/core/develop';
import type { Finding } from '@evenhand/core/ground/findings';
import type { Method, Study } from '@evenhand/core/ground/study';
import { type ReactNode, useEffect, useMemo, useRef } from 'react';
import { useDefineKeys } from '../define/use-define-keys.ts';
import type { RecordDesk } from '../record/desk.ts';
import { DeskMessage } from '../record/desk-message.tsx';
import { useDesk, useDocument } from '../record/use-desk.ts';
import { Link } from '../shell/link.tsx';
import { keepOpen, type Route } from '../shell/route.ts';
import { OpenWork } from './open-work.tsx';
import { keepDrawn, typedWork } from './work/begin-work.ts';

export type StudyRoute = Extract<Route, { page: 'study' }>;

/** The develop desk: the work of a recorded method, the shortest method for it, and what changes would be worth. */
export function DevelopDeskView(props: { readonly desk: RecordDesk; readonly route: StudyRoute }) {
  const { desk, route } = props;
  useDefineKeys(desk);
  const { message, methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const recorded = study.methods.filter(({ kind }) => kind === 'recorded');
  const method = recorded.find(({ id }) => id === methodId) ?? recorded[0];
  const works = study.works ?? [];
  const open =
    works.find(({ id }) => id === route.open) ??
    works.find(({ drawnFrom }) => method !== undefined && drawnFrom?.method === method.id) ??
    (method === undefined ? works[0] : undefined);
  return (
    <main className="develop-desk">
      {open === undefined ? (
        <Begin desk={desk} study={study} method={method} recorded={recorded} route={route} />
      ) : (
        <OpenWork key={open.id} desk={desk} study={study} kept={open} recorded={recorded} route={route} />
      )}
      <DeskMessage text={message} onDismiss={() => desk.say(undefined)} />
    </main>
  );
}

/** No work is kept for this method yet: one click draws it. */
function Begin(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly method: Method | undefined;
  readonly recorded: readonly Method[];
  readonly route: StudyRoute;
}) {
  const { desk, study, method, recorded, route } = props;
  const drawn = useMemo(
    () => (method === undefined ? undefined : workFromRecord(study, method.id)),
    [study, method],
  );
  const keep = (work: ReturnType<typeof keepDrawn>) => {
    if (desk.dispatch({ type: 'work.add', work })) keepOpen(work.id);
  };
  // Whoever comes from a lead wants to see what a change is worth, so the work is drawn at once.
  const begun = useRef(false);
  useEffect(() => {
    if (route.change === undefined || begun.current || method === undefined || drawn?.ok !== true) return;
    begun.current = true;
    keep(keepDrawn(drawn.value, method, crypto.randomUUID()));
  });
  const type = () => keep(typedWork(study, crypto.randomUUID()));
  return (
    <div className="develop-empty">
      {method === undefined ? (
        <p>
          The work is drawn from a recorded method that is marked. The study has none.{' '}
          <Link to={{ page: 'study', study: route.study, desk: 'record' }}>To the record desk</Link>
        </p>
      ) : (
        <DrawFrom
          drawn={drawn}
          onDraw={(value) => keep(keepDrawn(value, method, crypto.randomUUID()))}
          route={route}
        >
          <select
            value={method.id}
            aria-label="Method"
            onChange={(event) => desk.chooseMethod(event.target.value)}
          >
            {recorded.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </DrawFrom>
      )}
      <p className="soft">
        Nothing recorded to draw from?{' '}
        <button type="button" className="quiet" onClick={type}>
          Begin with an empty work
        </button>
      </p>
    </div>
  );
}

function DrawFrom(props: {
  readonly drawn: { ok: true; value: DrawnWork } | { ok: false; error: Finding } | undefined;
  readonly onDraw: (drawn: DrawnWork) => void;
  readonly route: StudyRoute;
  readonly children: ReactNode;
}) {
  const { drawn, onDraw, route, children } = props;
  if (drawn === undefined) return null;
  return (
    <>
      <p>
        The work says what must be done in a cycle, without saying by which hand or when. It is drawn from one
        cycle of a recorded method, kept in the study, and then yours to change; the shortest method for it is
        found at once.
      </p>
      <div className="actions">
        {children}
        <button
          type="button"
          className="primary"
          disabled={!drawn.ok}
          onClick={() => drawn.ok && onDraw(drawn.value)}
        >
          Draw the work
        </button>
      </div>
      {drawn.ok ? (
        drawn.value.notes.map(({ message }) => (
          <p key={message} className="soft">
            {message}
          </p>
        ))
      ) : (
        <p role="alert">
          {drawn.error.message}{' '}
          <Link to={{ page: 'study', study: route.study, desk: 'record' }}>To the record desk</Link>
        </p>
      )}
    </>
  );
}
