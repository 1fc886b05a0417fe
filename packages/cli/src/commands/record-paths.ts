import { filmOf } from '@evenhand/core/ground/study';
import { pathsToCsv } from '@evenhand/core/record';
import { badUse, type Command } from '../command.ts';
import { chooseMethod, nameOf, readStudyFile, stream, writeResult } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { readTrackFile } from './track-source.ts';

export const recordPaths: Command = {
  words: ['record', 'paths'],
  summary: 'length, speed and smoothness of the hand’s path in every motion (CSV)',
  operands: ['STUDY'],
  options: {
    track: { value: 'FILE', help: 'the track: a table (CSV) or a track file', needed: true },
    output: { short: 'o', value: 'FILE', help: 'FILE.csv; - for standard output', needed: true },
    method: { value: 'ID', help: 'id or name of the method; left out, the first' },
    json: { help: 'print what was written as JSON' },
  },
  example: 'evenhand record paths couplings.evenhand.json --track hands.csv -o paths.csv',
  notes: [
    'Lengths are in millimetres where the film is calibrated in the study, else in pixels. What is not seen is left empty.',
  ],
  run: async (call, io) => {
    const [file = ''] = call.operands;
    const output = call.text('output') ?? '';
    const json = call.flag('json');
    if (json && output === stream)
      return failWith(io, false, [badUse('--json and -o - both want standard output.', recordPaths.example)]);
    const study = await readStudyFile(io, file);
    if (!study.ok) return failWith(io, json, study.error);
    const method = chooseMethod(io, study.value, call.text('method'));
    if (!method.ok) return failWith(io, json, atFile([method.error], nameOf(file)));
    const film = filmOf(study.value, method.value);
    const track = await readTrackFile(io, call.text('track') ?? '', film);
    if (!track.ok) return failWith(io, json, track.error);
    say(io, track.value.notes);
    const text = pathsToCsv(study.value, method.value, track.value.track);
    if (!text.ok) return failWith(io, json, atFile([text.error], nameOf(file)));
    const written = await writeResult(io, output, text.value);
    if (!written.ok) return failWith(io, json, [written.error]);
    if (json) await outJson(io, { ok: true, file: output, method: method.value.id });
    return exitCode.done;
  },
};
