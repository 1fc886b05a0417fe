import type { KeptWork, Study } from '@evenhand/core/ground/study';
import { useEffect, useState } from 'react';
import type { RecordDesk } from '../../record/desk.ts';
import { useDesk } from '../../record/use-desk.ts';
import { benchOf } from './bench-of.ts';
import { CalibrateDialog, type Calibrated } from './calibrate-dialog.tsx';
import { flattened, type Pixels } from './flattened.ts';
import { filmPixels, imageUrl, photoPixels } from './picture-pixels.ts';

/** A picture that lies under the drawing, as seen from above. */
export interface Underlay {
  readonly url: string;
  readonly opacity: number;
}

interface Opened {
  readonly pixels: Pixels;
  /** The film that it is a frame of; a photo has none and is not kept. */
  readonly film: Study['films'][number] | undefined;
}

/** Puts a photo or the frame that the film stands at under the drawing, once it is known how large things are in it. */
export function Trace(props: {
  readonly desk: RecordDesk;
  readonly kept: KeptWork;
  readonly underlay: Underlay | undefined;
  readonly onUnderlay: (underlay: Underlay | undefined) => void;
}) {
  const { desk, kept, underlay, onUnderlay } = props;
  const { film } = useDesk(desk);
  const [opened, setOpened] = useState<Opened>();
  const [fault, setFault] = useState<string>();
  const bench = benchOf(kept.work);
  // The picture of one bench is not that of another.
  useEffect(() => () => onUnderlay(undefined), [onUnderlay]);
  const open = async (read: Promise<Pixels>, of: Opened['film']) => {
    setFault(undefined);
    try {
      setOpened({ pixels: await read, film: of });
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  };
  const use = ({ plane, calibration }: Calibrated) => {
    if (opened === undefined) return;
    onUnderlay({ url: imageUrl(flattened(opened.pixels, plane, bench)), opacity: underlay?.opacity ?? 0.5 });
    const { film: of } = opened;
    if (of !== undefined && calibration !== undefined)
      desk.dispatch({
        type: 'film.change',
        film: of.id,
        to: { calibration },
        was: { calibration: of.calibration ?? null },
      });
    setOpened(undefined);
  };
  return (
    <div className="actions plan-trace">
      <span>Trace over</span>
      <label className="button-like">
        a photo …
        <input
          type="file"
          accept="image/*"
          className="hidden"
          onChange={(event) => {
            const file = event.target.files?.[0];
            event.target.value = '';
            if (file !== undefined) void open(photoPixels(file), undefined);
          }}
        />
      </label>
      <button
        type="button"
        disabled={film.kind !== 'open'}
        onClick={() => {
          if (film.kind === 'open')
            void open(filmPixels(film.opened.reader, film.player.state().frame), film.film);
        }}
      >
        the frame of the film
      </button>
      {film.kind === 'open' ? null : <span className="soft">No film is open.</span>}
      {underlay === undefined ? null : (
        <>
          <label className="inline-choice">
            <span>Strength</span>
            <input
              type="range"
              min={0.1}
              max={1}
              step={0.1}
              value={underlay.opacity}
              onChange={(event) => onUnderlay({ ...underlay, opacity: Number(event.target.value) })}
            />
          </label>
          <button type="button" onClick={() => onUnderlay(undefined)}>
            Take the picture away
          </button>
        </>
      )}
      {fault === undefined ? null : (
        <span role="alert" className="fault">
          {fault}
        </span>
      )}
      {opened === undefined ? null : (
        <CalibrateDialog
          pixels={opened.pixels}
          known={opened.film?.calibration}
          mirrored={opened.film?.mirrored === true}
          ofFilm={opened.film !== undefined}
          onUse={use}
          onClose={() => setOpened(undefined)}
        />
      )}
    </div>
  );
}
