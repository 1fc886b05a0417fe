import type { TableDesign } from '../interchange/csv-columns.ts';

/** The columns of a table of a track, in the order in which they are written; z, opening and presence may be left out. */
export const trackColumns = ['frame', 'hand', 'x', 'y', 'z', 'opening', 'presence'] as const;
export type TrackColumn = (typeof trackColumns)[number];

export const trackDesign: TableDesign<TrackColumn> = {
  columns: trackColumns,
  needed: ['frame', 'hand', 'x', 'y'],
};
