import type { Study } from './schema.ts';

/**
 * One order in which fields are written that is that of the schema in every thing. An edit may leave the fields of a thing in another order
 * (taken away and put back); the file must not show it.
 */
export const fieldOrder: readonly string[] = [
  ...['formatVersion', 'id', 'sha256', 'subject', 'answers', 'question', 'text', 'decision'],
  ...['choice', 'reason', 'ticksPerSecond', 'start', 'repeat', 'deltas', 'name', 'part'],
  ...['number', 'department', 'analyst', 'bytes', 'container', 'codec', 'kind', 'method'],
  ...['lead', 'x', 'y', 'realPerFilm', 'points', 'frame', 'realUs', 'film'],
  ...['base', 'items', 'end', 'object', 'source', 'timing', 'convention', 'edition'],
  ...['column', 'choices', 'row', 'level', 'times', 'cycle', 'element', 'low'],
  ...['high', 'frames', 'ends', 'millimetres', 'drawnFrom', 'work', 'endsWhen', 'occurs'],
  ...['currency', 'basis', 'changes', 'motions', 'hand', 'motion', 'at', 'width'],
  ...['depth', 'people', 'posture', 'height', 'kindOfWork'],
  ...['rotation', 'frameTimes', 'clock', 'operatorCode', 'agreed', 'mirrored', 'calibration'],
  ...['tracks', 'observer', 'date', 'corners', 'across', 'away', 'size', 'angle', 'mirror'],
  ...['stays', 'place', 'rightPlace', 'before', 'after', 'unitsAYear', 'hourlyCost', 'held'],
  ...['eyes', 'follows', 'unit', 'from', 'mm', 'to', 'scale', 'by', 'becomes'],
  ...['step', 'lag', 'clearance', 'us', 'share', 'rating', 'setAside', 'ratingError'],
  ...['relaxation', 'process', 'contingency', 'readings', 'what', 'spread', 'workFormat', 'title'],
  ...['demo', 'operation', 'films', 'unitsPerCycle', 'left', 'right', 'cycles', 'proposed'],
  ...['confidence', 'precision', 'allowances', 'piecesPerCycle', 'elements', 'sittings', 'foreign', 'money'],
  ...['home', 'places', 'bench', 'methods', 'examinations', 'steps', 'timeStudies', 'comparisons', 'works'],
  ...['spots', 'objects', 'sight', 'claimedBy', 'releasedBy', 'grams', 'field', 'change'],
  ...['taken', 'cost', 'costRange', 'note', 'said', 'years', 'discountRate', 'runningCost', 'learning'],
  ...['ranges', 'firstUnit', 'rate', 'learningRate'],
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

/** Motions, cycles and readings stay on one line however long they are. */
function isLeafRow(value: object): boolean {
  if (Array.isArray(value)) return false;
  return (
    ('start' in value && 'id' in value && !('items' in value)) || ('cycle' in value && !('element' in value))
  );
}

function spaced(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${value.map(spaced).join(', ')}]`;
  const entries = fieldsOf(value);
  if (entries.length === 0) return '{}';
  return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${spaced(item)}`).join(', ')} }`;
}
