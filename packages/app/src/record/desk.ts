import type { Edit } from '@evenhand/core/ground/edit';
import type { Finding } from '@evenhand/core/ground/findings';
import {
  type Cycle,
  type Film,
  filmOf,
  findItem,
  type Hand,
  hands,
  itemAt,
  type Method,
  type MethodClock,
  type Motion,
  methodClock,
  type Spanned,
  type Study,
} from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import {
  endCycles,
  type LitSpan,
  moveCycleMark,
  moveRowEnd,
  moveStart,
  type Span,
} from '@evenhand/core/record';
import { createPlayer, nextSpeed, type OpenFilm, type Player } from '@evenhand/media';
import type { PreferenceStore } from '../editor/preferences.ts';
import type { StudyDocument } from '../editor/study-document.ts';
import type { ScoreControls, ScoreEvent, ScoreSelection } from '../surfaces/score/score-events.ts';
import { loadFilm } from './load-film.ts';
import { Proposals } from './proposals/proposals.ts';
import { DeskTracks } from './tracks/desk-tracks.ts';

export type FilmState =
  | { readonly kind: 'none' }
  | { readonly kind: 'opening'; readonly film: Film }
  | { readonly kind: 'open'; readonly film: Film; readonly opened: OpenFilm; readonly player: Player }
  | { readonly kind: 'failed'; readonly film: Film; readonly findings: readonly Finding[] };

export interface DeskState {
  readonly methodId: string | undefined;
  readonly film: FilmState;
  readonly selection: ScoreSelection | undefined;
  readonly loop: Span | undefined;
  /** Stretches that are pointed out on the score. */
  readonly lit: readonly LitSpan[] | undefined;
  /** Where the method without a film stands, in microseconds. */
  readonly still: number;
  /** The last marking key, so that the key map can show that it was heard. */
  readonly pressed: { readonly hand: Hand; readonly kind: MotionKind; readonly count: number } | undefined;
  /** One sentence about what just happened or could not. */
  readonly message: string | undefined;
}

/** The step of a method that has no frames: a hundredth of a second. */
export const stillStep = 10_000;

/** What the record desk shows and does, without any framework: one film, one method, one selection. */
export class RecordDesk {
  readonly document: StudyDocument;
  readonly preferences: PreferenceStore;
  readonly proposals: Proposals = new Proposals(this);
  /** Where the hands are in the film. */
  readonly tracks: DeskTracks;
  readonly #listeners = new Set<() => void>();
  #state: DeskState;
  #score: ScoreControls | undefined;
  #opening = 0;
  #stopDocument: () => void;
  #stopPlayer: () => void = () => {};
  #disposed = false;

  constructor(document: StudyDocument, preferences: PreferenceStore, methodId?: string) {
    this.document = document;
    this.preferences = preferences;
    const { study } = document.state();
    const method = study.methods.find((item) => item.id === methodId) ?? study.methods[0];
    this.#state = {
      methodId: method?.id,
      film: { kind: 'none' },
      selection: undefined,
      loop: undefined,
      lit: undefined,
      still: 0,
      pressed: undefined,
      message: undefined,
    };
    this.#stopDocument = document.subscribe(() => this.#followDocument());
    this.#openFilm();
    this.tracks = new DeskTracks(this);
  }

  readonly state = (): DeskState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  get study(): Study {
    return this.document.state().study;
  }

  get method(): Method | undefined {
    return this.study.methods.find((item) => item.id === this.#state.methodId);
  }

  get clock(): MethodClock | undefined {
    const method = this.method;
    return method === undefined ? undefined : methodClock(this.study, method);
  }

  get player(): Player | undefined {
    return this.#state.film.kind === 'open' ? this.#state.film.player : undefined;
  }

  /** The boundary at which the desk stands: the shown frame, or microseconds without a film. */
  get playhead(): number {
    return this.player?.state().frame ?? this.#state.still;
  }

  get end(): number {
    const method = this.method;
    return (
      this.clock?.last ?? Math.max(method?.left.end ?? 0, method?.right.end ?? 0, method?.cycles.end ?? 0)
    );
  }

  attachScore(score: ScoreControls | undefined): void {
    this.#score = score;
  }

  get score(): ScoreControls | undefined {
    return this.#score;
  }

  dispose(): void {
    this.#disposed = true;
    this.tracks.dispose();
    this.#stopDocument();
    this.proposals.dispose();
    this.#closeFilm();
    this.#listeners.clear();
  }

  // ---- film and method

  chooseMethod(id: string): void {
    if (id === this.#state.methodId) return;
    this.proposals.forget();
    this.#set({ methodId: id, selection: undefined, loop: undefined, lit: undefined, still: 0 });
    this.#openFilm();
  }

  /** Opens the film again, after it was brought back or the server returned. */
  reopenFilm(): void {
    this.#openFilm();
  }

  #followDocument(): void {
    if (this.method === undefined) {
      const first = this.study.methods[0]?.id;
      if (first !== this.#state.methodId) {
        this.#set({ methodId: first, selection: undefined, loop: undefined });
        this.#openFilm();
      }
    }
    if (this.#selectionGone()) this.#set({ selection: undefined });
    this.#emit();
  }

  #selectionGone(): boolean {
    const { selection } = this.#state;
    const method = this.method;
    return (
      selection?.kind === 'motion' &&
      (method === undefined || findItem(method[selection.hand], selection.motionId) === undefined)
    );
  }

  #openFilm(): void {
    const method = this.method;
    const film = method === undefined ? undefined : filmOf(this.study, method);
    const { film: present } = this.#state;
    if (present.kind !== 'none' && present.kind !== 'failed' && present.film.sha256 === film?.sha256) return;
    this.#closeFilm();
    if (film === undefined) return this.#set({ film: { kind: 'none' } });
    this.#opening += 1;
    void this.#load(film, this.#opening);
    this.#set({ film: { kind: 'opening', film } });
  }

  async #load(film: Film, turn: number): Promise<void> {
    const opened = await loadFilm(film);
    if (this.#disposed || turn !== this.#opening) {
      if (opened.ok) opened.value.dispose();
      return;
    }
    if (!opened.ok) return this.#set({ film: { kind: 'failed', film, findings: opened.error } });
    const player = createPlayer(opened.value.reader, opened.value.clock);
    this.#stopPlayer = player.subscribe(() => this.#emit());
    player.setLoop(this.#state.loop);
    this.#set({ film: { kind: 'open', film, opened: opened.value, player } });
  }

  #closeFilm(): void {
    this.#opening += 1;
    this.#stopPlayer();
    this.#stopPlayer = () => {};
    const { film } = this.#state;
    if (film.kind !== 'open') return;
    film.player.dispose();
    film.opened.dispose();
    this.#state = { ...this.#state, film: { kind: 'none' } };
  }

  // ---- moving about

  jump(boundary: number): void {
    const goal = Math.max(0, Math.min(boundary, this.end - 1));
    if (this.player !== undefined) this.player.jump(goal);
    else this.#set({ still: goal });
    this.#score?.reveal(goal);
  }

  step(count: number): void {
    if (this.player !== undefined) this.player.step(count);
    else this.jump(this.#state.still + count * stillStep);
    this.#score?.reveal(this.player?.state().asked ?? this.playhead);
  }

  togglePlay(): void {
    const { player } = this;
    if (player === undefined) return;
    if (player.state().playing) player.pause();
    else player.play(Math.abs(player.state().speed) || 1);
  }

  playBackward(): void {
    const { player } = this;
    if (player === undefined) return;
    const { playing, speed } = player.state();
    if (playing && speed < 0) player.pause();
    else player.play(-Math.abs(speed) || -1);
  }

  changeSpeed(change: 1 | -1): void {
    const { player } = this;
    if (player === undefined) return;
    const { playing, speed } = player.state();
    const next = nextSpeed(speed, change);
    player.play(next);
    if (!playing) player.pause();
  }

  setSpeed(speed: number): void {
    const { player } = this;
    if (player === undefined) return;
    const { playing } = player.state();
    player.play(speed);
    if (!playing) player.pause();
  }

  /** To the next boundary of either hand, or of the selected motion's hand, in a direction. */
  jumpToBoundary(direction: 1 | -1): void {
    const method = this.method;
    if (method === undefined) return;
    const at = this.player?.state().asked ?? this.playhead;
    const starts = [...hands.map((hand) => method[hand]), method.cycles].flatMap((row) =>
      boundariesNear(row, at),
    );
    const ahead = starts.filter((start) => (direction > 0 ? start > at : start < at));
    if (ahead.length > 0) this.jump(direction > 0 ? Math.min(...ahead) : Math.max(...ahead));
  }

  // ---- selecting

  select(selection: ScoreSelection | undefined): void {
    this.#set({ selection });
  }

  /** Selects the motion of a hand at the playhead. */
  selectAtPlayhead(hand: Hand): void {
    const method = this.method;
    const found = method === undefined ? undefined : itemAt(method[hand], this.playhead);
    if (found !== undefined) this.#set({ selection: { kind: 'motion', hand, motionId: found.item.id } });
  }

  /** Selects the neighbour of the selected motion in its row and goes to its start. */
  selectNeighbour(direction: 1 | -1): void {
    const chosen = this.selectedMotion;
    if (chosen === undefined) return this.selectAtPlayhead('left');
    const item = this.method?.[chosen.hand].items[chosen.index + direction];
    if (item === undefined) return;
    this.#set({ selection: { kind: 'motion', hand: chosen.hand, motionId: item.id } });
    this.jump(item.start);
  }

  selectCycle(): void {
    const method = this.method;
    const cycle = method === undefined ? undefined : itemAt(method.cycles, this.playhead);
    if (cycle === undefined) return this.say('No cycle is marked here. Press Enter where one begins.');
    this.#set({ selection: { kind: 'span', hand: 'both', from: cycle.start, to: cycle.end } });
  }

  /** Begins or ends the selected span at the playhead. */
  spanEdge(edge: 'from' | 'to'): void {
    const at = this.playhead;
    const present = this.#state.selection;
    const span = this.selectedSpan;
    const hand = present?.kind === 'span' ? present.hand : (present?.hand ?? 'both');
    const from = edge === 'from' ? at : Math.min(span?.from ?? 0, at);
    const to = edge === 'to' ? Math.min(at + 1, this.end) : Math.max(span?.to ?? this.end, at + 1);
    if (from < to) this.#set({ selection: { kind: 'span', hand, from, to } });
  }

  get selectedMotion(): (Spanned<Motion> & { readonly hand: Hand }) | undefined {
    const { selection } = this.#state;
    const method = this.method;
    if (selection?.kind !== 'motion' || method === undefined) return undefined;
    const found = findItem(method[selection.hand], selection.motionId);
    return found === undefined ? undefined : { ...found, hand: selection.hand };
  }

  /** The stretch that the selection covers. */
  get selectedSpan(): Span | undefined {
    const { selection } = this.#state;
    if (selection?.kind === 'span') return { from: selection.from, to: selection.to };
    const motion = this.selectedMotion;
    return motion === undefined ? undefined : { from: motion.start, to: motion.end };
  }

  get selectedHands(): readonly Hand[] {
    const { selection } = this.#state;
    if (selection === undefined) return [];
    return selection.hand === 'both' ? hands : [selection.hand];
  }

  get cycleHere(): Spanned<Cycle> | undefined {
    const method = this.method;
    return method === undefined ? undefined : itemAt(method.cycles, this.playhead);
  }

  toggleLoop(): void {
    if (this.#state.loop !== undefined) return this.#loop(undefined);
    const cycle = this.cycleHere;
    const span =
      this.selectedSpan ?? (cycle === undefined ? undefined : { from: cycle.start, to: cycle.end });
    if (span === undefined) return this.say('Select a motion, a span or a cycle to loop.');
    this.#loop(span);
  }

  /** Points stretches out on the score and plays the film over and over in the loop, or from the first to the last of them. */
  showSpans(spans: readonly LitSpan[], loop: Span | undefined = spanOver(spans)): void {
    if (loop === undefined) return this.hideSpans();
    this.#loop(loop);
    this.#set({ lit: spans });
    this.jump(loop.from);
    const { player } = this;
    if (player !== undefined && !player.state().playing) player.play(Math.abs(player.state().speed) || 1);
  }

  hideSpans(): void {
    if (this.#state.lit === undefined) return;
    this.player?.pause();
    this.#loop(undefined);
    this.#set({ lit: undefined });
  }

  #loop(loop: Span | undefined): void {
    this.player?.setLoop(loop);
    this.#set({ loop });
  }

  /** Escape: the gesture first, then what is pointed out, then the loop, then the selection. */
  escape(): void {
    if (this.#score?.cancelGesture() === true) return;
    if (this.#state.message !== undefined) this.#set({ message: undefined });
    else if (this.#state.lit !== undefined) this.hideSpans();
    else if (this.#state.loop !== undefined) this.#loop(undefined);
    else this.#set({ selection: undefined });
  }

  // ---- editing

  undo(): void {
    this.say(undefined);
    this.document.undo();
    this.#sayRefused();
  }

  redo(): void {
    this.say(undefined);
    this.document.redo();
    this.#sayRefused();
  }

  /** Applies an edit; says why when it does not hold. */
  dispatch(edit: Edit): boolean {
    const held = this.document.dispatch(edit);
    if (held) this.say(undefined);
    else this.#sayRefused();
    return held;
  }

  #sayRefused(): void {
    const { refused } = this.document.state();
    if (refused === undefined) return;
    this.say(refused.message);
    this.document.dismissRefused();
  }

  // ---- what the score reports

  readonly onScoreEvent = (event: ScoreEvent): void => {
    switch (event.type) {
      case 'seek':
        if (this.player !== undefined) this.player.jump(Math.max(0, Math.min(event.boundary, this.end - 1)));
        else this.#set({ still: Math.max(0, Math.min(event.boundary, this.end - 1)) });
        return;
      case 'select':
        return this.#selectFromScore(event.hand, event.motionId, event.extend);
      case 'select-cycle': {
        const cycle = this.method === undefined ? undefined : findItem(this.method.cycles, event.cycleId);
        if (cycle !== undefined)
          this.#set({ selection: { kind: 'span', hand: 'both', from: cycle.start, to: cycle.end } });
        return;
      }
      case 'select-span':
        if (event.phase === 'commit')
          this.#set({ selection: { kind: 'span', hand: event.hand, from: event.from, to: event.to } });
        return;
      case 'select-none':
        return this.#set({ selection: undefined });
      case 'view-changed':
        return;
      default:
        return this.#moveFromScore(event);
    }
  };

  #selectFromScore(hand: Hand, motionId: string, extend: boolean): void {
    const method = this.method;
    const before = this.#state.selection;
    const found = method === undefined ? undefined : findItem(method[hand], motionId);
    if (found === undefined) return;
    const span = this.selectedSpan;
    if (!extend || before === undefined || span === undefined) {
      return this.#set({ selection: { kind: 'motion', hand, motionId } });
    }
    const both = before.hand === 'both' || before.hand !== hand;
    const reach = { from: Math.min(span.from, found.start), to: Math.max(span.to, found.end) };
    this.#set({ selection: { kind: 'span', hand: both ? 'both' : hand, ...reach } });
  }

  #moveFromScore(event: Extract<ScoreEvent, { phase: unknown; to: number; type: `move-${string}` }>): void {
    const method = this.method;
    if (event.phase !== 'commit' || method === undefined) return;
    const last = this.clock?.last ?? Number.MAX_SAFE_INTEGER;
    const edit =
      event.type === 'move-boundary'
        ? moveStart({ method, hand: event.hand }, event.motionId, event.to)
        : event.type === 'move-row-end'
          ? moveRowEnd({ method, hand: event.hand }, event.to, last)
          : event.type === 'move-cycle'
            ? moveCycleMark(method, event.cycleId, event.to)
            : endCycles(method, event.to, last);
    if (edit !== undefined) this.dispatch(edit);
  }

  say(message: string | undefined): void {
    this.#set({ message });
  }

  /** A marking key was heard: the key map shows it. */
  showPressed(hand: Hand, kind: MotionKind): void {
    this.#set({ pressed: { hand, kind, count: (this.#state.pressed?.count ?? 0) + 1 } });
  }

  #set(change: Partial<DeskState>): void {
    this.#state = { ...this.#state, ...change };
    this.#emit();
  }

  #emit(): void {
    for (const listener of [...this.#listeners]) listener();
  }
}

/** The boundaries of a row next to a moment: enough to find the nearest on either side. */
function boundariesNear(
  row: { readonly items: readonly { readonly id: string; readonly start: number }[]; readonly end: number },
  at: number,
): number[] {
  const here = itemAt(row, at)?.index ?? row.items.length - 1;
  const near = [here - 1, here, here + 1].map((index) => row.items[index]?.start);
  return [...near, row.end].filter((start): start is number => start !== undefined);
}

function spanOver(spans: readonly Span[]): Span | undefined {
  const [first] = spans;
  return first === undefined
    ? undefined
    : {
        from: spans.reduce((least, span) => Math.min(least, span.from), first.from),
        to: spans.reduce((most, span) => Math.max(most, span.to), first.to),
      };
}
