// Writes the published JSON Schemas from the schemas in code: `npx tsx tools/export-schema.ts`.
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';
import { defineFiguresJsonSchema, defineReportJsonSchema } from '@evenhand/core/define';
import { developReportJsonSchema, workJsonSchema } from '@evenhand/core/develop';
import { evaluateReportJsonSchema, machinesReportJsonSchema } from '@evenhand/core/evaluate';
import { examinationReportJsonSchema } from '@evenhand/core/examine';
import { studyJsonSchema } from '@evenhand/core/ground/study';
import { proposeReportJsonSchema } from '@evenhand/core/record';

const folder = path.resolve(path.dirname(fileURLToPath(import.meta.url)), '../docs/schema');

export interface PublishedSchema {
  readonly file: string;
  /** The file as it must stand in the project; the same code gives the same bytes. */
  readonly text: string;
}

export const publishedSchemas: readonly PublishedSchema[] = [
  published('study.schema.json', studyJsonSchema()),
  published('examination.schema.json', examinationReportJsonSchema()),
  published('define.schema.json', defineReportJsonSchema()),
  published('define-figures.schema.json', defineFiguresJsonSchema()),
  published('work.schema.json', workJsonSchema()),
  published('develop.schema.json', developReportJsonSchema()),
  published('evaluate.schema.json', evaluateReportJsonSchema()),
  published('evaluate-machines.schema.json', machinesReportJsonSchema()),
  published('propose.schema.json', proposeReportJsonSchema()),
];

function published(name: string, schema: Record<string, unknown>): PublishedSchema {
  return { file: path.join(folder, name), text: `${JSON.stringify(schema, null, 2)}\n` };
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  for (const { file, text } of publishedSchemas) {
    writeFileSync(file, text);
    process.stdout.write(`wrote ${path.relative(process.cwd(), file)}\n`);
  }
}
