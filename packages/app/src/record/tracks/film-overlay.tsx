import './tracks.css';
import { hands } from '@evenhand/core/ground/study';
import type { PlanePoint } from '@evenhand/core/record';
import { type PointerEvent, useEffect, useRef, useState } from 'react';
import type { RecordDesk } from '../desk.ts';
import { useDesk } from '../use-desk.ts';
import { GraphDots } from './graph-dots.tsx';
import type { Pick } from './picks.ts';
import { useTracks } from './use-tracks.ts';

/** Over the film, in pixels of the picture: points that are asked for, regions, and the chronocyclegraph. */
export function FilmOverlay(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  useDesk(desk);
  const { pick, regions, graph } = useTracks(desk);
  const { film } = desk.tracks;
  if (film === undefined || desk.player === undefined) return null;
  const { width, height } = film;
  if (pick === undefined && graph === undefined && regions.left.length + regions.right.length === 0)
    return null;
  return (
    <>
      <svg className="film-overlay" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {hands.flatMap((hand) =>
          regions[hand].map((region) => (
            <g key={`${hand} ${region.x} ${region.y} ${region.width}`} className={`region ${hand}`}>
              <rect {...region} />
              <text x={region.x + width / 120} y={region.y + height / 22} fontSize={height / 28}>
                {hand}
              </text>
            </g>
          )),
        )}
        <GraphDots desk={desk} />
      </svg>
      {pick === undefined ? null : <PickLayer desk={desk} pick={pick} width={width} height={height} />}
    </>
  );
}

interface PickProps {
  readonly desk: RecordDesk;
  readonly pick: Pick;
  readonly width: number;
  readonly height: number;
}

/** Takes the points: by pointer where it is pressed, or by a cross that the arrow keys move. */
function PickLayer({ desk, pick, width, height }: PickProps) {
  const { tracks } = desk;
  const layer = useRef<SVGSVGElement>(null);
  const [cross, setCross] = useState<PlanePoint>({ x: width / 2, y: height / 2 });
  const [drawing, setDrawing] = useState<PlanePoint>();
  const at = (event: PointerEvent<SVGSVGElement>): PlanePoint => {
    const matrix = layer.current?.getScreenCTM();
    if (matrix === null || matrix === undefined) return cross;
    const point = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix.inverse());
    return inPicture(point, width, height);
  };
  useEffect(() => {
    const move = (event: KeyboardEvent) => {
      const step = event.shiftKey ? 20 : 2;
      const by = arrows[event.code];
      if (by !== undefined)
        setCross(({ x, y }) => inPicture({ x: x + by[0] * step, y: y + by[1] * step }, width, height));
      else if (event.code === 'Enter') tracks.setPoint(cross);
      else if (event.code === 'Backspace') tracks.takeBack();
      else if (event.code === 'Escape') tracks.giveUp();
      else return;
      event.preventDefault();
      event.stopImmediatePropagation();
    };
    const onKey = (event: KeyboardEvent) => {
      if (event.target instanceof Element && event.target.closest('input, select, textarea, button') !== null)
        return;
      move(event);
    };
    window.addEventListener('keydown', onKey, { capture: true });
    return () => window.removeEventListener('keydown', onKey, { capture: true });
  }, [tracks, cross, width, height]);
  const corner = pick.area ? (drawing ?? pick.points[0]) : undefined;
  return (
    <>
      <svg
        ref={layer}
        className="film-overlay pick-layer"
        viewBox={`0 0 ${width} ${height}`}
        role="application"
        aria-label="Picture: the arrow keys move the cross, Enter sets the point"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: points are set here by keys
        tabIndex={0}
        onPointerDown={(event) => {
          event.currentTarget.setPointerCapture(event.pointerId);
          const point = at(event);
          setCross(point);
          if (pick.area && pick.points.length === 0) setDrawing(point);
          else tracks.setPoint(point);
        }}
        onPointerMove={(event) => setCross(at(event))}
        onPointerUp={(event) => {
          if (drawing === undefined) return;
          const point = at(event);
          setDrawing(undefined);
          tracks.setPoint(drawing);
          if (Math.hypot(point.x - drawing.x, point.y - drawing.y) > width / 100) tracks.setPoint(point);
        }}
      >
        {pick.points.length > 1 ? (
          <polyline points={[...pick.points, cross].map(({ x, y }) => `${x},${y}`).join(' ')} />
        ) : null}
        {corner === undefined ? null : (
          <rect
            x={Math.min(corner.x, cross.x)}
            y={Math.min(corner.y, cross.y)}
            width={Math.abs(corner.x - cross.x)}
            height={Math.abs(corner.y - cross.y)}
          />
        )}
        {pick.points.map((point, index) => (
          <g key={`${point.x} ${point.y}`} className="set">
            <circle cx={point.x} cy={point.y} r={width / 160} />
            <text x={point.x + width / 90} y={point.y - height / 70} fontSize={height / 26}>
              {index + 1}
            </text>
          </g>
        ))}
        <path
          className="cross"
          d={`M${cross.x - width / 40} ${cross.y}H${cross.x + width / 40}M${cross.x} ${cross.y - width / 40}V${cross.y + width / 40}`}
        />
      </svg>
      <PickBar desk={desk} pick={pick} low={cross.y < height / 3} />
    </>
  );
}

/** Says what to set; out of the way of where it is being set. */
function PickBar({ desk, pick, low }: PickBarProps) {
  const ask = pick.asks[pick.points.length] ?? '';
  return (
    <div className={low ? 'pick-bar low' : 'pick-bar'} role="status">
      <p>
        Click the <strong>{ask}</strong>
        {pick.asks.length > 1 ? ` (${pick.points.length + 1} of ${pick.asks.length})` : ''}.{' '}
        <span className="soft">
          Keys: arrows move the cross, Shift further, Enter sets, Backspace takes back, Escape gives up.
        </span>
      </p>
      <button type="button" disabled={pick.points.length === 0} onClick={() => desk.tracks.takeBack()}>
        Take back
      </button>
      <button type="button" onClick={() => desk.tracks.giveUp()}>
        Give up
      </button>
    </div>
  );
}

interface PickBarProps {
  readonly desk: RecordDesk;
  readonly pick: Pick;
  readonly low: boolean;
}

const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

function inPicture({ x, y }: PlanePoint, width: number, height: number): PlanePoint {
  return { x: Math.min(Math.max(0, x), width), y: Math.min(Math.max(0, y), height) };
}
