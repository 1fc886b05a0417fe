import { compareCycles, comparisonPlaces, comparisonScene } from '@evenhand/core/examine';
import type { Study } from '@evenhand/core/ground/study';
import type { TimeUnit } from '@evenhand/core/ground/units';
import { useMemo } from 'react';
import { useWidth } from '../evaluate/use-width.ts';
import { SceneView } from '../examine/compare/scene-view.tsx';
import { useLook } from '../shell/preferences.ts';
import { HandRows } from './by-hand/hand-rows.tsx';
import { HandVerdict } from './by-hand/hand-verdict.tsx';
import type { ByHand } from './by-hand/use-by-hand.ts';
import type { PlainMethod } from './developed-plain.ts';

/** Height of a block on this desk, where the plan needs the room. */
const blocks = 24;

/** The recorded cycle and the composed one on one time scale, and the steps of the composed one, to be changed by hand. */
export function ComposedScores(props: {
  readonly study: Study;
  readonly methodId: string;
  readonly cycle: number | undefined;
  readonly composed: PlainMethod;
  readonly byHand?: ByHand | undefined;
  readonly unit: TimeUnit;
}) {
  const { study, methodId, cycle, composed, byHand, unit } = props;
  const shown = byHand?.method ?? composed;
  const look = useLook();
  const [host, width] = useWidth(640);
  const picture = useMemo(() => {
    const known = new Set(study.places.map(({ id }) => id));
    const places = shown.work.places.filter(({ id }) => !known.has(id)).map(({ id, name }) => ({ id, name }));
    const both: Study = {
      ...study,
      places: [...study.places, ...places],
      methods: [...study.methods, shown.method],
    };
    const compared = compareCycles(both, { method: methodId, cycle }, { method: shown.method.id, cycle: 1 });
    if (!compared.ok) return undefined;
    return {
      scene: comparisonScene(compared.value, { width, unit, blocks }),
      x: comparisonPlaces(compared.value, width, blocks).x,
    };
  }, [study, methodId, cycle, shown, width, unit]);
  return (
    <section
      className="develop-below composed-scores"
      aria-label="Recorded and composed on one time scale"
      // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by the keyboard
      tabIndex={0}
    >
      <div ref={host} />
      {picture === undefined ? null : (
        <>
          <SceneView scene={picture.scene} look={look} id="develop" />
          {byHand === undefined ? null : (
            <>
              <HandRows byHand={byHand} x={picture.x} width={width} />
              <HandVerdict byHand={byHand} composed={composed} unit={unit} />
            </>
          )}
        </>
      )}
    </section>
  );
}
