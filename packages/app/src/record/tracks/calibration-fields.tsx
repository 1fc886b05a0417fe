import type { Calibration, Film } from '@evenhand/core/ground/study';
import { numberText } from '@evenhand/core/ground/units';
import { benchPlane, type PlanePoint } from '@evenhand/core/record';
import { useState } from 'react';
import type { RecordDesk } from '../desk.ts';
import { cornerAsks } from './picks.ts';
import { useTracks } from './use-tracks.ts';

/** The bench in millimetres: four corners of a known rectangle, or the ends of a known length. */
export function CalibrationFields(props: { readonly desk: RecordDesk; readonly film: Film }) {
  const { desk, film } = props;
  const { pick } = useTracks(desk);
  const [across, setAcross] = useState('297');
  const [away, setAway] = useState('210');
  const [length, setLength] = useState('300');
  const busy = pick !== undefined || desk.player === undefined;
  const set = (calibration: Calibration | undefined) => {
    if (calibration !== undefined) {
      const plane = benchPlane(calibration, film);
      if (!plane.ok) return desk.tracks.say([plane.error]);
    }
    desk.tracks.say([]);
    desk.dispatch({
      type: 'film.change',
      film: film.id,
      to: { calibration: calibration ?? null },
      was: { calibration: film.calibration ?? null },
    } as Parameters<typeof desk.dispatch>[0]);
  };
  const corners = () => {
    const [wide, deep] = [millimetresOf(across), millimetresOf(away)];
    if (wide === undefined || deep === undefined) return desk.say(sizeAsk);
    const done = (corners: readonly PlanePoint[]) =>
      set({ kind: 'rectangle', corners, across: wide, away: deep } as unknown as Calibration);
    desk.tracks.ask({ asks: cornerAsks, area: false, done });
  };
  const ends = () => {
    const millimetres = millimetresOf(length);
    if (millimetres === undefined) return desk.say(sizeAsk);
    const done = (points: readonly PlanePoint[]) =>
      set({ kind: 'length', ends: points, millimetres } as unknown as Calibration);
    desk.tracks.ask({ asks: ['first end of the length', 'other end'], area: false, done });
  };
  return (
    <section aria-label="Bench in millimetres">
      <h3>Bench in millimetres</h3>
      <p className="soft">
        {film.calibration === undefined
          ? 'Until the bench is measured, paths and speeds are in pixels.'
          : toldOf(film.calibration)}
      </p>
      <div className="fields">
        <label>
          <span>Left to right</span>
          <input value={across} inputMode="decimal" onChange={(event) => setAcross(event.target.value)} />
        </label>
        <label>
          <span>Near to far</span>
          <input value={away} inputMode="decimal" onChange={(event) => setAway(event.target.value)} />
        </label>
      </div>
      <div className="actions">
        <button type="button" disabled={busy} onClick={corners}>
          Click four corners …
        </button>
      </div>
      <div className="fields">
        <label>
          <span>Length</span>
          <input value={length} inputMode="decimal" onChange={(event) => setLength(event.target.value)} />
        </label>
      </div>
      <div className="actions">
        <button type="button" disabled={busy} onClick={ends}>
          Click a length …
        </button>
        {film.calibration === undefined ? null : (
          <button type="button" disabled={busy} onClick={() => set(undefined)}>
            Back to pixels
          </button>
        )}
      </div>
      <p className="soft">
        All in millimetres. The corners are those of a sheet or a fixture that lies on the bench (an A4 sheet
        is 297 × 210). A length is right only where the camera looks straight down. A hand above the bench
        reads too fast.
      </p>
    </section>
  );
}

const sizeAsk = 'Write the size in millimetres, a number above 0 such as 297.';

function millimetresOf(text: string): number | undefined {
  const value = Number(text.trim().replace(',', '.'));
  return value > 0 && value <= 100_000 ? value : undefined;
}

function toldOf(calibration: Calibration): string {
  return calibration.kind === 'rectangle'
    ? `Measured by a rectangle of ${millimetreText(calibration.across)} × ${millimetreText(calibration.away)} mm.`
    : `Measured by a length of ${millimetreText(calibration.millimetres)} mm.`;
}

function millimetreText(value: number): string {
  return numberText(value, Number.isInteger(value) ? 0 : 1);
}
