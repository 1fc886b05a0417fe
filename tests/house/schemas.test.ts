import { readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { publishedSchemas } from '../../tools/export-schema.ts';

describe.each(publishedSchemas.map(({ file, text }) => ({ name: path.basename(file), file, text })))(
  'the published schema $name',
  ({ file, text }) => {
    it('is the one in code (renew it with `npx tsx tools/export-schema.ts`)', () => {
      expect(readFileSync(file, 'utf8')).toBe(text);
    });

    it('is JSON Schema draft 2020-12 and closed: a field that is not known is refused', () => {
      const schema = JSON.parse(readFileSync(file, 'utf8'));
      expect(schema.$schema).toBe('https://json-schema.org/draft/2020-12/schema');
      const objects: Record<string, unknown>[] = [];
      const walk = (node: unknown): void => {
        if (typeof node !== 'object' || node === null) return;
        if ('properties' in node && 'type' in node) objects.push(node as Record<string, unknown>);
        for (const item of Object.values(node)) walk(item);
      };
      walk(schema);
      expect(objects.length).toBeGreaterThan(3);
      expect(objects.filter((node) => node.additionalProperties !== false)).toEqual([]);
    });
  },
);
