import { fail, ok } from '@evenhand/core/ground/base';
import type { Study, TimeStudy } from '@evenhand/core/ground/study';
import { type ReactNode, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { Link } from '../shell/link.tsx';
import { keepOpen, type Route } from '../shell/route.ts';
import { CheckedField } from './checked-field.tsx';
import { changeTimeStudy, copyTimeStudy, freeName } from './define-edits.ts';
import { NewStudyDialog } from './new-study-dialog.tsx';

export type DefineView = 'sheet' | 'calculators';

type StudyRoute = Extract<Route, { page: 'study' }>;

/** Above the desk: which time study is open, and what can be done with it. */
export function DefineBar(props: {
  readonly desk: RecordDesk;
  readonly route: StudyRoute;
  readonly study: Study;
  readonly open: TimeStudy | undefined;
  readonly view: DefineView;
  readonly onView: (view: DefineView) => void;
  /** What prints. */
  readonly children?: ReactNode;
}) {
  const { desk, study, open, view, route } = props;
  return (
    <section className="define-bar" aria-label="Which time study">
      <div className="tabs" role="group" aria-label="View">
        {(['sheet', 'calculators'] as const).map((name) => (
          <button key={name} type="button" aria-pressed={view === name} onClick={() => props.onView(name)}>
            {name === 'sheet' ? 'Study sheet' : 'Calculators'}
          </button>
        ))}
      </div>
      {view === 'calculators' ? null : <StudyChoice desk={desk} study={study} open={open} />}
      <div className="define-right">
        {props.children}
        <Link to={{ ...route, desk: 'watch', ...(open === undefined ? {} : { open: open.id }) }}>
          Stopwatch
        </Link>
      </div>
    </section>
  );
}

/** Which time study is open, and making, copying, naming and removing one. */
function StudyChoice(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly open: TimeStudy | undefined;
}) {
  const { desk, study, open } = props;
  const [asked, setAsked] = useState<'new' | 'rename'>();
  const studies = study.timeStudies ?? [];
  const add = (timeStudy: TimeStudy) => {
    if (desk.dispatch({ type: 'time-study.add', timeStudy })) keepOpen(timeStudy.id);
  };
  return (
    <>
      {asked === 'rename' && open !== undefined ? (
        <CheckedField
          label="Name"
          value={open.name}
          read={(text) => (text.trim() === '' ? fail('A time study has a name.') : ok(text.trim()))}
          onCommit={(name) => {
            const edit = changeTimeStudy(open, { name });
            if (edit !== undefined) desk.dispatch(edit);
            setAsked(undefined);
          }}
        />
      ) : studies.length === 0 ? null : (
        <label className="inline-choice">
          <span>Time study</span>
          <select value={open?.id ?? ''} onChange={(event) => keepOpen(event.target.value)}>
            {studies.map(({ id, name }) => (
              <option key={id} value={id}>
                {name}
              </option>
            ))}
          </select>
        </label>
      )}
      <div className="actions">
        <button type="button" onClick={() => setAsked('new')}>
          New …
        </button>
        {open === undefined ? null : (
          <OpenActions
            desk={desk}
            open={open}
            names={studies.map(({ name }) => name)}
            renaming={asked === 'rename'}
            onAdd={add}
            onRename={() => setAsked(asked === 'rename' ? undefined : 'rename')}
          />
        )}
      </div>
      {asked === 'new' ? (
        <NewStudyDialog
          study={study}
          onClose={() => setAsked(undefined)}
          onMake={(timeStudy) => {
            setAsked(undefined);
            add(timeStudy);
          }}
        />
      ) : null}
    </>
  );
}

function OpenActions(props: {
  readonly desk: RecordDesk;
  readonly open: TimeStudy;
  readonly names: readonly string[];
  readonly renaming: boolean;
  readonly onAdd: (timeStudy: TimeStudy) => void;
  readonly onRename: () => void;
}) {
  const { desk, open, names } = props;
  const copy = () =>
    props.onAdd(copyTimeStudy(open, freeName(`${open.name}, copy`, names), () => crypto.randomUUID()));
  const remove = () => {
    if (!desk.dispatch({ type: 'time-study.remove', timeStudy: open })) return;
    keepOpen(undefined);
    desk.say(`“${open.name}” was removed. Undo brings it back.`);
  };
  return (
    <>
      <button type="button" onClick={copy}>
        Copy
      </button>
      <button type="button" onClick={props.onRename}>
        {props.renaming ? 'Leave the name' : 'Rename'}
      </button>
      <button type="button" onClick={remove}>
        Remove
      </button>
    </>
  );
}
