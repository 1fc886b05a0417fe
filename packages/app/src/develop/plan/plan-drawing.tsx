import { areaOutline, armReach, type HandPath, peopleRanges, type ReachChoice } from '@evenhand/core/develop';
import type { WorkBench } from '@evenhand/core/ground/study';
import { numberText } from '@evenhand/core/ground/units';
import { type KeyboardEvent, type ReactNode, useRef, useState } from 'react';
import {
  dimensionsOf,
  type GridStep,
  namesAt,
  type Placed,
  type Point,
  polygonOf,
  type Snapped,
  snapped,
  stepped,
  type View,
  viewOf,
} from './plan-geometry.ts';

/** What the keys of a place do. */
export interface PlaceKeys {
  readonly onMove: (place: string, at: Point) => void;
  readonly onTurn: (place: Placed, by: number) => void;
  readonly onRemove: (place: Placed) => void;
  readonly onRename: (place: Placed) => void;
}

/** The names of more outlines than these would stand on each other; the words beside them name them all. Ours. */
const mostNamed = 5;

/** The bench from above, millimetres; the operator sits below. */
export function PlanDrawing(
  props: {
    readonly bench: WorkBench;
    readonly places: readonly Placed[];
    readonly reach: ReachChoice;
    readonly paths: readonly HandPath[];
    /** Where places would stand, drawn as outlines. */
    readonly proposed: readonly Placed[];
    readonly grid: GridStep;
    readonly chosen: string | undefined;
    readonly onChoose: (place: string) => void;
    /** The names of places that somebody does not reach. */
    readonly beyond: ReadonlySet<string>;
    /** A picture beneath the drawing. */
    readonly children?: ReactNode;
  } & PlaceKeys,
) {
  const { bench, places, grid, chosen, onChoose, onMove } = props;
  const svg = useRef<SVGSVGElement>(null);
  const [drag, setDrag] = useState<{ readonly id: string; readonly off: Point }>();
  const [line, setLine] = useState<Snapped>();
  // The bench must not grow under the hand that drags a place over its edge.
  const frozen = useRef<View>(undefined);
  const view = drag === undefined ? viewOf(bench, places) : (frozen.current ?? viewOf(bench, places));
  frozen.current = view;
  const point = (event: { readonly clientX: number; readonly clientY: number }): Point | undefined => {
    const matrix = svg.current?.getScreenCTM()?.inverse();
    if (matrix === undefined) return undefined;
    const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
    return { x, y: -y };
  };
  const drop = () => {
    setDrag(undefined);
    setLine(undefined);
  };
  const onKey = (event: KeyboardEvent, place: Placed) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const at = stepped(place.at, event.key, grid, event.shiftKey);
    if (at !== undefined) onMove(place.id, at);
    else if (event.key === 'r' || event.key === 'R') props.onTurn(place, event.shiftKey ? -15 : 15);
    else if (event.key === 'Delete') props.onRemove(place);
    else if (event.key === 'Enter' || event.key === 'F2') props.onRename(place);
    else return;
    event.preventDefault();
  };
  const selected = places.find(({ id }) => id === chosen);
  return (
    <svg
      ref={svg}
      viewBox={`${view.left} ${view.top} ${view.width} ${view.height}`}
      role="group"
      aria-label="Plan of the bench in millimetres"
      onPointerMove={(event) => {
        if (drag === undefined) return;
        const at = point(event);
        if (at === undefined) return;
        const others = places.filter(({ id }) => id !== drag.id);
        const to = snapped({ x: at.x + drag.off.x, y: at.y + drag.off.y }, grid, others);
        setLine(to);
        onMove(drag.id, to.at);
      }}
      onPointerUp={drop}
      onPointerCancel={drop}
    >
      <title>Plan of the bench from above</title>
      {props.children}
      <BenchOutline bench={bench} view={view} reach={props.reach} />
      {line === undefined ? null : (
        <g className="in-line">
          {line.across === undefined ? null : <line x1={line.across} x2={line.across} y1={view.top} y2={0} />}
          {line.away === undefined ? null : (
            <line x1={view.left} x2={view.left + view.width} y1={-line.away} y2={-line.away} />
          )}
        </g>
      )}
      <HandPaths paths={props.paths} />
      {places.map((place) => (
        <g
          key={place.id}
          className={`place ${place.kind}${props.beyond.has(place.id) ? ' beyond' : ''}`}
          tabIndex={0}
          role="button"
          aria-label={labelOf(place, props.beyond.has(place.id))}
          onFocus={() => onChoose(place.id)}
          onPointerDown={(event) => {
            const at = point(event);
            if (at === undefined || event.button !== 0) return;
            event.preventDefault();
            event.currentTarget.focus();
            svg.current?.setPointerCapture(event.pointerId);
            setDrag({ id: place.id, off: { x: place.at.x - at.x, y: place.at.y - at.y } });
          }}
          onKeyDown={(event) => onKey(event, place)}
        >
          <polygon points={polygonOf(place)} />
        </g>
      ))}
      <g className="proposed">
        {props.proposed.map((place) => (
          <g key={place.id}>
            <polygon points={polygonOf(place)} />
            {props.proposed.length > mostNamed ? null : (
              <text x={place.at.x} y={-place.at.y + 6} textAnchor="middle">
                {place.name}
              </text>
            )}
          </g>
        ))}
      </g>
      {selected === undefined ? null : (
        <Dimensions place={selected} others={places.filter((place) => place !== selected)} />
      )}
      <Names places={places} />
    </svg>
  );
}

function labelOf({ name, at, angle, stays }: Placed, beyond: boolean): string {
  const side =
    at.x === 0 ? 'in the middle' : `${mm(Math.abs(at.x))} mm to the ${at.x < 0 ? 'left' : 'right'}`;
  const turn = angle === undefined || angle === 0 ? '' : `, turned by ${angle} degrees`;
  return `${name}, ${side}, ${mm(at.y)} mm away${turn}${stays === true ? ', stays where it is' : ''}${beyond ? ', out of reach' : ''}. Arrow keys move it, R turns it.`;
}

const mm = (value: number) => numberText(value, 0);

function pathOf(points: readonly Point[]): string {
  return points
    .map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'} ${x.toFixed(1)} ${(-y).toFixed(1)}`)
    .join(' ');
}

function BenchOutline(props: {
  readonly bench: WorkBench;
  readonly view: View;
  readonly reach: ReachChoice;
}) {
  const { bench, reach } = props;
  const { smallest } = peopleRanges[reach.people];
  const half = bench.width / 2;
  return (
    <g className="areas">
      <rect className="bench" x={-half} y={-bench.depth} width={bench.width} height={bench.depth} />
      {(['left', 'right'] as const).map((hand) => {
        const arm = armReach(smallest, hand, reach);
        return (
          <g key={hand} className={hand}>
            <path className="maximum" d={pathOf(areaOutline(arm, 'maximum'))} />
            <path className="normal" d={pathOf(areaOutline(arm, 'normal'))} />
            <circle cx={arm.shoulder.x} cy={-arm.shoulder.y} r={9} />
          </g>
        );
      })}
      <line x1={-half} y1={0} x2={half} y2={0} className="edge" />
      <text x={0} y={38} textAnchor="middle" className="operator">
        operator
      </text>
      <text x={half} y={30} textAnchor="end" className="size">
        {mm(bench.width)} × {mm(bench.depth)} mm
      </text>
      <g className="scale">
        <path d={`M ${-half} 24 v 12 m 0 -6 h 200 m 0 -6 v 12`} />
        <text x={-half + 212} y={37}>
          200 mm
        </text>
      </g>
    </g>
  );
}

/** The right hand drawn through, the left hand dashed; what is gone more often is thicker. */
function HandPaths(props: { readonly paths: readonly HandPath[] }) {
  return (
    <g className="ways">
      {props.paths.map(({ trip, from, to, bend }) => (
        <path
          key={`${trip.hand} ${trip.from} ${trip.to} ${trip.loaded}`}
          className={trip.hand}
          d={`M ${from.x} ${-from.y} Q ${bend.x} ${-bend.y} ${to.x} ${-to.y}`}
          strokeWidth={2 + 1.5 * Math.min(4, trip.perCycle)}
        />
      ))}
    </g>
  );
}

function Dimensions(props: { readonly place: Placed; readonly others: readonly Placed[] }) {
  return (
    <g className="dimensions">
      {dimensionsOf(props.place, props.others).map(({ from, to, length }) => {
        const upright = from.x === to.x;
        return (
          <g key={`${from.x} ${from.y} ${to.x} ${to.y}`}>
            <line x1={from.x} y1={-from.y} x2={to.x} y2={-to.y} />
            <text
              x={(from.x + to.x) / 2 + (upright ? 6 : 0)}
              y={-(from.y + to.y) / 2 - (upright ? 0 : 6)}
              textAnchor={upright ? 'start' : 'middle'}
            >
              {mm(length)}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function Names(props: { readonly places: readonly Placed[] }) {
  return (
    <g className="names">
      {namesAt(props.places).map(({ id, name, x, y }) => (
        <text key={id} textAnchor="middle" x={x} y={y}>
          {name}
        </text>
      ))}
    </g>
  );
}
