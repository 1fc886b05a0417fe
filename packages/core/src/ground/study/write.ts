import type { Study } from './schema.ts';

/**
 * A study as text for a file: two spaces, one motion a line, so that a difference between two versions reads well.
 * The same study gives the same bytes.
 */
export function writeStudy(study: Study): string {
  return `${writeValue(study, '')}\n`;
}

function writeValue(value: unknown, indent: string): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  const flat = JSON.stringify(value);
  if (flat.length <= 100 || isLeafRow(value)) return spaced(value);
  const deeper = `${indent}  `;
  if (Array.isArray(value)) {
    return `[\n${value.map((item) => deeper + writeValue(item, deeper)).join(',\n')}\n${indent}]`;
  }
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  return `{\n${entries.map(([key, item]) => `${deeper}${JSON.stringify(key)}: ${writeValue(item, deeper)}`).join(',\n')}\n${indent}}`;
}

/** Motions and cycles stay on one line however long they are. */
function isLeafRow(value: object): boolean {
  return !Array.isArray(value) && 'start' in value && 'id' in value && !('items' in value);
}

function spaced(value: unknown): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value);
  if (Array.isArray(value)) return value.length === 0 ? '[]' : `[${value.map(spaced).join(', ')}]`;
  const entries = Object.entries(value).filter(([, item]) => item !== undefined);
  if (entries.length === 0) return '{}';
  return `{ ${entries.map(([key, item]) => `${JSON.stringify(key)}: ${spaced(item)}`).join(', ')} }`;
}
