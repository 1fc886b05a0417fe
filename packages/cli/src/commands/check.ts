import type { Finding } from '@evenhand/core/ground/findings';
import { findingLine } from '@evenhand/core/ground/findings';
import { recordAdvice } from '@evenhand/core/record';
import type { Command } from '../command.ts';
import { nameOf, readStudyFile } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, tally } from '../report.ts';

/** These say that the file is no study that this program can judge; all others are findings about a study. */
const notAStudy = ['study/not-json', 'study/no-format', 'study/newer-format', 'cli/file', 'cli/not-text'];

export const check: Command = {
  words: ['check'],
  summary: 'check a study and say what should be looked at',
  operands: ['STUDY'],
  options: { json: { help: 'print the findings as JSON' } },
  example: 'evenhand check couplings.evenhand.json',
  notes: [
    'Every finding says where it stands: a JSON pointer (RFC 6901) into the study. Errors keep the study from being opened; warnings and notes are advice on the record, such as time that is not marked inside a cycle.',
    'Exit code: 0 when there is no error and no warning, 1 when there is one, 2 when the file is no study at all.',
  ],
  run: async (call, io) => {
    const [file = ''] = call.operands;
    const read = await readStudyFile(io, file);
    const found = read.ok ? atFile(recordAdvice(read.value), nameOf(file)) : read.error;
    if (found.some((item) => notAStudy.includes(item.code))) return failWith(io, call.flag('json'), found);
    if (call.flag('json')) await outJson(io, { ok: read.ok, file: nameOf(file), findings: found });
    else await report(io, file, found);
    return found.some((item) => item.severity !== 'note') ? exitCode.findings : exitCode.done;
  },
};

async function report(io: Io, file: string, found: readonly Finding[]): Promise<void> {
  for (const item of found) await io.out(`${item.severity}: ${findingLine(item)}\n`);
  io.say(found.length === 0 ? `${nameOf(file)}: nothing found.` : `${nameOf(file)}: ${tally(found)}.`);
}
