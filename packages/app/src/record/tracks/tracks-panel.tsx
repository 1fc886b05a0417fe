import './tracks.css';
import { hands } from '@evenhand/core/ground/study';
import { percentText } from '@evenhand/core/ground/units';
import { trackGaps, writeTrackCsv } from '@evenhand/core/record';
import { useEffect, useRef } from 'react';
import { download } from '../../chart/download.ts';
import { FindingsList } from '../../shell/findings-list.tsx';
import type { RecordDesk } from '../desk.ts';
import { leftWords } from '../left-words.ts';
import { useDesk, useDocument } from '../use-desk.ts';
import { CalibrationFields } from './calibration-fields.tsx';
import { GraphFields } from './graph-fields.tsx';
import { MakeTrack } from './make-track.tsx';
import type { ShownTrack } from './shown-track.ts';
import { sourceWords } from './track-sources.ts';
import { useTracks } from './use-tracks.ts';

/** Where the hands are: the tracks of the film, how to make one, the bench in millimetres, and the paths over the film. */
export function TracksPanel(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  useDesk(desk);
  useDocument(desk);
  const state = useTracks(desk);
  const { film } = desk.tracks;
  const top = useRef<HTMLElement>(null);
  const told = state.work === undefined ? state.findings : undefined;
  // What came of a search stands at the top; whoever started it further down should see it.
  useEffect(() => {
    if (told !== undefined && told.length > 0) top.current?.scrollIntoView({ block: 'start' });
  }, [told]);
  if (film === undefined)
    return <p className="soft">This method has no film, so there is nothing to track.</p>;
  return (
    <div className="tracks-panel">
      {state.work === undefined ? null : <Work desk={desk} />}
      <section aria-label="Tracks of this film" ref={top}>
        <h3>Tracks</h3>
        {film.tracks === undefined ? (
          <p className="soft">
            A track says where each hand is in every frame. It shows the speed of the hands under the score,
            and other cycles are proposed from it.
          </p>
        ) : (
          <TrackList desk={desk} />
        )}
        {state.loading ? <p role="status">Reading the track …</p> : null}
        {state.findings.length === 0 ? null : (
          <div role="alert">
            <FindingsList findings={state.findings} />
          </div>
        )}
      </section>
      <MakeTrack desk={desk} film={film} />
      <GraphFields desk={desk} film={film} />
      <CalibrationFields desk={desk} film={film} />
    </div>
  );
}

function TrackList(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { tracks } = desk;
  const { shown } = useTracks(desk);
  return (
    <>
      <ul className="track-list">
        {(tracks.film?.tracks ?? []).map((record) => (
          <li key={record.id}>
            <label>
              <input
                type="radio"
                name="shown-track"
                checked={tracks.record?.id === record.id}
                onChange={() => tracks.choose(record.id)}
              />
              <span>
                {record.name}
                {record.name.toLowerCase().startsWith(sourceWords[record.source]) ? null : (
                  <span className="soft">, {sourceWords[record.source]}</span>
                )}
              </span>
            </label>
            <button type="button" className="quiet" onClick={() => tracks.remove(record.id)}>
              Remove
            </button>
          </li>
        ))}
      </ul>
      {shown === undefined ? null : (
        <p className="soft">
          {seenWords(shown)}{' '}
          <button
            type="button"
            className="quiet"
            onClick={() =>
              download(
                `${shown.record.name}.csv`,
                new Blob([writeTrackCsv(shown.track)], { type: 'text/csv' }),
              )
            }
          >
            Save as a table
          </button>
        </p>
      )}
    </>
  );
}

/** "Left hand seen in 96 % of the frames, right hand in 99 %." */
function seenWords({ track }: ShownTrack): string {
  const parts = hands.map((hand) => {
    const missing = trackGaps(track, hand).reduce((sum, { start, end }) => sum + end - start, 0);
    return missing === track.frames
      ? `${hand} hand in none`
      : `${hand} hand in ${percentText(1 - missing / track.frames, 0)}`;
  });
  return `Of the frames, the ${parts.join(', the ')}.`;
}

function Work(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { work } = useTracks(desk);
  if (work === undefined) return null;
  const { share, secondsLeft } = work;
  return (
    <div className="work" role="status">
      <progress value={share} max={1} aria-label={work.what} />
      <p>
        {work.what}
        {share === undefined ? ' …' : `, ${percentText(share, 0)}`}
        {secondsLeft === undefined ? '' : `, about ${leftWords(secondsLeft)} left`}{' '}
        <button type="button" className="quiet" onClick={() => desk.tracks.cancel()}>
          Cancel
        </button>
      </p>
    </div>
  );
}
