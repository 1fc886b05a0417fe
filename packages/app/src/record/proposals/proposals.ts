import type { Edit } from '@evenhand/core/ground/edit';
import { type FilmTrack, findItem, itemAt, type Method, methodClock } from '@evenhand/core/ground/study';
import type { MotionKind } from '@evenhand/core/ground/tables';
import { countText } from '@evenhand/core/ground/units';
import {
  changeMotion,
  clearProposals,
  confirmAbove,
  confirmCycle,
  confirmProposed,
  type LitSpan,
  nextToReview,
  type Proposal,
  proposalEdit,
  type ReviewItem,
  refuseCycle,
  refuseMotion,
  reviewOrder,
  type Span,
} from '@evenhand/core/record';
import { randomId } from '../../editor/page-ports.ts';
import type { RecordDesk } from '../desk.ts';
import { askProposal, type Remark } from './ask-proposal.ts';

export interface Proposing {
  /** 0 to 1. */
  readonly share: number;
  /** About how long it still takes. */
  readonly secondsLeft: number;
}

export interface ProposalsState {
  /** A proposal is being worked out. */
  readonly working: boolean;
  /** How far it is, as soon as that can be told. */
  readonly progress: Proposing | undefined;
  /** Where the review stands; what it shows may have been confirmed meanwhile. */
  readonly current: ReviewItem | undefined;
  /** Confidence from which “all above” confirms, 0 to 1. */
  readonly above: number;
  /** What the last proposal has to say, in sentences. */
  readonly remarks: readonly Remark[];
}

/** The film runs over a boundary from this long before it to this long after, in microseconds of real time. */
const aroundUs = 600_000;
/** The score shows this much to either side of a boundary under review. */
const viewUs = 4_000_000;

/** What the program proposes and how a person goes through it: one after another, the least certain first. */
export class Proposals {
  readonly #desk: RecordDesk;
  readonly #listeners = new Set<() => void>();
  #state: ProposalsState = {
    working: false,
    progress: undefined,
    current: undefined,
    above: 0.9,
    remarks: [],
  };
  #asking: AbortController | undefined;
  #lit: readonly LitSpan[] | undefined;

  constructor(desk: RecordDesk) {
    this.#desk = desk;
  }

  readonly state = (): ProposalsState => this.#state;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  dispose(): void {
    this.stop();
    this.#listeners.clear();
  }

  /** Another method is shown: what was said of the one before is of no use. */
  forget(): void {
    this.stop();
    this.#set({ current: undefined, remarks: [] });
  }

  /** The track to go by: the one that is shown on the desk. */
  get track(): FilmTrack | undefined {
    return this.#desk.tracks.record;
  }

  setAbove(above: number): void {
    this.#set({ above });
  }

  // ---- proposing

  /** Proposes what is not marked yet; one undo takes all of it back. */
  async propose(): Promise<void> {
    const desk = this.#desk;
    const { method, track } = this;
    if (method === undefined) return desk.say('Open a film first.');
    if (track === undefined)
      return desk.say(
        'A proposal needs to know where the hands are. Make a track of this film first, under “Tracks” at the side.',
      );
    this.stop();
    const asking = new AbortController();
    this.#asking = asking;
    this.#set({ working: true, progress: undefined, remarks: [] });
    const found = await askProposal(desk.study, method, track, asking.signal, (share, secondsLeft) => {
      if (this.#asking === asking) this.#set({ progress: { share, secondsLeft } });
    });
    if (this.#asking !== asking || found === undefined) return;
    this.#asking = undefined;
    const said: readonly Remark[] = found.ok ? found.value.findings : found.error;
    this.#set({ working: false, remarks: said });
    if (found.ok) this.#put(method.id, found.value);
    else desk.say(said[0]?.message ?? 'Nothing could be proposed.');
  }

  stop(): void {
    this.#asking?.abort();
    this.#asking = undefined;
    if (this.#state.working) this.#set({ working: false });
  }

  #put(methodId: string, proposal: Proposal): void {
    const desk = this.#desk;
    const { method } = this;
    // Somebody may have marked more, or gone to another method, while it was worked out.
    if (method === undefined || method.id !== methodId) return;
    const edit = proposalEdit(method, proposal, methodClock(desk.study, method), randomId);
    if (edit === undefined)
      return desk.say(this.#state.remarks[0]?.message ?? 'There is nothing to propose.');
    if (!desk.dispatch(edit)) return;
    this.#set({ current: undefined });
    const cycles =
      proposal.cycles.length === 0 ? '' : `${countText(proposal.cycles.length, 'cycle')} proposed: `;
    desk.say(
      `${cycles}${countText(this.order.length, 'boundary', 'boundaries')} to be confirmed. Undo takes all of it back.`,
    );
  }

  // ---- reviewing

  get method(): Method | undefined {
    return this.#desk.method;
  }

  get order(): readonly ReviewItem[] {
    return this.method === undefined ? [] : reviewOrder(this.method);
  }

  /** Whether the film runs over the boundary under review now. */
  get showing(): ReviewItem | undefined {
    const { lit } = this.#desk.state();
    return lit !== undefined && lit === this.#lit ? this.#state.current : undefined;
  }

  next(direction: 1 | -1 = 1): void {
    const { method } = this;
    if (method === undefined) return;
    const item = nextToReview(method, this.#state.current, direction);
    this.#set({ current: item });
    if (item !== undefined) {
      // What was said before would cover the film that is to be looked at.
      this.#desk.say(undefined);
      return this.#show(method, item);
    }
    if (this.#lit !== undefined && this.#desk.state().lit === this.#lit) this.#desk.hideSpans();
    this.#lit = undefined;
    this.#desk.say('Nothing is left to be confirmed.');
  }

  #show(method: Method, item: ReviewItem): void {
    const desk = this.#desk;
    const { clock } = desk;
    const found = findItem(method[item.row] as Method['left'], item.id);
    if (found === undefined || clock === undefined) return;
    const around = (us: number): Span => ({
      from: clock.boundaryAt(Math.max(clock.timeOf(0), clock.timeOf(item.at) - us)),
      to: clock.boundaryAt(Math.min(clock.timeOf(desk.end), clock.timeOf(item.at) + us)),
    });
    desk.select(
      item.row === 'cycles'
        ? { kind: 'span', hand: 'both', from: found.start, to: found.end }
        : { kind: 'motion', hand: item.row, motionId: item.id },
    );
    const view = around(viewUs);
    desk.score?.zoomTo(view.from, view.to);
    const loop = around(aroundUs);
    this.#lit = [{ hand: item.row === 'cycles' ? 'both' : item.row, from: found.start, to: found.end }];
    if (desk.player === undefined) desk.jump(item.at);
    else if (loop.to > loop.from) desk.showSpans(this.#lit, loop);
  }

  /** Goes to what a remark is about; the loop about a boundary would lead away again. */
  showRemark(frame: number): void {
    const desk = this.#desk;
    if (this.#lit !== undefined && desk.state().lit === this.#lit) desk.hideSpans();
    this.#lit = undefined;
    this.#set({ current: undefined });
    desk.player?.pause();
    desk.jump(frame);
  }

  /** Confirms what is shown, and goes on; what was mended meanwhile is confirmed already. */
  confirm(): void {
    this.#decide((method, item) => confirmProposed(method, item));
  }

  refuse(): void {
    this.#decide((method, item) =>
      item.row === 'cycles' ? refuseCycle(method, item.id) : refuseMotion(method, item.row, item.id),
    );
  }

  confirmCycle(): void {
    this.#decideCycle(confirmCycle);
  }

  refuseCycle(): void {
    this.#decideCycle(refuseCycle);
  }

  confirmAbove(): void {
    const { method } = this;
    const edit = method === undefined ? undefined : confirmAbove(method, this.#state.above);
    const before = this.order.length;
    if (edit === undefined) return this.#desk.say('No proposal is that certain.');
    if (!this.#desk.dispatch(edit)) return;
    const left = this.order.length;
    if (left === 0) return this.next();
    this.#desk.say(`${countText(before - left, 'boundary', 'boundaries')} confirmed, ${left} left.`);
  }

  clear(): void {
    const edit = this.method === undefined ? undefined : clearProposals(this.method);
    if (edit === undefined) return this.#desk.say('Nothing is proposed.');
    if (this.#desk.state().lit === this.#lit) this.#desk.hideSpans();
    if (this.#desk.dispatch(edit)) this.#set({ current: undefined, remarks: [] });
  }

  /** A marking key while the film runs over a proposed motion of that hand names it anew. */
  rename(hand: 'left' | 'right', kind: MotionKind): boolean {
    const { method, showing } = this;
    const motion =
      method !== undefined && showing?.row === hand ? findItem(method[hand], showing.id)?.item : undefined;
    if (method === undefined || motion === undefined) return false;
    const edit = changeMotion({ method, hand }, motion, { kind, said: 'marked' });
    if (edit === undefined || this.#desk.dispatch(edit)) this.next();
    return true;
  }

  #decide(command: (method: Method, item: ReviewItem) => Edit | undefined): void {
    const { method } = this;
    const { current } = this.#state;
    if (method === undefined) return;
    if (current === undefined) return this.next();
    const edit = command(method, current);
    if (edit === undefined || this.#desk.dispatch(edit)) this.next();
  }

  #decideCycle(command: (method: Method, cycleId: string) => Edit | undefined): void {
    const { method } = this;
    const desk = this.#desk;
    if (method === undefined) return;
    const at = this.showing?.at ?? desk.playhead;
    const cycle = itemAt(method.cycles, at);
    if (cycle === undefined) return desk.say('No cycle stands here. Go to one that is proposed.');
    const edit = command(method, cycle.item.id);
    if (edit === undefined) return desk.say(`In cycle ${cycle.index + 1} nothing is proposed.`);
    if (desk.dispatch(edit)) this.next();
  }

  #set(change: Partial<ProposalsState>): void {
    this.#state = { ...this.#state, ...change };
    for (const listener of [...this.#listeners]) listener();
  }
}
