import { lastAtOrBefore, micros } from '../../../ground/base/index.ts';
import { fitText, type SceneNode } from '../../../ground/scene/index.ts';
import { type Cycle, isConfirmedCycle } from '../../../ground/study/index.ts';
import { countText, timeText } from '../../../ground/units/index.ts';
import type { ScoreAreas } from './areas.ts';
import { box, wordsAt } from './marks.ts';
import { wordWidth } from './motion-words.ts';
import type { TimeScale } from './scale.ts';
import type { ScoreGround } from './score-input.ts';

export interface CycleSpan {
  /** From 1, as people count. */
  readonly number: number;
  readonly fromUs: number;
  readonly toUs: number;
  readonly name: string | undefined;
  readonly setAside: string | undefined;
  /** A part of it is only proposed. */
  readonly open: boolean;
}

export interface ShownCycles {
  /** Those to be drawn one by one: all that touch the view, or, in a crowd, those set aside. */
  readonly spans: readonly CycleSpan[];
  /** How many touch the view. */
  readonly count: number;
  /** They stand too close together for lines and numbers of their own. */
  readonly crowd: boolean;
}

/** Closer together, lines through both hands would hide what they part, and numbers would have no room. CSS pixels. */
const leastCycle = 6;

/** The cycles that touch the view, a held mark where it would go. */
export function shownCycles({ method, clock, preview, view }: ScoreGround, scale: TimeScale): ShownCycles {
  const { items, end } = method.cycles;
  const held = preview?.row === 'cycles' ? preview : undefined;
  const at = (boundary: number, id: string | undefined) =>
    clock.timeOf(held !== undefined && held.id === id ? held.to : boundary);
  // One further at both sides than found: a held mark may have come into the view.
  const first = Math.max(0, indexAt(items, clock.boundaryAt(Math.max(0, view.fromUs))) - 1);
  const last = Math.min(items.length - 1, indexAt(items, clock.boundaryAt(Math.max(0, view.toUs))) + 1);
  const count = last - first + 1;
  const crowd = count > 2 && (view.toUs - view.fromUs) / count / scale.usPerPixel < leastCycle;
  const spans: CycleSpan[] = [];
  for (let index = first; index <= last; index += 1) {
    const { id, start, name, setAside } = items[index] as Cycle;
    if (crowd && setAside === undefined) continue;
    const next = items[index + 1];
    const fromUs = at(start, id);
    const toUs = at(next?.start ?? end, next?.id);
    if (toUs > view.fromUs && fromUs < view.toUs)
      spans.push({
        number: index + 1,
        fromUs,
        toUs,
        name,
        setAside,
        open: setAside === undefined && !isConfirmedCycle(method, index),
      });
  }
  return { spans, count: crowd ? count : spans.length, crowd };
}

function indexAt(items: readonly Cycle[], boundary: number): number {
  return lastAtOrBefore(items, boundary, (item) => item.start);
}

/** Under the hands: the shade of cycles set aside. */
export function cycleGround({ spans }: ShownCycles, areas: ScoreAreas, scale: TimeScale): SceneNode[] {
  return spans.flatMap((span) => (span.setAside === undefined ? [] : [veil(span, areas, scale, 1)]));
}

function veil(span: CycleSpan, areas: ScoreAreas, scale: TimeScale, opacity: number): SceneNode {
  const x = scale.cutX(span.fromUs);
  const bottom = areas.right.y + areas.right.height;
  return box(x, 0, scale.cutX(span.toUs) - x, bottom, { ink: 'shade', opacity });
}

/** Over the hands: lines through both at every mark, numbers in the strip above, what is set aside made pale. */
export function cycleNodes(
  ground: ScoreGround,
  shown: ShownCycles,
  areas: ScoreAreas,
  scale: TimeScale,
): SceneNode[] {
  const { spans } = shown;
  const nodes: SceneNode[] = spans.flatMap((span) =>
    span.setAside === undefined ? [] : [veil(span, areas, scale, 0.62)],
  );
  if (shown.crowd) return [...nodes, crowdWords(shown, areas)];
  const bottom = areas.right.y + areas.right.height;
  const line = (us: number) => {
    if (us < scale.view.fromUs || us > scale.view.toUs) return;
    nodes.push(box(scale.x(us), 3, Math.max(1, scale.hair), bottom - 3, { ink: 'soft' }));
  };
  for (const span of spans) line(span.fromUs);
  const last = spans.at(-1);
  if (last !== undefined && last.number === ground.method.cycles.items.length) line(last.toUs);
  for (const span of spans) {
    const x = scale.cutX(span.fromUs) + 6;
    const text = cycleWords(ground, span, scale.cutX(span.toUs) - x - 4);
    const look = { size: 11.5, weight: 400, ink: span.setAside === undefined ? 'ink' : 'warn' } as const;
    if (text !== '') nodes.push(wordsAt(x, areas.cycles.y + areas.cycles.height / 2, text, look));
  }
  return nodes;
}

/** Cycles too close together for lines of their own: how many there are. */
function crowdWords({ spans, count }: ShownCycles, { cycles }: ScoreAreas): SceneNode {
  const aside = spans.length === 0 ? '' : `, ${spans.length} set aside`;
  const text = `${countText(count, 'cycle')} in sight${aside}`;
  return wordsAt(cycles.x + 6, cycles.y + cycles.height / 2, text, { size: 11.5, weight: 400, ink: 'soft' });
}

/** Number, name or reason, and time, in as many words as there is room for. */
function cycleWords(ground: ScoreGround, span: CycleSpan, room: number): string {
  if (room < 6) return '';
  const time = timeText(micros(Math.round(span.toUs - span.fromUs)), ground.unit);
  const number = `${span.number}${span.open ? '?' : ''}`;
  const head = `Cycle ${number}`;
  const named = span.name === undefined ? head : `${head}, ${span.name}`;
  const wishes =
    span.setAside === undefined
      ? [`${named}  ·  ${time}`, `${head}  ·  ${time}`, head, number]
      : [`${head} set aside: ${span.setAside}  ·  ${time}`, `${head} set aside: ${span.setAside}`];
  const found = wishes.find((text) => wordWidth(text, 11.5, 400) <= room);
  if (found !== undefined || span.setAside === undefined) return found ?? '';
  const cut = fitText(wishes[1] ?? '', room, 11.5, 400);
  return cut.length > head.length ? cut : wordWidth(number, 11.5, 400) <= room ? number : '';
}
