import { LayerSearch } from './layer-search.ts';
import { FIRST, lastRole, MORE, NODE, TRAVEL } from './layer-store.ts';

export interface EvenWish {
  /** Only cycles shorter than this, that travel less than this in all. */
  readonly below: number;
  readonly travelBelow: number;
  /** States kept in all before it gives up. */
  readonly most: number;
  readonly stop?: (() => boolean) | undefined;
}

export interface EvenCycles {
  /** Nothing was dropped: no cycle of the wish shares the work out more evenly. */
  readonly complete: boolean;
  /** Ways in the order in which they start, of cycles that are equally even; not more than `mostTies`. */
  readonly found: readonly (readonly number[])[];
}

const mostTies = 64;

/** Of all cycles that are short enough and travel little enough those in which both hands are occupied most alike. */
export class TieSearch extends LayerSearch {
  private least = Number.POSITIVE_INFINITY;
  private ends: { readonly node: number; readonly way: number }[] = [];

  mostEven({ below, travelBelow, most, stop }: EvenWish): EvenCycles {
    this.open();
    this.weighs = 'evenness';
    this.mostTravel = travelBelow;
    this.least = Number.POSITIVE_INFINITY;
    this.ends = [];
    let kept = 0;
    while (this.depth < this.t.count - 1) {
      if (this.step({ below, width: Number.POSITIVE_INFINITY, most, stop }, below, kept) !== 'whole')
        return { complete: false, found: [] };
      kept += this.layerSize;
    }
    this.clearNext();
    for (let index = 0; index < this.layerSize; index += 1)
      this.endFrom((this.slots[index] as number) * this.stride, below, travelBelow);
    return { complete: true, found: this.ends.map(({ node, way }) => [...this.waysTo(node), way]) };
  }

  private endFrom(state: number, below: number, travelBelow: number): void {
    const { t } = this;
    for (let way = 0; way < t.wayTask.length; way += 1) {
      const task = t.wayTask[way] as number;
      if ((((this.layer[state + (task >> 5)] as number) >>> (task & 31)) & 1) === 1) continue;
      if (!this.startOf(state, task, way)) continue;
      const slot = this.take();
      const made = slot * this.stride;
      this.build(state, task, way, made);
      const [left, right] = [this.backOf(made, 0), this.backOf(made, 1)];
      const travel = (this.next[made + this.LAST + TRAVEL] as number) + left + right;
      const apart = Math.abs((this.next[made + this.LAST + MORE] as number) + left - right);
      if (travel < travelBelow && this.periodOf(made) < below && apart <= this.least) {
        if (apart < this.least) this.ends = [];
        this.least = apart;
        if (this.ends.length < mostTies)
          this.ends.push({ node: this.layer[state + this.LAST + NODE] as number, way });
      }
      this.release(slot);
    }
  }

  /** What one hand travels from the end of a cycle to where it begins. */
  private backOf(made: number, side: 0 | 1): number {
    const from = lastRole(this.next[made + this.LAST] as number, side);
    const to = lastRole(this.next[made + this.LAST + FIRST] as number, side);
    return from < 0 ? 0 : (this.t.wrap[side][from * this.t.roles[side] + to] as number);
  }
}
