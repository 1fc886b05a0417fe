import type { SyncTimeline } from '@evenhand/core/evaluate';
import type { MethodReading } from '@evenhand/core/examine';
import { type Film, filmOf } from '@evenhand/core/ground/study';
import { createPlayer, type OpenFilm, type Player } from '@evenhand/media';
import { loadFilm } from '../record/load-film.ts';

export type Side = 'before' | 'after';
export const sides: readonly Side[] = ['before', 'after'];

export interface PairSide {
  readonly kind: 'none' | 'opening' | 'open' | 'failed';
  /** Why it cannot be shown. */
  readonly reason: string | undefined;
  readonly player: Player | undefined;
  /** Microseconds since the start of the cycle that are shown. */
  readonly time: number;
  /** Boundary of the method that is shown: a frame of its film, or microseconds. */
  readonly boundary: number;
}

/** A part of the cycle that is played alone, on the time of the pair. */
export interface PairStretch {
  /** What it is, in words. */
  readonly name: string;
  readonly start: number;
  readonly end: number;
}

export interface PairState {
  /** On the time of the pair, microseconds. */
  readonly time: number;
  readonly playing: boolean;
  readonly speed: number;
  readonly loop: boolean;
  /** Playing, but a film has been behind for a while; the other one waits for it. */
  readonly waiting: boolean;
  /** Undefined while the whole cycle is played. */
  readonly stretch: PairStretch | undefined;
  readonly before: PairSide;
  readonly after: PairSide;
}

/** One cycle of a method as the pair shows it. */
export interface PairCycle {
  readonly reading: MethodReading;
  /** Position of the cycle in the reading. */
  readonly position: number;
}

const nothing: PairSide = { kind: 'none', reason: undefined, player: undefined, time: 0, boundary: 0 };

/** Shows one cycle of each of two methods along one time. No framework; it has a life and must be disposed of. */
export class FilmPair {
  readonly #listeners = new Set<() => void>();
  readonly #films = new Map<Side, { readonly sha256: string; opened?: OpenFilm; player?: Player }>();
  #cycles: Readonly<Record<Side, PairCycle>>;
  #timeline: SyncTimeline;
  #state: PairState;
  #frame = 0;
  #last = 0;
  /** Milliseconds for which a film has been behind. */
  #behind = 0;
  #disposed = false;

  constructor(cycles: Readonly<Record<Side, PairCycle>>, timeline: SyncTimeline) {
    this.#cycles = cycles;
    this.#timeline = timeline;
    this.#state = {
      time: 0,
      playing: false,
      speed: 1,
      loop: true,
      waiting: false,
      stretch: undefined,
      before: nothing,
      after: nothing,
    };
    for (const side of sides) this.#openFilm(side);
    this.#show(0);
  }

  readonly state = (): PairState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  get timeline(): SyncTimeline {
    return this.#timeline;
  }

  /** Other cycles, another way of running, or both; the moment of the cycle before stays where it was. */
  change(cycles: Readonly<Record<Side, PairCycle>>, timeline: SyncTimeline): void {
    const { time } = this.#state.before;
    this.#set({ stretch: undefined });
    const same = sides.every(
      (side) =>
        cycles[side].position === this.#cycles[side].position &&
        cycles[side].reading.method.id === this.#cycles[side].reading.method.id,
    );
    this.#cycles = cycles;
    this.#timeline = timeline;
    for (const side of sides) this.#openFilm(side);
    this.#show(same ? timeline.momentOf('before', time) : 0);
  }

  /** Shows a moment; outside of the stretch that is played alone, the whole cycle is there again. */
  seek(time: number): void {
    this.pause();
    const { stretch } = this.#state;
    if (stretch !== undefined && (time < stretch.start || time >= stretch.end)) this.playWhole();
    this.#show(time);
  }

  /** Plays some frames of one method alone, and of the other what belongs to them. */
  playStretch(side: Side, { from, to, name }: { from: number; to: number; name: string }): void {
    const { reading, position } = this.#cycles[side];
    const cycle = reading.cycles[position];
    if (cycle === undefined) return;
    const zero = reading.clock.timeOf(cycle.from);
    const moment = (boundary: number) =>
      this.#timeline.momentOf(side, Math.max(0, reading.clock.timeOf(boundary) - zero));
    const start = moment(from);
    this.#set({ stretch: { name, start, end: Math.max(start + 1, moment(to)) } });
    this.#show(start);
    this.play();
  }

  /** Ends the stretch; what is shown stays. */
  playWhole(): void {
    this.#set({ stretch: undefined });
  }

  /** To the nearest moment on either side at which one of the films shows another frame. */
  step(direction: 1 | -1): void {
    this.pause();
    const { time } = this.#state;
    const moments = sides.flatMap((side) => {
      const { reading, position } = this.#cycles[side];
      const cycle = reading.cycles[position];
      if (cycle === undefined) return [];
      const zero = reading.clock.timeOf(cycle.from);
      const here = this.#state[side].boundary;
      const step = reading.clock.unit === 'frames' ? 1 : stillStep;
      return [here, here + step, here - step, here - 2 * step]
        .filter((boundary) => boundary >= cycle.from && boundary <= cycle.to)
        .map((boundary) => this.#timeline.momentOf(side, reading.clock.timeOf(boundary) - zero));
    });
    const least = 500;
    const next =
      direction > 0
        ? Math.min(...moments.filter((moment) => moment > time + least), this.#timeline.length)
        : Math.max(...moments.filter((moment) => moment < time - least), 0);
    this.#show(next);
  }

  toggle(): void {
    if (this.#state.playing) this.pause();
    else this.play();
  }

  play(): void {
    const { time } = this.#state;
    const { start, end } = this.#span();
    const from = time < start || time >= end - 1 ? start : time;
    this.#set({ playing: true, time: from });
    this.#last = performance.now();
    this.#behind = 0;
    cancelAnimationFrame(this.#frame);
    this.#frame = requestAnimationFrame(this.#tick);
  }

  pause(): void {
    cancelAnimationFrame(this.#frame);
    if (this.#state.playing) this.#set({ playing: false, waiting: false });
  }

  setSpeed(speed: number): void {
    this.#set({ speed });
  }

  setLoop(loop: boolean): void {
    this.#set({ loop });
  }

  dispose(): void {
    this.#disposed = true;
    cancelAnimationFrame(this.#frame);
    for (const side of sides) this.#closeFilm(side);
    this.#listeners.clear();
  }

  readonly #tick = (now: number): void => {
    const gone = now - this.#last;
    this.#last = now;
    this.#frame = requestAnimationFrame(this.#tick);
    // Both films stand until both show what was asked for: frames on screen always belong together.
    if (sides.some((side) => isBehind(this.#state[side].player))) {
      this.#behind += gone;
      if (this.#behind > patience && !this.#state.waiting) this.#set({ waiting: true });
      return;
    }
    this.#behind = 0;
    const { speed, loop, time } = this.#state;
    const { start, end } = this.#span();
    let next = time + Math.min(250, gone) * 1000 * speed;
    if (next >= end) {
      if (!loop) {
        this.pause();
        return this.#show(Math.max(start, end - 1));
      }
      next = end <= start ? start : start + ((next - start) % (end - start));
    }
    this.#show(next, { waiting: false });
  };

  /** What is played: the stretch, or the whole cycle. */
  #span(): { readonly start: number; readonly end: number } {
    return this.#state.stretch ?? { start: 0, end: this.#timeline.length };
  }

  #show(wanted: number, change: Partial<PairState> = {}): void {
    const time = Math.min(Math.max(0, wanted), this.#timeline.length);
    const times = this.#timeline.at(time);
    const shown = { before: this.#shown('before', times.before), after: this.#shown('after', times.after) };
    this.#set({ time, ...shown, ...change });
  }

  #shown(side: Side, time: number): PairSide {
    const { reading, position } = this.#cycles[side];
    const cycle = reading.cycles[position];
    if (cycle === undefined) return nothing;
    const { clock } = reading;
    // Half a microsecond of rounding must not show the frame before.
    const at = clock.boundaryAt(clock.timeOf(cycle.from) + Math.round(time));
    const boundary = Math.min(Math.max(cycle.from, at), Math.max(cycle.from, cycle.to - 1));
    const known = this.#state[side];
    const { player } = known;
    if (player !== undefined && player.state().asked !== boundary) player.jump(boundary);
    return { ...known, time, boundary };
  }

  #openFilm(side: Side): void {
    const { reading } = this.#cycles[side];
    const film = filmOf(reading.study, reading.method);
    if (film === undefined) {
      this.#closeFilm(side);
      const reason =
        reading.method.kind === 'composed'
          ? 'A composed method has no film; its chart stands below.'
          : 'This method has no film; its chart stands below.';
      return this.#setSide(side, { kind: 'none', reason, player: undefined });
    }
    if (this.#films.get(side)?.sha256 === film.sha256) return;
    this.#closeFilm(side);
    this.#films.set(side, { sha256: film.sha256 });
    this.#setSide(side, { kind: 'opening', reason: undefined, player: undefined });
    void this.#load(side, film);
  }

  async #load(side: Side, film: Film): Promise<void> {
    const opened = await loadFilm(film);
    const slot = this.#films.get(side);
    if (this.#disposed || slot?.sha256 !== film.sha256 || slot.opened !== undefined) {
      if (opened.ok) opened.value.dispose();
      return;
    }
    if (!opened.ok) {
      const reason = opened.error.map(({ message }) => message).join(' ');
      return this.#setSide(side, { kind: 'failed', reason, player: undefined });
    }
    const player = createPlayer(opened.value.reader, opened.value.clock);
    this.#films.set(side, { sha256: film.sha256, opened: opened.value, player });
    this.#setSide(side, { kind: 'open', reason: undefined, player });
    player.jump(this.#state[side].boundary);
  }

  #closeFilm(side: Side): void {
    const slot = this.#films.get(side);
    this.#films.delete(side);
    slot?.player?.dispose();
    slot?.opened?.dispose();
  }

  #setSide(side: Side, change: Partial<PairSide>): void {
    this.#set({ [side]: { ...this.#state[side], ...change } });
  }

  #set(change: Partial<PairState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }
}

/** A film that decodes is told to be behind only after so many milliseconds. Ours. */
const patience = 400;

/** The frame that was asked for has not come on screen yet. */
function isBehind(player: Player | undefined): boolean {
  if (player === undefined) return false;
  const { asked, frame, ready, finding } = player.state();
  return finding === undefined && (!ready || asked !== frame);
}

/** The step of a method that has no frames: a hundredth of a second. */
const stillStep = 10_000;
