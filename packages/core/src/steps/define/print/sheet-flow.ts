import { groupNode, type SceneNode, textNode, wrapText } from '../../../ground/scene/index.ts';

/** Something as wide as the sheet that is never torn apart. */
export interface Strip {
  /** Points. */
  readonly height: number;
  readonly nodes: (top: number) => readonly SceneNode[];
  /** Rules and bars behind it, which nobody hears. */
  readonly layer?: ((top: number) => readonly SceneNode[]) | undefined;
}

/** What belongs under one title. It goes on over sheets; its head is repeated on each. */
export interface Part {
  /** Empty for none. */
  readonly title: string;
  /** Above what it names, or in a column of its own to the left. */
  readonly titleAt: 'above' | 'beside';
  readonly role: 'table' | 'note' | 'figure';
  /** What someone hears who does not see the sheet. */
  readonly label: string;
  readonly head?: Strip | undefined;
  readonly strips: readonly Strip[];
  /** Goes to the next sheet as a whole rather than break, where it fits on one. */
  readonly together?: boolean | undefined;
  /** Of the rule under the last strip; 0 for none. */
  readonly closing?: number | undefined;
}

export interface FlowSheet {
  readonly left: number;
  readonly right: number;
  /** Where the parts begin and end on a sheet, counted from 0. */
  readonly room: (page: number) => { readonly top: number; readonly bottom: number };
}

/** Width of the column in which titles stand beside their parts, with its gap. */
export const besideWidth = 112;
const titleSize = { above: 9, beside: 8.2 } as const;
const titleHeight = 14;
const besideLine = 10;
const gap = 11;

/** Parts one under the other on as many sheets as they need; the nodes of each sheet. */
export function flow(parts: readonly Part[], sheet: FlowSheet): readonly (readonly SceneNode[])[] {
  const pages: SceneNode[][] = [[]];
  let y = sheet.room(0).top;
  const turn = () => {
    pages.push([]);
    y = sheet.room(pages.length - 1).top;
  };
  for (const part of parts) {
    if (part.strips.length === 0) continue;
    if (!startsHere(part, y, sheet, pages.length - 1)) turn();
    let at = 0;
    while (at < part.strips.length) {
      const { bottom } = sheet.room(pages.length - 1);
      const taken = takenFrom(part, at, sheet, bottom - y);
      const strips = part.strips.slice(at, at + Math.max(1, taken));
      const placed = portion(part, strips, at > 0, y, sheet);
      pages[pages.length - 1]?.push(...placed.nodes);
      at += strips.length;
      y = placed.bottom;
      if (at < part.strips.length) turn();
    }
    y += gap;
  }
  return pages;
}

/** Whether the part may begin here: with its title, its head and something below it, or as a whole. */
function startsHere(part: Part, y: number, sheet: FlowSheet, page: number): boolean {
  const { top, bottom } = sheet.room(page);
  if (y <= top) return true;
  const all = above(part, sheet) + part.strips.reduce((sum, { height }) => sum + height, 0);
  if (y + all <= bottom) return true;
  const next = sheet.room(page + 1);
  if (part.together === true && all <= next.bottom - next.top) return false;
  return y + above(part, sheet) + leadOf(part.strips) <= bottom;
}

/** A rule of the trade of printing: no first line stands alone at the foot of a page. */
const leastLead = 20;

function leadOf(strips: readonly Strip[]): number {
  let lead = 0;
  for (const { height } of strips) {
    lead += height;
    if (lead >= leastLead) break;
  }
  return lead;
}

function takenFrom(part: Part, at: number, sheet: FlowSheet, room: number): number {
  let left = room - above(part, sheet);
  let count = 0;
  for (const { height } of part.strips.slice(at)) {
    if (height > left + 1e-6) break;
    left -= height;
    count += 1;
  }
  // Nor one alone at the head of the next.
  const rest = part.strips.slice(at + count);
  return rest.length === 1 && (rest[0]?.height ?? 0) < leastLead && count > 2 ? count - 1 : count;
}

/** Height of what stands over the strips on each sheet. */
function above(part: Part, sheet: FlowSheet): number {
  const title = part.title === '' || part.titleAt === 'beside' ? 0 : titleLines(part, sheet, true).length;
  return title * titleHeight + (part.head?.height ?? 0);
}

function titleLines(part: Part, sheet: FlowSheet, again: boolean): readonly string[] {
  if (part.title === '') return [];
  const words = again ? `${part.title}, continued` : part.title;
  const beside = part.titleAt === 'beside';
  const room = beside ? besideWidth - 10 : sheet.right - sheet.left;
  return wrapText(words, room, titleSize[part.titleAt], 600, beside ? 4 : 2);
}

function portion(part: Part, strips: readonly Strip[], again: boolean, top: number, sheet: FlowSheet) {
  const lines = titleLines(part, sheet, again);
  const beside = part.titleAt === 'beside';
  const size = titleSize[part.titleAt];
  const step = beside ? besideLine : titleHeight;
  const title = lines.map((line, index) =>
    textNode(sheet.left, top + (beside ? 7 : 9.5) + index * step, line, { size, weight: 600 }),
  );
  let y = top + (beside ? 0 : lines.length * titleHeight);
  const nodes: SceneNode[] = [];
  const layer: SceneNode[] = [];
  for (const strip of part.head === undefined ? strips : [part.head, ...strips]) {
    nodes.push(...strip.nodes(y));
    layer.push(...(strip.layer?.(y) ?? []));
    y += strip.height;
  }
  if (part.closing !== undefined && part.closing > 0) {
    const from = beside ? sheet.left + besideWidth : sheet.left;
    layer.push({
      kind: 'line',
      x1: from,
      y1: y,
      x2: sheet.right,
      y2: y,
      stroke: { ink: 'ink', width: part.closing },
    });
  }
  return {
    bottom: beside ? Math.max(y, top + lines.length * besideLine) : y,
    nodes: [
      ...(title.length === 0 ? [] : [{ ...groupNode('heading', title), level: 2 as const }]),
      ...(layer.length === 0 ? [] : [groupNode('layer', layer)]),
      groupNode(part.role, nodes, again ? `${part.label}, continued` : part.label),
    ],
  };
}
