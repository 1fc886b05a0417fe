import type { Study } from './schema.ts';

/**
 * The order in which fields are written, that of the schema. An edit may leave the fields of a thing in another order
 * (taken away and put back); the file must not show it.
 */
export const fieldOrder: readonly string[] = [
  ...['formatVersion', 'id', 'sha256', 'title', 'demo', 'operation', 'films', 'places', 'methods'],
  ...['examinations', 'subject', 'answers', 'question', 'text', 'decision', 'choice', 'reason'],
  ...[
    'ticksPerSecond',
    'start',
    'steps',
    'repeat',
    'deltas',
    'name',
    'setAside',
    'part',
    'number',
    'department',
  ],
  ...[
    'analyst',
    'unitsAYear',
    'bytes',
    'container',
    'codec',
    'width',
    'height',
    'rotation',
    'frameTimes',
    'clock',
  ],
  ...[
    'operatorCode',
    'agreed',
    'kind',
    'method',
    'hand',
    'motion',
    'element',
    'lead',
    'at',
    'x',
    'y',
    'mirror',
  ],
  ...['realPerFilm', 'points', 'frame', 'realUs'],
  ...[
    'film',
    'base',
    'unitsPerCycle',
    'left',
    'right',
    'cycles',
    'elements',
    'items',
    'end',
    'object',
    'from',
    'to',
    'note',
  ],
  'said',
];

const rankOf = new Map(fieldOrder.map((field, rank) => [field, rank]));

/** The fields that are there, in the order in which they are written. */
function fieldsOf(value: object): [string, unknown][] {
  const rank = (field: string) => rankOf.get(field) ?? fieldOrder.length;
  const fields = Object.entries(value).filter(([, item]) => item !== undefined);
  const inOrder = fields.every(
    ([field], index) => index === 0 || rank(fields[index - 1]?.[0] ?? '') <= rank(field),
  );
  return inOrder ? fields : fields.sort(([a], [b]) => rank(a) - rank(b));
}

/**
 * A study as text for a file: two spaces, one motion a line, so that a difference between two versions reads well.
 * Equal studies give the same bytes.
 */
export function writeStudy(study: Study): string {
  return `${writeValue(study, '')}\n`;
}

function writeValue(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (isLeafRow(value) || fitsOneLine(value)) return spaced(value);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => deeper + writeValue(item, deeper)).join(',\n')}\n${indent}]`;
  }
  const entries = fieldsOf(value);
  return `{\n${entries.map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${writeValue(item, deeper)}`).join(',\n')}\n${indent}}`;
}

/** Long rows are told by their count, so that a study of many motions is not spelt out once for every level above them. */
function fitsOneLine(value: object): boolean {
  return !holdsLongList(value) && JSON.stringify(value).length <= 100;
}

function holdsLongList(value: unknown): boolean {
  if (typeof value !== 'object' || value === null) return false;
  return (Array.isArray(value) && value.length > 50) || Object.values(value).some(holdsLongList);
}

/** Motions and cycles stay on one line however long they are. */
function isLeafRow(value: object): boolean {
  return !Array.isArray(value) && 'start' in value && 'id' in value && !('items' in value);
}

function spaced(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${value.map(spaced).join(', ')}]`;
  const entries = fieldsOf(value);
  if (entries.length === 0) return '{}';
  return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${spaced(item)}`).join(', ')} }`;
}
