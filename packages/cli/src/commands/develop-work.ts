import { writeWork } from '@evenhand/core/develop';
import { finding } from '@evenhand/core/ground/findings';
import type { Command } from '../command.ts';
import { nameOf, stream, writeResult } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { alreadyThere, readSource } from './develop.ts';

export const developWork: Command = {
  words: ['develop', 'work'],
  summary: 'draw the work of a cycle from a record: steps, what must come before what, places',
  operands: ['STUDY'],
  options: {
    method: { value: 'ID', help: 'id or name of the recorded method; left out, the first' },
    cycle: { value: 'N', help: 'number of the cycle; left out, the one of middle length' },
    output: { short: 'o', value: 'FILE', help: 'where the work goes; left out, standard output' },
    replace: { help: 'write over a work that is there already' },
    json: { help: 'print what was written as JSON' },
  },
  example: 'evenhand develop work couplings.evenhand.json --method present -o work.json',
  notes: [
    'The work file is described in docs/work-format.md; it can be edited and given to evenhand develop.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const [file = ''] = call.operands;
    const there = await alreadyThere(io, call.text('output'), call);
    if (there !== undefined) return failWith(io, json, [there]);
    const source = await readSource(io, file, call);
    if (!source.ok) return failWith(io, json, source.error);
    if (source.value.drawnFrom === undefined) {
      const stray = finding('develop/work-for-study', {}, { what: 'evenhand develop work' });
      return failWith(io, json, atFile([stray], nameOf(file)));
    }
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
