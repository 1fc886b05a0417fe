import { itemAt } from '@evenhand/core/ground/study';
import { motionFactsOf } from '@evenhand/core/ground/tables';
import { chronocyclegraph, type GraphDot, type GraphPath } from '@evenhand/core/record';
import { useMemo } from 'react';
import type { RecordDesk } from '../desk.ts';
import { useTracks } from './use-tracks.ts';

/** What has no motion marked, on a film of any brightness. */
const unmarkedColour = '#b9bcc0';

/** The colour of the motion in which a dot lies. */
export function dotColour(desk: RecordDesk, path: GraphPath, dot: GraphDot): string {
  const found = desk.method === undefined ? undefined : itemAt(desk.method[path.hand], dot.frame);
  return found === undefined || found.item.kind === 'unmarked'
    ? unmarkedColour
    : motionFactsOf(found.item.kind).colour;
}

/** The chronocyclegraph over the film: round dots for the left hand, diamonds for the right one. */
export function GraphDots(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { graph, shown } = useTracks(desk);
  const { clock, method } = desk;
  const film = desk.tracks.film;
  const motions = shown?.inPicture;
  const paths = useMemo(
    () =>
      graph === undefined || motions === undefined || clock === undefined
        ? []
        : chronocyclegraph(motions, graph.spans, graph.every, clock.timeOf),
    [graph, motions, clock],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: the colours are those of the motions of the method
  const drawn = useMemo(() => {
    const size = (film?.width ?? 1280) / 260;
    return paths.map((path) => (
      <PathDots key={`${path.hand}-${path.span}`} desk={desk} path={path} size={size} />
    ));
  }, [paths, method, film?.width]);
  return <g className="graph">{drawn}</g>;
}

function PathDots(props: { readonly desk: RecordDesk; readonly path: GraphPath; readonly size: number }) {
  const { desk, path, size } = props;
  return (
    <>
      {path.dots.map((dot) =>
        path.hand === 'left' ? (
          <circle key={dot.time} cx={dot.x} cy={dot.y} r={size} fill={dotColour(desk, path, dot)} />
        ) : (
          <path
            key={dot.time}
            d={`M${dot.x - size * 1.25} ${dot.y}L${dot.x} ${dot.y - size * 1.25}L${dot.x + size * 1.25} ${dot.y}L${dot.x} ${dot.y + size * 1.25}Z`}
            fill={dotColour(desk, path, dot)}
          />
        ),
      )}
    </>
  );
}
