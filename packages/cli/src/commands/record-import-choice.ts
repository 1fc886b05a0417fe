import { fail, ok, type Result } from '@evenhand/core/ground/base';
import type { Finding } from '@evenhand/core/ground/findings';
import { type CsvOptions, type LabelMapping, readLabelMapping } from '@evenhand/core/record';
import { badUse, type Call } from '../command.ts';
import { nameOf, readText, stream } from '../files.ts';
import type { Io } from '../io.ts';
import { atFile } from '../report.ts';

export interface ImportChoice {
  readonly options: Omit<CsvOptions, 'title' | 'newId'>;
  /** What is to be told of the mapping. */
  readonly notes: readonly Finding[];
}

/** How a table is to be read, from the options of the call; reads the mapping where one is named. */
export async function readImportChoice(
  call: Call,
  io: Io,
  example: string,
): Promise<Result<ImportChoice, readonly Finding[]>> {
  const unmapped = oneOf(call, 'unmapped', ['unmarked']);
  const hand = oneOf(call, 'hand', ['left', 'right']);
  const both = oneOf(call, 'both', ['copy']);
  const overlaps = oneOf(call, 'overlaps', ['cut']);
  const shape = oneOf(call, 'shape', ['motions', 'elements']);
  if (!(unmapped.ok && hand.ok && both.ok && overlaps.ok && shape.ok)) {
    const wrong = [unmapped, hand, both, overlaps, shape].flatMap((word) => (word.ok ? [] : [word.error]));
    return fail(wrong.map((reason) => badUse(reason, example)));
  }
  const mapping = await readMapping(call, io, example);
  if (!mapping.ok) return mapping;
  return ok({
    options: {
      unmapped: unmapped.value,
      hand: hand.value,
      both: both.value,
      overlaps: overlaps.value,
      shape: shape.value,
      subject: call.text('subject'),
      mapping: mapping.value,
    },
    notes: atFile(mapping.value?.notes ?? [], nameOf(call.text('mapping') ?? '')),
  });
}

function oneOf<Word extends string>(
  call: Call,
  option: string,
  words: readonly Word[],
): Result<Word | undefined, string> {
  const said = call.text(option);
  if (said === undefined) return ok(undefined);
  const found = words.find((word) => word === said.trim().toLowerCase());
  return found === undefined
    ? fail(`--${option} ${said} is not known; it can be ${words.join(' or ')}.`)
    : ok(found);
}

async function readMapping(
  call: Call,
  io: Io,
  example: string,
): Promise<Result<LabelMapping | undefined, readonly Finding[]>> {
  const file = call.text('mapping');
  if (file === undefined) return ok(undefined);
  if (file === stream && call.operands[0] === stream) {
    return fail([badUse('The table and the mapping both want standard input.', example)]);
  }
  const text = await readText(io, file);
  if (!text.ok) return fail([text.error]);
  const mapping = readLabelMapping(text.value);
  return mapping.ok ? mapping : fail(atFile(mapping.error, nameOf(file)));
}
