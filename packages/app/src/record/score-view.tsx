import { useEffect, useRef } from 'react';
import { useLook, usePreferences } from '../shell/preferences.ts';
import type { ScoreControls } from '../surfaces/score/score-events.ts';
import { ScoreSurface } from '../surfaces/score/score-surface.ts';
import type { RecordDesk } from './desk.ts';
import { useTracks } from './tracks/use-tracks.ts';
import { useDesk, useDocument, usePlayer, usePlayhead } from './use-desk.ts';

/** The two-hand score: a canvas that React only feeds. */
export function ScoreView(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const host = useRef<HTMLDivElement>(null);
  const surface = useRef<ScoreControls>(undefined);
  const { selection, loop, lit, methodId } = useDesk(desk);
  const { study } = useDocument(desk);
  const playhead = usePlayhead(desk);
  const { unit } = usePreferences();
  const look = useLook();
  const ribbon = useTracks(desk).shown?.ribbon;
  const method = study.methods.find((item) => item.id === methodId);
  const playing = usePlayer(desk)?.playing ?? false;
  useEffect(() => {
    if (host.current === null) return;
    const made = new ScoreSurface(host.current, {
      onEvent: desk.onScoreEvent,
      label:
        'Two-hand score: the left hand above the time axis, the right hand below. The list of motions on the record desk says the same in words.',
    });
    surface.current = made;
    desk.attachScore(made);
    return () => {
      desk.attachScore(undefined);
      made.dispose();
      surface.current = undefined;
    };
  }, [desk]);
  useEffect(() => {
    if (method === undefined) return;
    surface.current?.update({ study, method, unit, playhead, playing, look, selection, loop, lit, ribbon });
  }, [study, method, unit, playhead, playing, look, selection, loop, lit, ribbon]);
  return <section className="score" aria-label="Two-hand score" ref={host} />;
}
