import { motionsToCsv, motionsToVtt } from '@evenhand/core/record';
import { badUse, type Command } from '../command.ts';
import { chooseMethod, formatOf, nameOf, readStudyFile, stream, writeResult } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson } from '../report.ts';

const writers = { csv: motionsToCsv, vtt: motionsToVtt } as const;

export const recordExport: Command = {
  words: ['record', 'export'],
  summary: 'write the motions as a table (CSV) or as captions (WebVTT)',
  operands: ['STUDY'],
  options: {
    output: { short: 'o', value: 'FILE', help: 'FILE.csv or FILE.vtt; - for standard output', needed: true },
    method: { value: 'ID', help: 'id or name of the method; left out, the first' },
    as: { value: 'csv|vtt', help: 'what to write, where the name does not say it' },
    json: { help: 'print what was written as JSON' },
  },
  example: 'evenhand record export couplings.evenhand.json -o motions.csv',
  notes: [
    'The table has exact seconds of real time; the captions stand at the time of the film, so that any player shows them at the right frames.',
    'A table carries hand, motion, times, object, from, to and the number of the cycle. Notes, who marked a motion, names of cycles and why one was set aside stay in the study.',
  ],
  run: async (call, io) => {
    const [file = ''] = call.operands;
    const output = call.text('output') ?? '';
    const json = call.flag('json');
    const format = formatOf(output, call.text('as'), ['csv', 'vtt']);
    if (!format.ok) return failWith(io, json, [badUse(format.error, recordExport.example)]);
    if (json && output === stream) {
      return failWith(io, false, [
        badUse('--json and -o - both want standard output.', recordExport.example),
      ]);
    }
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const method = chooseMethod(io, study.value, call.text('method'));
    if (!method.ok) return failWith(io, json, atFile([method.error], nameOf(file)));
    const text = writers[format.value](study.value, method.value.id);
    if (!text.ok) return failWith(io, json, atFile([text.error], nameOf(file)));
    const written = await writeResult(io, output, text.value);
    if (!written.ok) return failWith(io, json, [written.error]);
    if (json) await outJson(io, { ok: true, file: output, format: format.value, method: method.value.id });
    return exitCode.done;
  },
};
