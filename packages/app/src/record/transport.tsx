import { clockText, type TimeUnit, timeText, timeUnitNames, timeUnits } from '@evenhand/core/ground/units';
import { speeds, speedText } from '@evenhand/media';
import { preferences, usePreferences } from '../shell/preferences.ts';
import type { RecordDesk } from './desk.ts';
import { commandById } from './desk-commands.ts';
import { chordText, useKeyLabels } from './key-labels.ts';
import { MethodChoice } from './method-choice.tsx';
import { useDesk, usePlayer, usePlayhead } from './use-desk.ts';

/** Under the film: where it stands, and the ways to move it. */
export function Transport(props: { readonly desk: RecordDesk; readonly onKeys: () => void }) {
  const { desk } = props;
  const { loop } = useDesk(desk);
  const player = usePlayer(desk);
  return (
    <section className="transport" aria-label="Moving through the film">
      <MethodChoice desk={desk} />
      <div className="moves">
        <CommandButton desk={desk} id="film.previous-boundary" text="|◂" />
        <CommandButton desk={desk} id="film.step-back" text="◂" />
        <CommandButton
          desk={desk}
          id="film.play-backward"
          text={player?.playing === true && player.speed < 0 ? 'Pause' : 'Backward'}
        />
        <CommandButton
          desk={desk}
          id="film.play"
          text={player?.playing === true && player.speed > 0 ? 'Pause' : 'Play'}
          strong
        />
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
      <Standing desk={desk} />
      <div className="moves">
        <CommandButton desk={desk} id="cycles.mark" text="Cycle begins" />
        <CommandButton desk={desk} id="score.fit" text="Whole film" />
        <button type="button" onClick={props.onKeys} title="F1">
          Keys
        </button>
      </div>
    </section>
  );
}

export function SpeedChoice(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const player = usePlayer(desk);
  return (
    <label className="inline-choice">
      <span>Speed</span>
      <select
        value={Math.abs(player?.speed ?? 1)}
        disabled={player === undefined}
        onChange={(event) => desk.setSpeed(Number(event.target.value) * ((player?.speed ?? 1) < 0 ? -1 : 1))}
      >
        {speeds.map((speed) => (
          <option key={speed} value={speed}>
            {speedText(speed)}
          </option>
        ))}
      </select>
    </label>
  );
}

/** The frame and the time at which the desk stands, and the unit of time. */
export function Standing(props: { readonly desk: RecordDesk }) {
  const { desk } = props;
  const at = usePlayhead(desk);
  const { unit } = usePreferences();
  const { clock } = desk;
  const player = usePlayer(desk);
  const loaded = clock !== undefined && (clock.last === undefined || at <= clock.last);
  const time = loaded ? clock.timeOf(at) : undefined;
  return (
    <div className="standing">
      {clock?.unit === 'frames' ? (
        <output
          className="frame"
          aria-label="Frame"
          data-frame={at}
          data-ready={player?.ready === true && player.asked === player.frame}
        >
          frame {at}
          <span className="soft"> of {clock.last}</span>
        </output>
      ) : null}
      {time === undefined ? null : (
        <output className="time" aria-label="Time">
          {unit === 'seconds' ? clockText(time) : timeText(time, unit)}
        </output>
      )}
      <UnitChoice />
      {player?.finding === undefined ? null : (
        <span className="error" role="alert">
          {player.finding.message}
        </span>
      )}
    </div>
  );
}

export function UnitChoice() {
  const { unit } = usePreferences();
  return (
    <label className="inline-choice">
      <span className="hidden">Unit of time</span>
      <select value={unit} onChange={(event) => preferences.change({ unit: event.target.value as TimeUnit })}>
        {timeUnitNames.map((name) => (
          <option key={name} value={name}>
            {timeUnits[name].name}
          </option>
        ))}
      </select>
    </label>
  );
}

export function CommandButton(props: {
  readonly desk: RecordDesk;
  readonly id: string;
  readonly text: string;
  readonly strong?: boolean;
  readonly pressed?: boolean;
}) {
  const command = commandById(props.id);
  const labels = useKeyLabels();
  const key = command.keys[0];
  return (
    <button
      type="button"
      className={props.strong === true ? 'primary' : ''}
      data-command={props.id}
      aria-label={/[a-z]/i.test(props.text) ? undefined : command.title}
      aria-pressed={props.pressed}
      title={key === undefined ? command.title : `${command.title} (${chordText(key, labels)})`}
      onClick={() => command.run(props.desk)}
    >
      {props.text}
    </button>
  );
}
