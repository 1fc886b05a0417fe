import { type Finding, finding } from '@evenhand/core/ground/findings';
import { type Study, writeStudy } from '@evenhand/core/ground/study';
import { countText } from '@evenhand/core/ground/units';
import { csvColumns, csvToStudy } from '@evenhand/core/record';
import { badUse, type Command } from '../command.ts';
import { nameOf, readText, stream, writeResult } from '../files.ts';
import { exitCode, type Io } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { readImportChoice } from './record-import-choice.ts';

export const recordImport: Command = {
  words: ['record', 'import'],
  summary: 'make a study from a table of motions (CSV)',
  operands: ['FILE.csv'],
  options: {
    output: {
      short: 'o',
      value: 'STUDY',
      help: 'where to write the study; - for standard output',
      needed: true,
    },
    title: { value: 'TEXT', help: 'title of the study; left out, the name of the file' },
    mapping: { value: 'MAP', help: 'CSV label,motion[,object][,from][,to]: which motion a label stands for' },
    unmapped: { value: 'unmarked', help: 'take labels without a motion as not marked; left out, refuse' },
    subject: { value: 'NAME', help: 'read the lines of this subject or clip alone' },
    hand: { value: 'HAND', help: 'left or right: the hand of lines that name none' },
    both: { value: 'copy', help: 'read a line for both hands for each of them; left out, refuse' },
    overlaps: {
      value: 'cut',
      help: 'where a hand does two things at once, the later one counts; left out, refuse',
    },
    shape: {
      value: 'SHAPE',
      help: 'motions, or elements: a line a cycle, a column an element; left out, motions',
    },
    replace: { help: 'write over a study that is there already' },
    json: { help: 'print what was made as JSON' },
  },
  example: 'evenhand record import motions.csv -o couplings.evenhand.json',
  notes: [
    `Columns: ${csvColumns.join(', ')}; the first four are needed. Commas, semicolons or tabs between the cells, a decimal point or a decimal comma. UTF-8.`,
    'A column label is read as motion. With a mapping, the mapping alone says which motion a label is: a letter code, a name, or unmarked. The label stays as the note of the motion.',
    'With --overlaps cut an earlier motion ends where a later one starts, and goes on after one that lies wholly inside it; what is not marked gives way to what is. Every repair is told.',
    'Either the whole table is read or nothing is written. What cannot be read is told by line and number of the column.',
  ],
  run: async (call, io) => {
    const [file = ''] = call.operands;
    const output = call.text('output') ?? '';
    const json = call.flag('json');
    if (json && output === stream) {
      return failWith(io, false, [
        badUse('--json and -o - both want standard output.', recordImport.example),
      ]);
    }
    const choice = await readImportChoice(call, io, recordImport.example);
    if (!choice.ok) return failWith(io, json, choice.error);
    if (output !== stream && !call.flag('replace') && (await io.exists(output))) {
      return failWith(io, json, [finding('cli/exists', {}, { file: output })]);
    }
    const text = await readText(io, file);
    if (!text.ok) return failWith(io, json, [text.error]);
    const title = call.text('title') ?? (file === stream ? 'Imported motions' : baseName(file));
    const made = csvToStudy(text.value, { title, newId: io.newId, ...choice.value.options });
    if (!made.ok) return failWith(io, json, atFile(made.error, nameOf(file)));
    const written = await writeResult(io, output, writeStudy(made.value.study));
    if (!written.ok) return failWith(io, json, [written.error]);
    const notes = [...choice.value.notes, ...atFile(made.value.notes, nameOf(file))];
    say(io, notes);
    await report(io, output, json, made.value.study, notes);
    return exitCode.done;
  },
};

async function report(
  io: Io,
  output: string,
  json: boolean,
  study: Study,
  notes: readonly Finding[],
): Promise<void> {
  const [method] = study.methods;
  const count = (hand: 'left' | 'right') =>
    method?.[hand].items.filter((motion) => motion.kind !== 'unmarked').length ?? 0;
  const made = {
    left: count('left'),
    right: count('right'),
    cycles: method?.cycles.items.length ?? 0,
    places: study.places.length,
  };
  if (json) await outJson(io, { ok: true, file: output, id: study.id, title: study.title, ...made, notes });
  else
    io.say(
      `${output}: left hand ${countText(made.left, 'motion')}, right hand ${countText(made.right, 'motion')}; ${countText(made.cycles, 'cycle')}, ${countText(made.places, 'place')}.`,
    );
}

function baseName(file: string): string {
  return (file.split(/[/\\]/).at(-1) ?? file).replace(/\.csv$/i, '');
}
