import type { Hand } from '../../../ground/study/index.ts';
import type { CycleReading } from '../reading/index.ts';
import type { TokenTable } from '../sequences/index.ts';
import { type Alignment, type AlignRow, align, alignRow } from './alignment.ts';
import type { ElementBreak } from './element-times.ts';
import type { ModelCycle, PlacedMark } from './marks.ts';

/** The motions of the model cycle in each hand, numbered by the same table as those of all other cycles. */
export interface BreakSearch {
  readonly model: ModelCycle;
  readonly rows: Readonly<Record<Hand, AlignRow>>;
  readonly table: TokenTable;
}

export function breakSearch(model: ModelCycle, table: TokenTable): BreakSearch {
  const row = (hand: Hand) => alignRow(model.cycle, hand, table);
  return { model, rows: { left: row('left'), right: row('right') }, table };
}

export interface CycleBreaks {
  /** One for each mark of the model, in its order. */
  readonly breaks: readonly ElementBreak[];
  /** Every alignment was searched to the end. */
  readonly proven: boolean;
}

interface Compared {
  readonly row: AlignRow;
  readonly alignment: Alignment;
}

/** Where each element of the model begins in another cycle. */
export function breaksIn(search: BreakSearch, cycle: CycleReading): CycleBreaks {
  const compared = new Map<Hand, Compared>();
  const inHand = (hand: Hand): Compared => {
    const known = compared.get(hand);
    if (known !== undefined) return known;
    const row = alignRow(cycle, hand, search.table);
    const made = { row, alignment: align(search.rows[hand], row) };
    compared.set(hand, made);
    return made;
  };
  const breaks = search.model.marks.map((placed, index): ElementBreak => {
    if (placed.piece.from === search.model.cycle.from) {
      return { status: 'start', at: cycle.from, around: undefined };
    }
    return breakOf(search, placed, nextInHand(search.model, index), inHand(placed.mark.hand));
  });
  const proven = [...compared.values()].every(({ alignment }) => alignment.proven);
  return { breaks: inModelOrder(breaks), proven };
}

/** The position at which the next element of the same hand begins in the model, or a position past its end. */
function nextInHand({ marks }: ModelCycle, index: number): number {
  const hand = marks[index]?.mark.hand;
  const next = marks.slice(index + 1).find(({ mark }) => mark.hand === hand);
  return next?.piece.position ?? Number.POSITIVE_INFINITY;
}

function breakOf(
  { rows }: BreakSearch,
  { mark, piece }: PlacedMark,
  end: number,
  { row, alignment }: Compared,
): ElementBreak {
  const model = rows[mark.hand];
  const at = model.pieces.indexOf(piece);
  const partner = row.pieces[alignment.counterpart[at] ?? -1];
  if (partner !== undefined) {
    const status = partner.object === piece.object ? 'found' : 'similar';
    return { status, at: partner.from, around: undefined };
  }
  return betweenNeighbours(model, at, end, { row, alignment });
}

/**
 * The motion is missing. The last motion before it and the first one after it that have counterparts may follow one another
 * in the other cycle: then the element can begin only between them, as long as the later one still belongs to it.
 */
function betweenNeighbours(
  model: AlignRow,
  at: number,
  end: number,
  { row, alignment: { counterpart } }: Compared,
): ElementBreak {
  const before = counterpart.slice(0, at).findLast((partner) => partner >= 0) ?? -1;
  const next = counterpart.findIndex((partner, index) => index > at && partner >= 0);
  const after = next < 0 ? row.pieces.length : (counterpart[next] as number);
  const [left, right] = [row.pieces[before], row.pieces[after]];
  const around = [left, right] as const;
  const inside = (model.pieces[next]?.position ?? end) < end;
  if (left !== undefined && right !== undefined && inside && left.to === right.from) {
    return { status: 'between', at: right.from, around };
  }
  return { status: 'missing', at: undefined, around };
}

/** Beginnings that come in another order than in the model cannot bound an element. */
function inModelOrder(breaks: readonly ElementBreak[]): ElementBreak[] {
  const least: number[] = [];
  let after = Number.POSITIVE_INFINITY;
  for (let index = breaks.length - 1; index >= 0; index -= 1) {
    least[index] = after;
    after = Math.min(after, breaks[index]?.at ?? after);
  }
  let most = Number.NEGATIVE_INFINITY;
  return breaks.map((item, index) => {
    const { at } = item;
    if (at === undefined) return item;
    const wrong = at < most || at > (least[index] as number);
    most = Math.max(most, at);
    return wrong ? { ...item, status: 'order' } : item;
  });
}
