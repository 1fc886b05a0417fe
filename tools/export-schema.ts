// Writes the published JSON Schema of the study document from the one schema in code: `npx tsx tools/export-schema.ts`.
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { studyJsonSchema } from '@evenhand/core/ground/study';

export const schemaFile = path.resolve(
  path.dirname(fileURLToPath(import.meta.url)),
  '../docs/schema/study.schema.json',
);

/** The file as it must stand in the project; the same code gives the same bytes. */
export function schemaText(): string {
  return `${JSON.stringify(studyJsonSchema(), null, 2)}\n`;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  writeFileSync(schemaFile, schemaText());
  process.stdout.write(`wrote ${path.relative(process.cwd(), schemaFile)}\n`);
}
