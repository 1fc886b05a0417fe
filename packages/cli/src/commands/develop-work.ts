import { writeWork } from '@evenhand/core/develop';
import type { Command } from '../command.ts';
import { nameOf, stream, writeResult } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { readSource } from './develop.ts';

export const developWork: Command = {
  words: ['develop', 'work'],
  summary: 'draw the work of a cycle from a record: steps, what must come before what, places',
  operands: ['STUDY'],
  options: {
    method: { value: 'ID', help: 'id or name of the recorded method; left out, the first' },
    cycle: { value: 'N', help: 'number of the cycle; left out, the one of middle length' },
    output: { short: 'o', value: 'FILE', help: 'where the work goes; left out, standard output' },
    json: { help: 'print what was written as JSON' },
  },
  example: 'evenhand develop work couplings.evenhand.json --method present -o work.json',
  notes: [
    'The work file is described in docs/work-format.md; it can be edited and given to evenhand develop.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const [file = ''] = call.operands;
    const source = await readSource(io, file, call);
    if (!source.ok) return failWith(io, json, source.error);
    say(io, atFile(source.value.notes, nameOf(file)));
    const output = call.text('output') ?? stream;
    const written = await writeResult(io, output, writeWork(source.value.work));
    if (!written.ok) return failWith(io, json, [written.error]);
    if (output !== stream) {
      const steps = source.value.work.steps.length;
      if (json) await outJson(io, { ok: true, reportVersion: 1, files: [output], steps });
      else io.say(`Wrote ${output}: ${steps} steps.`);
    }
    return exitCode.done;
  },
};
