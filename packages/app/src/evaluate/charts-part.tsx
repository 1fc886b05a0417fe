import type { ComparisonFacts } from '@evenhand/core/evaluate';
import { compareCycles, comparisonPlaces, comparisonScene } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useMemo, useSyncExternalStore } from 'react';
import { useLook } from '../shell/preferences.ts';
import type { FilmPair, Side } from './film-pair.ts';
import { ScenePicture } from './scene-picture.tsx';
import { useWidth } from './use-width.ts';

/** One cycle of each method on one time scale; a line shows what the films show, a click shows that moment. */
export function ChartsPart(props: {
  readonly study: Study;
  readonly facts: ComparisonFacts;
  readonly pair: FilmPair;
  readonly cycles: Readonly<Record<Side, number>>;
  readonly unit: TimeUnit;
}) {
  const { study, facts, pair, cycles, unit } = props;
  const look = useLook();
  const [host, width] = useWidth(620);
  const { before, after } = facts.proof;
  const compared = useMemo(
    () =>
      compareCycles(
        study,
        { method: before.method.id, cycle: cycles.before },
        { method: after.method.id, cycle: cycles.after },
      ),
    [study, before, after, cycles.before, cycles.after],
  );
  const scene = useMemo(
    () => (compared.ok ? comparisonScene(compared.value, { width, unit }) : undefined),
    [compared, width, unit],
  );
  if (!compared.ok) return <p role="alert">{compared.error.message}</p>;
  const places = comparisonPlaces(compared.value, width);
  return (
    <section className="charts" aria-label="Both methods on one time scale">
      <div className="charts-scene" ref={host}>
        {/* biome-ignore lint/a11y/noStaticElementInteractions: a pointer's short way to a moment; the slider above serves the keyboard */}
        {/* biome-ignore lint/a11y/useKeyWithClickEvents: as above */}
        <div
          className="charts-click"
          title="Shows this moment in the films"
          onClick={(event) => {
            const box = event.currentTarget.getBoundingClientRect();
            const y = event.clientY - box.top;
            const side: Side = y < (places.upper.bottom + places.lower.top) / 2 ? 'before' : 'after';
            const time = places.timeAt(event.clientX - box.left);
            pair.seek(pair.timeline.momentOf(side, time));
          }}
        >
          {scene === undefined ? null : <ScenePicture scene={scene} look={look} id="evaluate-charts" />}
          <Playheads pair={pair} places={places} />
        </div>
      </div>
    </section>
  );
}

function Playheads(props: { readonly pair: FilmPair; readonly places: ReturnType<typeof comparisonPlaces> }) {
  const { pair, places } = props;
  const { before, after } = useSyncExternalStore(pair.subscribe, pair.state);
  const line = (time: number, { top, bottom }: { readonly top: number; readonly bottom: number }) => ({
    transform: `translate(${places.x(time)}px, ${top}px)`,
    height: bottom - top,
  });
  return (
    <>
      <div className="playhead" style={line(before.time, places.upper)} />
      <div className="playhead" style={line(after.time, places.lower)} />
    </>
  );
}
