import { type Finding, finding } from '../../../ground/findings/index.ts';
import { type ElementMark, itemAt } from '../../../ground/study/index.ts';
import {
  type CycleReading,
  cycleWords,
  type MethodReading,
  type Piece,
  readMethod,
} from '../reading/index.ts';

/** A mark in the model cycle with the motion that begins its element. */
export interface PlacedMark {
  readonly mark: ElementMark;
  /** The motion of its hand that starts at the mark, or in which the mark lies. */
  readonly piece: Piece;
}

export interface ModelCycle {
  readonly cycle: CycleReading;
  /** In order of time; no two begin at the same boundary. */
  readonly marks: readonly PlacedMark[];
}

/** The cycle in which the elements were named, and the marks that can be used there; why the others cannot. */
export function modelCycle(
  reading: MethodReading,
  marks: readonly ElementMark[],
): { readonly model: ModelCycle | undefined; readonly findings: readonly Finding[] } {
  const numbers = marks.map((mark) => cycleNumberAt(reading, mark.at));
  const number = mostCommon(numbers);
  const findings = marks.flatMap((mark, index) => strayFinding(reading, mark, numbers[index], number));
  if (number === undefined) return { model: undefined, findings };
  const read = readModel(reading, number);
  if (!read.ok) return { model: undefined, findings: [...findings, read.error] };
  const cycle = read.value;
  const inside = marks.filter((_, index) => numbers[index] === number);
  const placed = inside.map((mark) => placeMark(cycle, mark));
  findings.push(...placed.flatMap(({ findings: more }) => more));
  const usable = placed.flatMap(({ placed: item }) => (item === undefined ? [] : [item]));
  const { kept, findings: doubles } = withoutDoubles(usable);
  return { model: { cycle, marks: kept }, findings: [...findings, ...doubles] };
}

function cycleNumberAt({ method, cycles }: MethodReading, at: number): number | undefined {
  if (method.cycles.items.length > 0) {
    const found = itemAt(method.cycles, at);
    return found === undefined ? undefined : found.index + 1;
  }
  const whole = cycles[0];
  return whole !== undefined && whole.from <= at && at < whole.to ? whole.number : undefined;
}

/** The number that occurs most often; of several the least. */
function mostCommon(numbers: readonly (number | undefined)[]): number | undefined {
  const counts = new Map<number, number>();
  for (const number of numbers) {
    if (number !== undefined) counts.set(number, (counts.get(number) ?? 0) + 1);
  }
  return [...counts].sort((a, b) => b[1] - a[1] || a[0] - b[0])[0]?.[0];
}

function strayFinding(
  reading: MethodReading,
  mark: ElementMark,
  number: number | undefined,
  model: number | undefined,
): Finding[] {
  const where = whereOf(mark);
  if (number === undefined) {
    return [finding('examine/element-no-cycle', where, { element: mark.name, method: reading.method.name })];
  }
  if (number === model || model === undefined) return [];
  const words = { element: mark.name, cycle: cycleWords([number]), model: cycleWords([model]) };
  return [finding('examine/element-other-cycle', where, words)];
}

const whereOf = ({ hand }: ElementMark) => ({ hand });

/** The model cycle counts or not: its motions are read either way. */
function readModel(reading: MethodReading, number: number) {
  const known = reading.cycles.find((cycle) => cycle.number === number);
  if (known !== undefined) return { ok: true, value: known } as const;
  const { study, method, choice } = reading;
  const read = readMethod(study, method.id, { cycles: [number], proposed: choice.proposed });
  if (!read.ok) return read;
  const [cycle] = read.value.cycles;
  if (cycle === undefined) throw new RangeError(`cycle ${number} was not read`);
  return { ok: true, value: cycle } as const;
}

function placeMark(
  cycle: CycleReading,
  mark: ElementMark,
): { readonly placed: PlacedMark | undefined; readonly findings: readonly Finding[] } {
  const piece = cycle[mark.hand].find(({ from, to }) => from <= mark.at && mark.at < to);
  const words = { element: mark.name, hand: mark.hand, cycle: cycleWords([cycle.number]) };
  if (piece === undefined || piece.kind === 'unmarked') {
    return { placed: undefined, findings: [finding('examine/element-not-marked', whereOf(mark), words)] };
  }
  const inside = piece.from !== mark.at;
  const motion = piece.object === undefined ? piece.kind : `${piece.kind} ${piece.object}`;
  return {
    placed: { mark, piece },
    findings: inside ? [finding('examine/element-inside-motion', whereOf(mark), { ...words, motion })] : [],
  };
}

/** Of two elements that begin at the same moment the second would have the first's place and the first no length. */
function withoutDoubles(placed: readonly PlacedMark[]) {
  const findings: Finding[] = [];
  const kept: PlacedMark[] = [];
  const order = (a: PlacedMark, b: PlacedMark) => a.piece.from - b.piece.from || a.mark.at - b.mark.at;
  for (const item of [...placed].sort(order)) {
    const before = kept.at(-1);
    if (before === undefined || before.piece.from < item.piece.from) kept.push(item);
    else {
      const words = { element: item.mark.name, other: before.mark.name };
      findings.push(finding('examine/element-same-start', whereOf(item.mark), words));
    }
  }
  return { kept, findings };
}
