import type { Finding } from '@evenhand/core/ground/findings';
import { type Film, type Hand, hands } from '@evenhand/core/ground/study';
import { type Band, type ByHand, bandsFault, type Region } from '@evenhand/media';
import { useState } from 'react';
import type { RecordDesk } from '../desk.ts';
import {
  bandAt,
  freeName,
  handWords,
  landmarkMaker,
  regionsFault,
  scanMaker,
  tableMaker,
} from './track-sources.ts';
import { useTracks } from './use-tracks.ts';

interface Part {
  readonly desk: RecordDesk;
  readonly film: Film;
}

/** The four ways to a track, the one that needs least of the analyst first. */
export function MakeTrack({ desk, film }: Part) {
  const { work, pick } = useTracks(desk);
  const busy = work !== undefined || pick !== undefined || desk.player === undefined;
  return (
    <section aria-label="Make a track">
      <h3>Make a track</h3>
      <p className="soft">
        The search runs in this window. Film and tracks stay on this machine; nothing is sent anywhere.
      </p>
      <label className="check">
        <input
          type="checkbox"
          checked={film.mirrored === true}
          disabled={busy}
          onChange={(event) =>
            desk.dispatch({
              type: 'film.change',
              film: film.id,
              to: { mirrored: event.target.checked ? true : null },
              was: { mirrored: film.mirrored ?? null },
            })
          }
        />
        The film is a mirror image
      </label>
      {(film.tracks ?? []).some(({ source }) => source === 'landmarks') ? (
        <p className="soft">
          Hands that were found before this was changed keep their sides; find them anew.
        </p>
      ) : null}
      <button
        type="button"
        className="strong"
        disabled={busy}
        onClick={() =>
          desk.tracks.make(
            'Looking for the hands',
            'landmarks',
            freeName(film, 'Hands found in the film'),
            landmarkMaker(film, 2),
          )
        }
      >
        Find the hands
      </button>
      <BandFields desk={desk} film={film} busy={busy} />
      <RegionFields desk={desk} film={film} busy={busy} />
      <TableField desk={desk} film={film} busy={busy} />
    </section>
  );
}

function BandFields({ desk, film, busy }: Part & { readonly busy: boolean }) {
  const [bands, setBands] = useState<ByHand<Band>>({});
  const ask = (hand: Hand) =>
    desk.tracks.ask({
      asks: [`middle of the ${hand} hand’s band`],
      area: false,
      hand,
      done: ([point]) => {
        const { player } = desk;
        if (point === undefined || player === undefined) return;
        const found = bandAt(player, point);
        if (!found.ok) return desk.tracks.say([found.error]);
        const next = { ...bands, [hand]: found.value };
        const fault = bandsFault({ left: next.left?.colour, right: next.right?.colour } as Parameters<
          typeof bandsFault
        >[0]);
        if (fault !== undefined) return desk.tracks.say([fault]);
        desk.tracks.say([]);
        setBands(next);
      },
    });
  return (
    <details>
      <summary>Follow coloured wristbands</summary>
      <div>
        <p className="soft">
          For gloves, and where the hands are not found: a band of another strong colour on each wrist. Stop
          where the band is sharp and click it.
        </p>
        <div className="actions">
          {hands.map((hand) => (
            <button key={hand} type="button" disabled={busy} onClick={() => ask(hand)}>
              {hand === 'left' ? 'Left' : 'Right'} band{' '}
              {bands[hand] === undefined ? '…' : <BandSwatch band={bands[hand]} />}
            </button>
          ))}
          <button
            type="button"
            disabled={busy || (bands.left === undefined && bands.right === undefined)}
            onClick={() =>
              desk.tracks.make(
                'Following the bands',
                'bands',
                freeName(film, 'Coloured wristbands'),
                scanMaker(film, { kind: 'bands', bands }),
              )
            }
          >
            Follow them
          </button>
        </div>
      </div>
    </details>
  );
}

function BandSwatch({ band }: { readonly band: Band }) {
  const hue = Math.round(band.colour.hue);
  return (
    <>
      <svg className="swatch" viewBox="0 0 1 1" aria-hidden="true">
        <rect width="1" height="1" fill={`hsl(${hue} 80% 50%)`} />
      </svg>{' '}
      <span className="soft">frame {band.click.frame}</span>
    </>
  );
}

function RegionFields({ desk, film, busy }: Part & { readonly busy: boolean }) {
  const { regions } = useTracks(desk);
  const [fault, setFault] = useState<Finding>();
  const draw = (hand: Hand) =>
    desk.tracks.ask({
      asks: [`one corner of a place where only the ${handWords[hand]} works (or draw it)`, 'opposite corner'],
      area: true,
      hand,
      done: ([a, b]) => {
        if (a === undefined || b === undefined) return;
        const region = spanned(a, b);
        if (region.width < 8 || region.height < 8) return;
        desk.tracks.setRegions(hand, [...desk.tracks.state().regions[hand], region]);
      },
    });
  const measure = () => {
    const crossing = regionsFault(regions);
    setFault(crossing);
    if (crossing !== undefined) return;
    const name = freeName(film, 'Movement in regions');
    void desk.tracks.make('Measuring movement', 'energy', name, scanMaker(film, { kind: 'energy', regions }));
  };
  const count = regions.left.length + regions.right.length;
  return (
    <details>
      <summary>Measure movement in regions</summary>
      <div>
        <p className="soft">
          When nothing else works: draw where each hand works. It tells when a hand moves and roughly where; a
          hand at rest is taken to be where it last moved.
        </p>
        <div className="actions">
          {hands.map((hand) => (
            <button key={hand} type="button" disabled={busy} onClick={() => draw(hand)}>
              {hand === 'left' ? 'Left' : 'Right'} hand’s region …
            </button>
          ))}
          <button
            type="button"
            disabled={busy || count === 0}
            onClick={() => {
              for (const hand of hands) desk.tracks.setRegions(hand, []);
              setFault(undefined);
            }}
          >
            Clear
          </button>
          <button type="button" disabled={busy || count === 0} onClick={measure}>
            Measure
          </button>
        </div>
        {fault === undefined ? null : <p role="alert">{fault.message}</p>}
      </div>
    </details>
  );
}

function spanned(a: { readonly x: number; readonly y: number }, b: typeof a): Region {
  return {
    x: Math.min(a.x, b.x),
    y: Math.min(a.y, b.y),
    width: Math.abs(a.x - b.x),
    height: Math.abs(a.y - b.y),
  };
}

function TableField({ desk, film, busy }: Part & { readonly busy: boolean }) {
  return (
    <details>
      <summary>Read a table (CSV) or a track file</summary>
      <div>
        <p className="soft">
          From any other program: a line for each frame and hand, with the columns frame, hand, x, y, and
          opening if it is known. Frames count from 0, places in pixels of the film. Or a track file of this
          film, as the command line writes it.
        </p>
        <label className="file-choice">
          <span className="hidden">Table of a track</span>
          <input
            type="file"
            accept=".csv,.tsv,.txt,.bin,text/csv"
            disabled={busy}
            onChange={(event) => {
              const [file] = event.target.files ?? [];
              event.target.value = '';
              const frames = desk.clock?.last;
              if (file === undefined || frames === undefined) return;
              const name = freeName(film, file.name.replace(/\.[^.]+$/, ''));
              void desk.tracks.make('Reading the table', 'table', name, tableMaker(film, frames, file));
            }}
          />
        </label>
      </div>
    </details>
  );
}
