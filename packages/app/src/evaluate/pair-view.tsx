import { type CycleSync, type SyncMode, syncModes } from '@evenhand/core/evaluate';
import { micros } from '@evenhand/core/ground/base';
import { clockText } from '@evenhand/core/ground/units';
import { speeds, speedText } from '@evenhand/media';
import { type ReactNode, useEffect, useRef, useSyncExternalStore } from 'react';
import { isFree } from '../record/use-desk-keys.ts';
import { FilmSurface } from '../surfaces/film/film-surface.ts';
import type { FilmPair, PairSide, PairState, Side } from './film-pair.ts';

function modeName(mode: SyncMode, basis: CycleSync['basis']): string {
  if (mode === 'real') return 'Real time';
  if (mode === 'phase') return 'Phase';
  return basis === 'motions' ? 'Motion' : 'Element';
}

/** Two films beside each other with one transport. */
export function PairView(props: {
  readonly pair: FilmPair;
  readonly names: Readonly<Record<Side, string>>;
  /** Which cycle is shown, to be chosen beside the name. */
  readonly choices: Readonly<Record<Side, ReactNode>>;
  readonly mode: SyncMode;
  readonly modes: readonly SyncMode[];
  readonly basis: CycleSync['basis'];
  readonly onMode: (mode: SyncMode) => void;
  /** Undefined where nothing more of the motion that is played is there. */
  readonly onNext: (() => void) | undefined;
  /** How the two are kept in step, and what must be known about the two cycles. */
  readonly words: string;
}) {
  const { pair, names, choices, mode, words } = props;
  const state = useSyncExternalStore(pair.subscribe, pair.state);
  usePairKeys(pair);
  return (
    <section className="pair" aria-label="Both films">
      <div className="pair-films">
        <SideFilm side="before" name={names.before} choice={choices.before} state={state.before} />
        <SideFilm side="after" name={names.after} choice={choices.after} state={state.after} />
      </div>
      <Scrub pair={pair} state={state} mode={mode} basis={props.basis} />
      <div className="pair-moves">
        <Transport pair={pair} state={state} />
        <div className="tabs" role="group" aria-label="In step">
          {props.modes.map((name) => (
            <button
              key={name}
              type="button"
              aria-pressed={mode === name}
              title={`In step ${syncModes[name]}`}
              onClick={() => props.onMode(name)}
            >
              {modeName(name, props.basis)}
            </button>
          ))}
        </div>
        <div className="mode-words" role="status">
          {state.stretch === undefined ? (
            <span className="soft">{words}</span>
          ) : (
            <StretchLine pair={pair} name={state.stretch.name} onNext={props.onNext} />
          )}
          {state.waiting ? ' Waiting for the pictures …' : ''}
        </div>
      </div>
    </section>
  );
}

function Scrub(props: {
  readonly pair: FilmPair;
  readonly state: PairState;
  readonly mode: SyncMode;
  readonly basis: CycleSync['basis'];
}) {
  const { pair, state, mode, basis } = props;
  const { length, parts } = pair.timeline;
  const { stretch, time } = state;
  const here = parts.findLast(({ start }) => start <= time)?.name;
  const place = (start: number, wide: number) => ({
    left: `${(100 * start) / length}%`,
    width: `${(100 * wide) / length}%`,
  });
  return (
    <div className="pair-scrub">
      {stretch === undefined || length <= 0 ? null : (
        <div className="pair-span">
          <div style={place(stretch.start, stretch.end - stretch.start)} />
        </div>
      )}
      <input
        type="range"
        aria-label="Moment of the pair"
        aria-valuetext={clockText(micros(Math.round(time)))}
        min={0}
        max={Math.max(1, Math.round(length))}
        step={1}
        value={Math.round(time)}
        onChange={(event) => pair.seek(Number(event.target.value))}
      />
      {mode === 'elements' && length > 0 ? (
        <ol className="pair-parts" aria-label={basis === 'motions' ? 'Shared motions' : 'Elements'}>
          {parts.map(({ name, start, length: wide }) => (
            <li key={`${name} ${start}`} style={place(start, wide)}>
              <button
                type="button"
                title={name}
                aria-pressed={name === here}
                onClick={() => pair.seek(start)}
              >
                {name}
              </button>
            </li>
          ))}
        </ol>
      ) : null}
    </div>
  );
}

/** What is played alone, the way to its next place, and the way back. */
function StretchLine(props: {
  readonly pair: FilmPair;
  readonly name: string;
  readonly onNext: (() => void) | undefined;
}) {
  const { pair, name, onNext } = props;
  return (
    <>
      <span>
        Only <strong>{name}</strong>
      </span>
      {onNext === undefined ? null : (
        <button type="button" className="quiet" onClick={onNext}>
          Next place
        </button>
      )}
      <button type="button" className="quiet" title="Escape" onClick={() => pair.playWhole()}>
        Whole cycle
      </button>
    </>
  );
}

function Transport(props: { readonly pair: FilmPair; readonly state: PairState }) {
  const { pair, state } = props;
  return (
    <>
      <button type="button" title="Start (Home)" aria-label="Start" onClick={() => pair.seek(0)}>
        |◂
      </button>
      <button type="button" title="A frame back (←)" aria-label="A frame back" onClick={() => pair.step(-1)}>
        ◂
      </button>
      <button type="button" className="primary play" title="Space" onClick={() => pair.toggle()}>
        {state.playing ? 'Pause' : 'Play'}
      </button>
      <button type="button" title="A frame on (→)" aria-label="A frame on" onClick={() => pair.step(1)}>
        ▸
      </button>
      <label className="inline-choice">
        <span>Speed</span>
        <select value={state.speed} onChange={(event) => pair.setSpeed(Number(event.target.value))}>
          {speeds.map((speed) => (
            <option key={speed} value={speed}>
              {speedText(speed)}
            </option>
          ))}
        </select>
      </label>
      <button type="button" aria-pressed={state.loop} onClick={() => pair.setLoop(!state.loop)}>
        Loop
      </button>
    </>
  );
}

function SideFilm(props: {
  readonly side: Side;
  readonly name: string;
  readonly choice: ReactNode;
  readonly state: PairSide;
}) {
  const { side, name, choice, state } = props;
  const host = useRef<HTMLDivElement>(null);
  const { player } = state;
  useEffect(() => {
    if (host.current === null || player === undefined) return;
    const surface = new FilmSurface(host.current, `${side === 'before' ? 'Before' : 'After'}: ${name}`);
    surface.show(player);
    return () => surface.dispose();
  }, [player, side, name]);
  return (
    <figure className={`pair-film ${side}`}>
      <figcaption>
        <strong title={name}>{name}</strong>
        {choice}
        <span className="number">{clockText(micros(Math.round(state.time)))}</span>
        {state.kind === 'open' ? <span className="number soft">frame {state.boundary}</span> : null}
      </figcaption>
      {player === undefined ? (
        <p className={state.kind === 'opening' ? 'no-film opening' : 'no-film'}>
          {state.kind === 'opening' ? 'Opening the film …' : state.reason}
        </p>
      ) : (
        <div className="pair-picture" ref={host} />
      )}
    </figure>
  );
}

/** Space plays, the arrows step, Home goes to the start, Escape ends a stretch, L loops; fields and buttons keep their keys. */
function usePairKeys(pair: FilmPair): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (!isFree(event) || event.ctrlKey || event.metaKey || event.altKey) return;
      const target = event.target instanceof Element ? event.target : document.body;
      if (target.closest('input[type=range]') !== null && event.code.startsWith('Arrow')) return;
      if (event.code === 'Space' && target.closest('button, a, summary') !== null) return;
      const run = keys[event.code];
      if (run === undefined) return;
      event.preventDefault();
      run(pair);
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, [pair]);
}

const keys: Readonly<Record<string, (pair: FilmPair) => void>> = {
  Space: (pair) => pair.toggle(),
  ArrowLeft: (pair) => pair.step(-1),
  ArrowRight: (pair) => pair.step(1),
  Home: (pair) => pair.seek(0),
  Escape: (pair) => pair.playWhole(),
  KeyL: (pair) => pair.setLoop(!pair.state().loop),
};
