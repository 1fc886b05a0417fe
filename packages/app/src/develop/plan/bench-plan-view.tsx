import './plan.css';
import {
  arrivals,
  type ChangeId,
  handPaths,
  handTravel,
  type Library,
  positionsOf,
  reachOfBench,
  reachWords,
  tripsOfSchedule,
} from '@evenhand/core/develop';
import { micros } from '@evenhand/core/ground/base';
import type { Edit, SingleEdit } from '@evenhand/core/ground/edit';
import type { KeptWork, Study, WorkPlace } from '@evenhand/core/ground/study';
import { type TimeUnit, timeText } from '@evenhand/core/ground/units';
import { useMemo, useRef, useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { addPlace, benchOf, newPlace, removePlace, setPlace, turned, usersOf } from './bench-of.ts';
import { BestPlaces } from './best-places.tsx';
import { PlacesTable } from './places-table.tsx';
import { PlanChoices } from './plan-choices.tsx';
import { PlanDrawing } from './plan-drawing.tsx';
import { type GridStep, type Placed, type Point, placedOf } from './plan-geometry.ts';
import { PlanWords } from './plan-words.tsx';
import { PrintPlan } from './print-plan.tsx';
import { Trace, type Underlay } from './trace.tsx';
import { useArranged } from './use-arranged.ts';
import type { AtOnce } from './use-at-once.ts';

/** The bench: drawn, edited, judged in words, arranged anew and printed for the workshop. */
export function BenchPlanView(props: {
  readonly desk: RecordDesk;
  readonly study: Study;
  readonly kept: KeptWork;
  readonly methodId: string | undefined;
  readonly kind: 'open' | 'closed';
  /** Records of other studies, for the times. */
  readonly library?: Library | undefined;
  /** The work as it is shown, with its figure for the places as they are. */
  readonly atOnce: AtOnce;
  /** Changes of the work that are taken. */
  readonly taken: readonly ChangeId[];
  readonly unit: TimeUnit;
  readonly onMove: (place: string, at: Point) => void;
}) {
  const { desk, study, kept, methodId, kind, library, atOnce, taken, unit, onMove } = props;
  const { work, figure } = atOnce;
  const [grid, setGrid] = useState<GridStep>(10);
  const [chosen, setChosen] = useState<string>();
  const [underlay, setUnderlay] = useState<Underlay>();
  const [tableOpen, setTableOpen] = useState(false);
  const section = useRef<HTMLElement>(null);
  const arrange = useArranged(study, methodId, kept.work, kind, taken, library);
  const reach = reachOfBench(kept.work.bench);
  const drawn = useMemo(() => drawnFacts(atOnce), [atOnce]);
  const words = useMemo(() => reachWords(work, drawn.trips, reach), [work, drawn.trips, reach]);
  const bench = benchOf(kept.work);
  const places = placedOf(work.places);
  const take = (edit: Edit | undefined) => {
    if (edit !== undefined) desk.dispatch(edit);
  };
  const own = (place: WorkPlace) => kept.work.places.find(({ id }) => id === place.id);
  const withOwn = (place: WorkPlace, act: (known: WorkPlace) => void) => {
    const known = own(place);
    if (known === undefined)
      desk.say('This place came with a change that is taken. Take the change back first.');
    else act(known);
  };
  const turn = (place: Placed, by: number) =>
    withOwn(place, (known) => {
      const angle = turned((known.angle ?? 0) + by);
      take(setPlace(kept, known, { angle: angle === 0 ? null : angle }));
    });
  const remove = (place: WorkPlace) =>
    withOwn(place, (known) => {
      const users = usersOf(kept, known.id);
      if (users.length > 0)
        desk.say(
          `${known.name} is needed by ${users.join(', ')}. Say there where it is done instead, then take it away.`,
        );
      else take(removePlace(kept, known));
    });
  const rename = (place: Placed) => {
    setTableOpen(true);
    requestAnimationFrame(() =>
      section.current
        ?.querySelector<HTMLInputElement>(`tr[data-place="${CSS.escape(place.id)}"] .name input`)
        ?.focus(),
    );
  };
  const accept = () => {
    if (arrange.state.kind !== 'found') return;
    const to = new Map(arrange.state.arranged.moved.map((moved) => [moved.place, moved.to]));
    const edits = kept.work.places.flatMap((place): SingleEdit[] => {
      const at = to.get(place.id);
      const edit = at === undefined ? undefined : setPlace(kept, place, { at });
      return edit === undefined || edit.type === 'group' ? [] : [edit];
    });
    if (desk.dispatch({ type: 'group', name: 'move places to where they are best', edits }))
      desk.say('The places stand where they are best. Undo puts them back.');
  };
  const proposed =
    arrange.state.kind === 'found'
      ? arrange.state.arranged.shown.flatMap(({ place, to }) => {
          const known = work.places.find(({ id }) => id === place);
          return known === undefined ? [] : [{ ...known, at: to }];
        })
      : [];
  const chosenPlace = kept.work.places.find(({ id }) => id === chosen);
  return (
    <section
      className={underlay === undefined ? 'work-plan' : 'work-plan traced'}
      aria-label="Plan of the bench"
      ref={section}
    >
      <div className="plan-head">
        <h2>The bench</h2>
        <BestPlaces search={arrange} now={figure?.unitTime} unit={unit} onAccept={accept} />
        <p role="status" className="plan-figure">
          {figure === undefined || !atOnce.moved
            ? null
            : `${timeText(micros(Math.round(figure.unitTime)), unit)} a unit with the places here, in the order found before; whether another is shorter is being sought.`}
        </p>
      </div>
      <PlanDrawing
        bench={bench}
        places={places}
        reach={reach}
        paths={drawn.paths}
        proposed={proposed}
        grid={grid}
        chosen={chosen}
        onChoose={setChosen}
        beyond={new Set(words.beyond.map(({ place }) => place))}
        onMove={onMove}
        onTurn={turn}
        onRemove={remove}
        onRename={rename}
      >
        {underlay === undefined ? null : (
          <image
            href={underlay.url}
            opacity={underlay.opacity}
            x={-bench.width / 2}
            y={-bench.depth}
            width={bench.width}
            height={bench.depth}
            preserveAspectRatio="none"
          />
        )}
      </PlanDrawing>
      <p className="soft">
        <kbd>arrows</kbd> move a place by the grid, with <kbd>Shift</kbd> by 1 mm; <kbd>R</kbd> turns it,{' '}
        <kbd>Enter</kbd> goes to its figures, <kbd>Del</kbd> takes it away.
      </p>
      <PlanChoices kept={kept} take={take} grid={grid} onGrid={setGrid} />
      <PlanWords kept={kept} reach={words} travel={drawn.travel} period={figure?.schedule.period} />
      <details open={tableOpen} onToggle={(event) => setTableOpen(event.currentTarget.open)}>
        <summary>Places in figures</summary>
        <PlacesTable
          kept={kept}
          take={take}
          trips={drawn.arrivals}
          onAdd={() => take(addPlace(kept, newPlace(kept, chosenPlace)))}
          onRemove={remove}
        />
      </details>
      <Trace desk={desk} kept={kept} underlay={underlay} onUnderlay={setUnderlay} />
      <PrintPlan study={study} work={work} trips={drawn.trips} period={figure?.schedule.period} />
    </section>
  );
}

/** Trips of the method, with their ways over the bench as it is. */
function drawnFacts({ work, figure }: AtOnce) {
  if (figure === undefined) return { trips: undefined, paths: [], travel: undefined, arrivals: new Map() };
  const trips = tripsOfSchedule(work, figure.instance, figure.schedule);
  const at = positionsOf(work);
  return { trips, paths: handPaths(trips, at), travel: handTravel(trips, at), arrivals: arrivals(trips) };
}
