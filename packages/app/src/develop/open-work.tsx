import type { ChangeId, CostRange, Work } from '@evenhand/core/develop';
import type { KeptWork, Method, Study } from '@evenhand/core/ground/study';
import { useMemo, useState } from 'react';
import type { RecordDesk } from '../record/desk.ts';
import { Link } from '../shell/link.tsx';
import { usePreferences } from '../shell/preferences.ts';
import { goTo } from '../shell/route.ts';
import { addComposed } from './add-composed.ts';
import { useByHand } from './by-hand/use-by-hand.ts';
import { ChangesList } from './changes/changes-list.tsx';
import { keptCosts } from './changes/cost-text.ts';
import { useAskedChanges } from './changes/use-asked-changes.ts';
import { useFront } from './changes/use-front.ts';
import { ComposedScores } from './composed-scores.tsx';
import type { StudyRoute } from './develop-desk-view.tsx';
import { LibraryChoice } from './library/library-choice.tsx';
import { useLibrary } from './library/use-library.ts';
import { BenchPlanView } from './plan/bench-plan-view.tsx';
import { useAtOnce } from './plan/use-at-once.ts';
import { useDeveloped } from './use-developed.ts';
import { usePlaceDraft } from './use-place-draft.ts';
import { Verdict } from './verdict.tsx';
import { StepsList } from './work/steps-list.tsx';
import { takeChanges, takenChanges } from './work/work-edits.ts';
import { workFaults } from './work/work-faults.ts';
import { WorkHead } from './work/work-head.tsx';

/** Milliseconds for all combinations together. Ours. */
const frontPatience = 60_000;

/** A kept work with everything that follows from it. */
export function OpenWork(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly kept: KeptWork;
  readonly recorded: readonly Method[];
  readonly route: StudyRoute;
}) {
  const { desk, study, kept, recorded, route } = props;
  const { unit } = usePreferences();
  const [kind, setKind] = useState<'open' | 'closed'>('open');
  const draft = usePlaceDraft(desk, kept);
  const { work } = draft;
  const faults = useMemo(() => workFaults(work), [work]);
  const taken = useMemo(() => takenChanges(kept), [kept]);
  const methodId = kept.drawnFrom?.method ?? recorded[0]?.id;
  const asked = useAskedChanges(kept, route.change);
  const others = useLibrary(study.id);
  const { library } = others;
  const whole = faults.count > 0 || others.reading ? undefined : work;
  const search = useDeveloped(study, methodId, whole, kind, taken, asked.more, library);
  const front = useFront(
    whole === undefined || methodId === undefined
      ? undefined
      : {
          ...{
            study,
            methodId,
            work: whole,
            kind,
            library,
            patience: frontPatience,
            taken: [],
            more: asked.more,
          },
          costs: keptCosts(kept) as readonly (readonly [ChangeId, CostRange])[],
        },
  );
  const { found } = search;
  const shown = found.taken?.method ?? (taken.length === 0 ? found.base : undefined);
  const atOnce = useAtOnce(study, methodId, work, shown, library);
  const take = (wanted: readonly ChangeId[]) => {
    const edit = takeChanges(kept, wanted);
    if (edit !== undefined) desk.dispatch(edit);
  };
  const byHand = useByHand(
    study,
    methodId,
    faults.count > 0 || found.searching || found.stale ? undefined : shown,
    library,
  );
  const addable = byHand === undefined || byHand.judged.faults.length > 0 ? undefined : byHand.method;
  const add = () => {
    if (addable === undefined) return;
    if (desk.dispatch(addComposed(study, addable, crypto.randomUUID())))
      desk.say('The composed method is in the study. Compare it on the evaluate desk.');
  };
  return (
    <>
      <WorkBar
        desk={desk}
        study={study}
        kept={kept}
        recorded={recorded}
        route={route}
        kind={kind}
        onKind={setKind}
        onAdd={addable === undefined ? undefined : add}
      />
      <div className="develop-body">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard */}
        <aside className="develop-left" aria-label="The work, step by step" tabIndex={0}>
          <section className="work-steps" aria-label="The work">
            <WorkHead desk={desk} kept={kept} />
            <LibraryChoice study={study.id} others={others} method={shown ?? found.base} />
            {faults.others.map((fault) => (
              <p key={fault} className="work-fault" role="alert">
                {fault}
              </p>
            ))}
            <StepsList desk={desk} kept={kept} method={shown ?? found.base} faults={faults} unit={unit} />
            {kept.work.note === undefined ? null : <p className="soft work-note">{kept.work.note}</p>}
          </section>
        </aside>
        <div className="develop-middle">
          <Verdict
            method={shown}
            search={search}
            faults={faults}
            unit={unit}
            atOnce={atOnce.moved ? atOnce.figure?.unitTime : undefined}
          />
          {/* biome-ignore lint/a11y/noNoninteractiveTabindex: as above */}
          <section className="develop-main" aria-label="The bench" tabIndex={0}>
            <BenchPlanView
              desk={desk}
              study={study}
              kept={kept}
              methodId={methodId}
              kind={kind}
              library={library}
              atOnce={atOnce}
              taken={taken}
              unit={unit}
              onMove={(place, at) => {
                const reason = whyNotMoved(work, atOnce.work, place);
                if (reason === undefined) draft.move(place, at);
                else desk.say(reason);
              }}
            />
          </section>
          {shown === undefined || methodId === undefined ? null : (
            <ComposedScores
              study={study}
              methodId={methodId}
              cycle={kept.drawnFrom?.cycle}
              composed={shown}
              byHand={byHand}
              unit={unit}
            />
          )}
        </div>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: as above */}
        <aside className="develop-side" aria-label="Changes" tabIndex={0}>
          <ChangesList
            desk={desk}
            study={study}
            kept={kept}
            methodId={methodId}
            found={found}
            taken={taken}
            asked={asked}
            selected={route.change}
            front={front}
            unit={unit}
            onTake={take}
          />
        </aside>
      </div>
    </>
  );
}

/** A change that is taken may have brought a place or put it somewhere: then it is not moved by hand. */
function whyNotMoved(work: Work, changed: Work | undefined, id: string): string | undefined {
  const own = work.places.find((place) => place.id === id);
  if (own === undefined)
    return 'This place came with a change that is taken. Take the change back to move it.';
  const now = changed?.places.find((place) => place.id === id);
  if (now?.at === undefined || own.at === undefined) return undefined;
  return now.at.x === own.at.x && now.at.y === own.at.y
    ? undefined
    : 'A change that is taken says where this place stands. Take the change back to move it.';
}

function WorkBar(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly kept: KeptWork;
  readonly recorded: readonly Method[];
  readonly route: StudyRoute;
  readonly kind: 'open' | 'closed';
  readonly onKind: (kind: 'open' | 'closed') => void;
  readonly onAdd: (() => void) | undefined;
}) {
  const { desk, study, kept, recorded, route, kind, onKind, onAdd } = props;
  const works = study.works ?? [];
  const without = recorded.filter(({ id }) => !works.some(({ drawnFrom }) => drawnFrom?.method === id));
  const choose = (value: string) => {
    const [what, id] = [value.slice(0, 2), value.slice(2)];
    const here = { page: 'study', study: route.study, desk: 'develop' } as const;
    if (what === 'm:') {
      desk.chooseMethod(id);
      goTo({ ...here, method: id });
    } else goTo({ ...here, open: id });
  };
  const remove = () => {
    if (desk.dispatch({ type: 'work.remove', work: kept }))
      desk.say('The work is out of the study. Undo brings it back.');
  };
  return (
    <section className="develop-bar" aria-label="What is developed">
      <label className="inline-choice">
        <span>Work</span>
        <select value={`w:${kept.id}`} onChange={(event) => choose(event.target.value)}>
          {works.map(({ id, work }) => (
            <option key={id} value={`w:${id}`}>
              {work.title}
            </option>
          ))}
          {without.map(({ id, name }) => (
            <option key={id} value={`m:${id}`}>
              draw from {name} …
            </option>
          ))}
        </select>
      </label>
      <label className="inline-choice">
        <span>Cycle</span>
        <select value={kind} onChange={(event) => onKind(event.target.value as 'open' | 'closed')}>
          <option value="open">each hand goes on when it is ready</option>
          <option value="closed">both hands wait for each other</option>
        </select>
      </label>
      <div className="develop-right">
        <button type="button" className="quiet" onClick={remove}>
          Remove this work
        </button>
        <button type="button" className="primary" disabled={onAdd === undefined} onClick={onAdd}>
          Add to the study
        </button>
        <Link to={{ page: 'study', study: route.study, desk: 'evaluate' }}>To evaluate</Link>
      </div>
    </section>
  );
}
