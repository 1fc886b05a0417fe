import type { Calibration } from '@evenhand/core/ground/study';
import { type BenchPlane, benchPlane } from '@evenhand/core/record';
import { type KeyboardEvent, useMemo, useRef, useState } from 'react';
import { CheckedField } from '../../define/checked-field.tsx';
import { readNumber } from '../../define/field-numbers.ts';
import { Dialog } from '../../shell/dialog.tsx';
import { type Pixels, shifted } from './flattened.ts';
import { imageUrl } from './picture-pixels.ts';
import type { Point } from './plan-geometry.ts';

export interface Calibrated {
  readonly plane: Pick<BenchPlane, 'toPicture'>;
  readonly calibration: Calibration | undefined;
}

const cornerNames = ['Near left', 'Near right', 'Far right', 'Far left'] as const;
const endNames = ['One end', 'Other end'] as const;

/** Says how large things are in a picture: by four corners of a rectangle on the bench, or by the two ends of a length. */
export function CalibrateDialog(props: {
  readonly pixels: Pixels;
  readonly known: Calibration | undefined;
  readonly mirrored: boolean;
  readonly ofFilm: boolean;
  readonly onUse: (calibrated: Calibrated) => void;
  readonly onClose: () => void;
}) {
  const { pixels, known, mirrored, ofFilm, onUse, onClose } = props;
  const [kind, setKind] = useState<Calibration['kind']>(known?.kind ?? 'rectangle');
  const [corners, setCorners] = useState(() => cornersFrom(known, pixels));
  const [ends, setEnds] = useState(() => endsFrom(known, pixels));
  const [across, setAcross] = useState(known?.kind === 'rectangle' ? known.across : 400);
  const [away, setAway] = useState(known?.kind === 'rectangle' ? known.away : 300);
  const [at, setAt] = useState<Point | undefined>(known?.kind === 'rectangle' ? known.at : undefined);
  const [length, setLength] = useState(known?.kind === 'length' ? known.millimetres : 300);
  // A length says nothing of where the bench begins; the picture's lower edge and middle are taken at first.
  const [origin, setOrigin] = useState<Point>({ x: 0, y: 0 });
  const calibration = useMemo(
    (): Calibration =>
      kind === 'rectangle'
        ? { kind, corners, across, away, ...(at === undefined ? {} : { at }) }
        : { kind, ends, millimetres: length },
    [kind, corners, ends, across, away, at, length],
  );
  const plane = useMemo(() => benchPlane(calibration, { mirrored }), [calibration, mirrored]);
  const use = () => {
    if (!plane.ok) return;
    if (kind === 'rectangle')
      return onUse({ plane: plane.value, calibration: ofFilm ? calibration : undefined });
    const foot = plane.value.toBench({ x: pixels.width / 2, y: pixels.height });
    const by = { x: origin.x - foot.x, y: origin.y - foot.y };
    onUse({ plane: shifted(plane.value, by), calibration: ofFilm ? calibration : undefined });
  };
  const millimetres = readNumber({ above: 0, most: 100_000 });
  const anywhere = readNumber({ least: -5000, most: 5000 });
  const names: readonly string[] = kind === 'rectangle' ? cornerNames : endNames;
  return (
    <Dialog title="How large is it in the picture?" onClose={onClose} wide>
      <div className="calibrate">
        <div className="field-pair">
          <label className="step-choice">
            <span className="label">Known is</span>
            <select value={kind} onChange={(event) => setKind(event.target.value as Calibration['kind'])}>
              <option value="rectangle">a rectangle on the bench, seen from anywhere</option>
              <option value="length">a length, seen from straight above</option>
            </select>
          </label>
          {kind === 'rectangle' ? (
            <>
              <CheckedField
                label="Across"
                unit="mm"
                value={String(across)}
                read={millimetres}
                onCommit={setAcross}
              />
              <CheckedField
                label="Away"
                unit="mm"
                value={String(away)}
                read={millimetres}
                onCommit={setAway}
              />
              <CheckedField
                label="Its near left corner, across"
                unit="mm"
                value={String(at?.x ?? -across / 2)}
                read={anywhere}
                onCommit={(x) => setAt({ x, y: at?.y ?? 0 })}
              />
              <CheckedField
                label="and from the edge"
                unit="mm"
                value={String(at?.y ?? 0)}
                read={anywhere}
                onCommit={(y) => setAt({ x: at?.x ?? -across / 2, y })}
              />
            </>
          ) : (
            <>
              <CheckedField
                label="Length"
                unit="mm"
                value={String(length)}
                read={millimetres}
                onCommit={setLength}
              />
              <CheckedField
                label="Middle of the picture’s foot lies across"
                unit="mm"
                value={String(origin.x)}
                read={anywhere}
                onCommit={(x) => setOrigin({ ...origin, x })}
              />
              <CheckedField
                label="and from the edge"
                unit="mm"
                value={String(origin.y)}
                read={anywhere}
                onCommit={(y) => setOrigin({ ...origin, y })}
              />
            </>
          )}
        </div>
        <p className="soft">
          Put each mark on its point by dragging it, or with the arrow keys (<kbd>Shift</kbd> for ten pixels).
          Near is where the operator is. What stands above the bench is not drawn true.
        </p>
        <Marks
          pixels={pixels}
          names={names}
          points={kind === 'rectangle' ? corners : ends}
          onPoint={(index, point) => {
            if (kind === 'rectangle') setCorners(corners.with(index, point) as typeof corners);
            else setEnds(ends.with(index, point) as typeof ends);
          }}
        />
        {plane.ok ? null : (
          <p role="alert" className="fault">
            {plane.error.message}
          </p>
        )}
        <div className="actions">
          <button type="button" className="primary" disabled={!plane.ok} onClick={use}>
            Put it under the plan
          </button>
          <span className="soft">
            {ofFilm
              ? 'The calibration is kept with the film.'
              : 'The photo is not kept in the study: trace what you need of it.'}
          </span>
        </div>
      </div>
    </Dialog>
  );
}

function cornersFrom(known: Calibration | undefined, { width, height }: Pixels) {
  if (known?.kind === 'rectangle') return known.corners;
  const at = (x: number, y: number): Point => ({ x: Math.round(x * width), y: Math.round(y * height) });
  return [at(0.2, 0.8), at(0.8, 0.8), at(0.7, 0.3), at(0.3, 0.3)] as readonly [Point, Point, Point, Point];
}

function endsFrom(known: Calibration | undefined, { width, height }: Pixels) {
  if (known?.kind === 'length') return known.ends;
  const at = (x: number): Point => ({ x: Math.round(x * width), y: Math.round(height / 2) });
  return [at(0.3), at(0.7)] as readonly [Point, Point];
}

/** The picture with marks that are dragged or moved by keys. */
function Marks(props: {
  readonly pixels: Pixels;
  readonly names: readonly string[];
  readonly points: readonly Point[];
  readonly onPoint: (index: number, point: Point) => void;
}) {
  const { pixels, names, points, onPoint } = props;
  const { width, height } = pixels;
  const svg = useRef<SVGSVGElement>(null);
  const [dragged, setDragged] = useState<number>();
  const url = useMemo(() => imageUrl(pixels), [pixels]);
  const inside = ({ x, y }: Point): Point => ({
    x: Math.min(width, Math.max(0, Math.round(x))),
    y: Math.min(height, Math.max(0, Math.round(y))),
  });
  const onKey = (event: KeyboardEvent, index: number, { x, y }: Point) => {
    const by = event.shiftKey ? 10 : 1;
    const way = { ArrowLeft: [-by, 0], ArrowRight: [by, 0], ArrowUp: [0, -by], ArrowDown: [0, by] }[
      event.key
    ];
    if (way === undefined) return;
    event.preventDefault();
    onPoint(index, inside({ x: x + (way[0] ?? 0), y: y + (way[1] ?? 0) }));
  };
  const size = Math.max(width, height) / 60;
  return (
    <svg
      ref={svg}
      className="marks"
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label="The picture with its marks"
      onPointerMove={(event) => {
        const matrix = svg.current?.getScreenCTM()?.inverse();
        if (dragged === undefined || matrix === undefined) return;
        const { x, y } = new DOMPoint(event.clientX, event.clientY).matrixTransform(matrix);
        onPoint(dragged, inside({ x, y }));
      }}
      onPointerUp={() => setDragged(undefined)}
    >
      <title>The picture with its marks</title>
      <image href={url} width={width} height={height} />
      <polygon points={points.map(({ x, y }) => `${x},${y}`).join(' ')} strokeWidth={size / 6} />
      {points.map((mark, index) => (
        <g
          key={names[index]}
          tabIndex={0}
          role="button"
          aria-label={`${names[index]}, ${mark.x} across and ${mark.y} down. Arrow keys move it.`}
          onPointerDown={(event) => {
            event.preventDefault();
            event.currentTarget.focus();
            svg.current?.setPointerCapture(event.pointerId);
            setDragged(index);
          }}
          onKeyDown={(event) => onKey(event, index, mark)}
        >
          <circle cx={mark.x} cy={mark.y} r={size} strokeWidth={size / 4} />
          <text x={mark.x + size * 1.4} y={mark.y - size * 0.6} fontSize={size * 1.5}>
            {names[index]}
          </text>
        </g>
      ))}
    </svg>
  );
}
