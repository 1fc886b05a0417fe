import { lastAtOrBefore } from '../base/index.ts';
import type { Row } from './schema.ts';

/** An item of a row with the end that the next start (or the row's end) gives it. */
export interface Spanned<Item> {
  readonly item: Item;
  readonly index: number;
  readonly start: number;
  readonly end: number;
}

type Started = { readonly id: string; readonly start: number };

export function endOf<Item extends Started>(row: Row<Item>, index: number): number {
  return row.items[index + 1]?.start ?? row.end;
}

export function spanAt<Item extends Started>(row: Row<Item>, index: number): Spanned<Item> | undefined {
  const item = row.items[index];
  return item === undefined ? undefined : { item, index, start: item.start, end: endOf(row, index) };
}

/** The item that covers a boundary (start ≤ at < end); undefined outside the row. */
export function itemAt<Item extends Started>(row: Row<Item>, at: number): Spanned<Item> | undefined {
  if (at >= row.end) return undefined;
  return spanAt(
    row,
    lastAtOrBefore(row.items, at, (item) => item.start),
  );
}

export function findItem<Item extends Started>(row: Row<Item>, id: string): Spanned<Item> | undefined {
  return spanAt(
    row,
    row.items.findIndex((item) => item.id === id),
  );
}

/** The items that touch from … to, cut to it. */
export function itemsBetween<Item extends Started>(
  row: Row<Item>,
  from: number,
  to: number,
): Spanned<Item>[] {
  const found: Spanned<Item>[] = [];
  const first = Math.max(
    0,
    lastAtOrBefore(row.items, from, (item) => item.start),
  );
  for (let index = first; index < row.items.length; index += 1) {
    const item = row.items[index] as Item;
    if (item.start >= to) break;
    const end = Math.min(to, endOf(row, index));
    const start = Math.max(from, item.start);
    if (end > start) found.push({ item, index, start, end });
  }
  return found;
}

/** Where a row begins: its first start, or its end when it is empty. */
export function rowStart(row: Row<Started>): number {
  return row.items[0]?.start ?? row.end;
}
