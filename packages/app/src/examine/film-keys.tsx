import type { RecordDesk } from '../record/desk.ts';
import { CommandButton, SpeedChoice, Standing } from '../record/transport.tsx';
import { useDesk, usePlayer } from '../record/use-desk.ts';

/** Under the film: where it stands and the ways to move it; the same keys as where it is marked, and nothing that marks. */
export function FilmKeys(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const { loop } = useDesk(desk);
  const player = usePlayer(desk);
  return (
    <section className="transport" aria-label="Moving through the film">
      {player === undefined ? null : (
        <div className="moves">
          <CommandButton desk={desk} id="film.previous-boundary" text="|◂" />
          <CommandButton desk={desk} id="film.step-back" text="◂" />
          <CommandButton desk={desk} id="film.play" text={player.playing ? 'Pause' : 'Play'} strong />
          <CommandButton desk={desk} id="film.step-forward" text="▸" />
          <CommandButton desk={desk} id="film.next-boundary" text="▸|" />
          <SpeedChoice desk={desk} />
          <CommandButton
            desk={desk}
            id="film.loop"
            text={loop === undefined ? 'Loop' : 'End loop'}
            pressed={loop !== undefined}
          />
        </div>
      )}
      <Standing desk={desk} />
      <div className="moves">
        <CommandButton
          desk={desk}
          id="score.fit"
          text={player === undefined ? 'Whole record' : 'Whole film'}
        />
      </div>
    </section>
  );
}
