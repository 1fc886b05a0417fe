import { fail, ok, type Result } from '../../../ground/base/index.ts';
import { type Finding, finding } from '../../../ground/findings/index.ts';
import {
  filmOf,
  hands,
  itemsBetween,
  type Method,
  type Motion,
  methodClock,
  rowStart,
  type Study,
} from '../../../ground/study/index.ts';
import { exactSeconds } from '../../../ground/units/index.ts';
import { csvCell, guardText } from '../interchange/csv-cells.ts';
import { benchPlane, trackOnBench } from './bench-plane.ts';
import { type MotionFigures, motionFigures } from './motion-figures.ts';
import { handMotions } from './speed-ribbon.ts';
import type { Track } from './track.ts';

const columns = [
  'hand',
  'motion',
  'object',
  'frame',
  'start_s',
  'seconds',
  'unit',
  'path',
  'straight',
  'peak_speed',
  'peak_frame',
  'smoothness',
  'seen',
] as const;

/**
 * The figures of every motion’s path as comma-separated text after RFC 4180. Lengths are in millimetres where the film of
 * the method has a calibration, else in pixels; speeds in the same unit a second; smoothness as `spectralArcLength`, of
 * reaches and moves alone. Cells are empty where a figure is not known. Findings `track/no-film`, `track/other-film`, and those of `benchPlane`.
 */
export function pathsToCsv(study: Study, method: Method, track: Track): Result<string, Finding> {
  const film = filmOf(study, method);
  if (film === undefined) return fail(finding('track/no-film', {}, { method: method.name }));
  const plane = film.calibration === undefined ? undefined : benchPlane(film.calibration, film);
  if (plane?.ok === false) return plane;
  const measured = plane === undefined ? track : trackOnBench(track, plane.value);
  const clock = methodClock(study, method);
  if (track.frames !== clock.last)
    return fail(finding('track/other-film', {}, { found: track.frames, frames: clock.last ?? 0 }));
  const motions = handMotions(measured, clock.timeOf);
  const lines = hands.flatMap((hand) =>
    itemsBetween<Motion>(method[hand], rowStart(method[hand]), method[hand].end)
      .filter(({ item }) => item.kind !== 'unmarked')
      .map(({ item, start, end }) => {
        const motion = motions[hand];
        const figures = motion === undefined ? undefined : motionFigures(motion, start, end, clock.timeOf);
        const told = [guardText(item.object ?? ''), String(start), exactSeconds(clock.timeOf(start))];
        const cells = [hand, item.kind, ...told, exactSeconds(clock.span(start, end))];
        return [...cells, ...figureCells(figures, measured.unit, item.kind === 'TE' || item.kind === 'TL')];
      }),
  );
  return ok([columns, ...lines].map((cells) => `${cells.map(csvCell).join(',')}\r\n`).join(''));
}

function figureCells(figures: MotionFigures | undefined, unit: Track['unit'], moves: boolean): string[] {
  if (figures === undefined) return [unit, '', '', '', '', '', '0'];
  const { path, straight, peak, smoothness, seen } = figures;
  return [
    unit,
    path.toFixed(1),
    straight.toFixed(1),
    peak?.speed.toFixed(1) ?? '',
    peak === undefined ? '' : String(peak.frame),
    moves && smoothness !== undefined ? smoothness.toFixed(3) : '',
    seen.toFixed(3),
  ];
}
