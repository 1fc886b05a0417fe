import type { Finding } from '@evenhand/core/ground/findings';
import { type Film, type FilmTrack, filmOf, type Hand } from '@evenhand/core/ground/study';
import type { GraphSpan, PlanePoint, Track } from '@evenhand/core/record';
import type { Region } from '@evenhand/media';
import { randomId } from '../../editor/page-ports.ts';
import type { RecordDesk } from '../desk.ts';
import type { Pick } from './picks.ts';
import { type ShownTrack, shownTrack } from './shown-track.ts';
import { loadTrack, storeTrack } from './track-files.ts';

/** A search that is going on. */
export interface TrackWork {
  readonly what: string;
  /** Share of the film, 0 to 1; nothing before it can be told. */
  readonly share: number | undefined;
  readonly secondsLeft: number | undefined;
}

/** The chronocyclegraph over the film: which cycles, and the time from dot to dot in microseconds. */
export interface GraphChoice {
  readonly spans: readonly GraphSpan[];
  readonly every: number;
}

export interface TracksState {
  /** The track that is shown under the score and proposed from, with what is worked out from it. */
  readonly shown: ShownTrack | undefined;
  readonly loading: boolean;
  readonly work: TrackWork | undefined;
  readonly pick: Pick | undefined;
  readonly graph: GraphChoice | undefined;
  /** Rectangles in which movement is to be measured, drawn by the analyst for each hand. */
  readonly regions: Readonly<Record<Hand, readonly Region[]>>;
  /** What was said of the last track that was made or read, or why there is none. */
  readonly findings: readonly Finding[];
}

/** How a track comes to be: from a search in the film, or from a table. Throws `AbortError` when it is ended. */
export type TrackMaker = (
  signal: AbortSignal,
  onProgress: (share: number, secondsLeft: number | undefined) => void,
) => Promise<MadeTrack>;

export type MadeTrack =
  | { readonly ok: true; readonly value: { readonly track: Track; readonly findings: readonly Finding[] } }
  | { readonly ok: false; readonly error: readonly Finding[] };

const nothing: TracksState = {
  shown: undefined,
  loading: false,
  work: undefined,
  pick: undefined,
  graph: undefined,
  regions: { left: [], right: [] },
  findings: [],
};

/** The tracks of the film on the record desk: which is shown, and making, keeping and removing them. */
export class DeskTracks {
  readonly #desk: RecordDesk;
  readonly #listeners = new Set<() => void>();
  readonly #loaded = new Map<string, Track>();
  #state: TracksState = nothing;
  #chosen: string | undefined;
  #film: Film | undefined;
  #turn = 0;
  #abort: AbortController | undefined;
  readonly #stop: () => void;

  constructor(desk: RecordDesk) {
    this.#desk = desk;
    this.#stop = desk.subscribe(() => this.#follow());
    this.#follow();
  }

  readonly state = (): TracksState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  get film(): Film | undefined {
    const { method } = this.#desk;
    return method === undefined ? undefined : filmOf(this.#desk.study, method);
  }

  /** The record of the track that is shown, also while its data are on their way. */
  get record(): FilmTrack | undefined {
    const list = this.film?.tracks ?? [];
    return list.find(({ id }) => id === this.#chosen) ?? list.at(-1);
  }

  dispose(): void {
    this.#stop();
    this.#abort?.abort();
    this.#turn += 1;
    this.#listeners.clear();
  }

  // ---- which track is shown

  choose(id: string): void {
    this.#chosen = id;
    this.#load();
  }

  /** Tries once more to fetch the data, after they were put back. */
  loadAgain(): void {
    this.#load();
  }

  #follow(): void {
    const film = this.film;
    if (film === this.#film) return;
    const another = film?.id !== this.#film?.id;
    this.#film = film;
    if (another) {
      this.#abort?.abort();
      this.#set({ ...nothing, work: undefined });
    }
    const before = this.#state.shown;
    if (another || this.record?.sha256 !== before?.record.sha256 || before === undefined) this.#load();
    // The clock or the calibration has changed: the same data mean other speeds.
    else this.#show(before.record, before.track);
  }

  #load(): void {
    this.#turn += 1;
    const turn = this.#turn;
    const record = this.record;
    const frames = this.#desk.clock?.last;
    if (record === undefined || frames === undefined)
      return this.#set({ shown: undefined, loading: false, graph: undefined });
    const known = this.#loaded.get(record.sha256);
    if (known !== undefined) return this.#show(record, known);
    this.#set({ shown: undefined, loading: true });
    void loadTrack(record, frames).then((loaded) => {
      if (turn !== this.#turn) return;
      if (!loaded.ok) return this.#set({ loading: false, findings: [loaded.error] });
      this.#loaded.set(record.sha256, loaded.value);
      this.#show(record, loaded.value);
    });
  }

  #show(record: FilmTrack, track: Track): void {
    const { film } = this;
    const { clock } = this.#desk;
    if (film === undefined || clock === undefined) return;
    this.#set({ shown: shownTrack(record, track, film, clock), loading: false });
  }

  // ---- making and removing

  /** Makes a track, keeps it beside the film and shows it. One at a time. */
  async make(what: string, source: FilmTrack['source'], name: string, maker: TrackMaker): Promise<void> {
    const film = this.film;
    if (film === undefined || this.#state.work !== undefined) return;
    const abort = new AbortController();
    this.#abort = abort;
    this.#set({ work: { what, share: undefined, secondsLeft: undefined }, findings: [] });
    try {
      const made = await maker(abort.signal, (share, secondsLeft) => {
        if (!abort.signal.aborted) this.#set({ work: { what, share, secondsLeft } });
      });
      if (abort.signal.aborted) return;
      if (!made.ok) return this.#set({ work: undefined, findings: made.error });
      await this.#keep(film, made.value, source, name);
    } catch (error) {
      if (!(error instanceof DOMException && error.name === 'AbortError')) throw error;
    } finally {
      if (this.#abort === abort) this.#set({ work: undefined });
    }
  }

  cancel(): void {
    this.#abort?.abort();
    this.#set({ work: undefined });
  }

  async #keep(
    film: Film,
    { track, findings }: { readonly track: Track; readonly findings: readonly Finding[] },
    source: FilmTrack['source'],
    name: string,
  ): Promise<void> {
    if (track.left === undefined && track.right === undefined) return this.#set({ findings });
    const kept = await storeTrack(track);
    if (!kept.ok) return this.#set({ findings: kept.error });
    const present = this.#desk.study.films.find(({ id }) => id === film.id);
    if (present === undefined) return;
    const { sha256, bytes } = kept.value;
    this.#loaded.set(sha256, track);
    const same = present.tracks?.find((item) => item.sha256 === sha256);
    const record = same ?? { id: randomId(), sha256, name, bytes, source, frames: track.frames };
    this.#chosen = record.id;
    if (same === undefined) this.#change(present, [...(present.tracks ?? []), record]);
    else this.#load();
    this.#set({ findings, regions: nothing.regions });
  }

  remove(id: string): void {
    const film = this.film;
    if (film?.tracks === undefined) return;
    const left = film.tracks.filter((item) => item.id !== id);
    this.#change(film, left);
    this.#set({ findings: [] });
  }

  #change(film: Film, tracks: readonly FilmTrack[]): void {
    this.#desk.dispatch({
      type: 'film.change',
      film: film.id,
      to: { tracks: tracks.length === 0 ? null : [...tracks] },
      was: { tracks: film.tracks ?? null },
    });
  }

  // ---- points on the picture

  ask(pick: Omit<Pick, 'points'>): void {
    this.#desk.player?.pause();
    this.#set({ pick: { ...pick, points: [] } });
  }

  setPoint(point: PlanePoint): void {
    const { pick } = this.#state;
    if (pick === undefined) return;
    const points = [...pick.points, point];
    if (points.length < pick.asks.length) return this.#set({ pick: { ...pick, points } });
    this.#set({ pick: undefined });
    pick.done(points);
  }

  /** Takes the last point back; with none, gives up. */
  takeBack(): void {
    const { pick } = this.#state;
    if (pick === undefined) return;
    this.#set({ pick: pick.points.length === 0 ? undefined : { ...pick, points: pick.points.slice(0, -1) } });
  }

  giveUp(): void {
    this.#set({ pick: undefined });
  }

  // ---- over the film

  showGraph(graph: GraphChoice | undefined): void {
    this.#set({ graph });
  }

  setRegions(hand: Hand, regions: readonly Region[]): void {
    this.#set({ regions: { ...this.#state.regions, [hand]: regions } });
  }

  say(findings: readonly Finding[]): void {
    this.#set({ findings });
  }

  #set(change: Partial<TracksState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }
}
