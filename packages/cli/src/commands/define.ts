import { type Finding, findingLine } from '@evenhand/core/ground/findings';
import { ratingScales } from '@evenhand/core/ground/tables';
import { timeUnits } from '@evenhand/core/ground/units';
import { badUse, type Command } from '../command.ts';
import { nameOf } from '../files.ts';
import { exitCode } from '../io.ts';
import { atFile, failWith, outJson, say } from '../report.ts';
import { type DefineChoice, defineOptions, readDefineChoice } from './define-choice.ts';
import { readReadings, type TimedReadings } from './define-source.ts';
import { type Sheet, sheetOf } from './define-study.ts';
import { sheetText } from './define-text.ts';

export const define: Command = {
  words: ['define'],
  summary: 'time the elements of a record or of a table of readings, and give the standard time',
  operands: ['STUDY'],
  options: defineOptions,
  example: 'evenhand define couplings.evenhand.json --rating 95 --allowance 12 --of basic',
  notes: [
    'STUDY is a study or a table of readings (CSV): the first column the cycle, every other one an element, an empty cell a missed reading, and 38.5 (part fell) a reading that is set aside with its reason.',
    'Readings of a study are those of its named elements, or of the whole cycle where none is named. Cycles that are set aside stay so, with their reason.',
    'Outliers are proposed by a rule that is printed; every one counts until a person sets it aside.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const choice = readDefineChoice(call);
    if (!choice.ok) return failWith(io, json, [badUse(choice.error, define.example)]);
    const [file = ''] = call.operands;
    const readings = await readReadings(io, file, call.text('method'), choice.value);
    if (!readings.ok) return failWith(io, json, readings.error);
    const sheet = sheetOf(readings.value, choice.value);
    if (!sheet.ok) {
      say(io, readings.value.notes);
      return failWith(io, json, atFile(sheet.error, nameOf(file)));
    }
    const notes = [...readings.value.notes, ...withoutRepeats(atFile(sheet.value.notes, nameOf(file)))];
    say(io, notes);
    if (json) await outJson(io, sheetJson(readings.value, sheet.value, choice.value, notes));
    else await io.out(sheetText(readings.value, sheet.value, choice.value));
    return exitCode.done;
  },
};

function withoutRepeats(notes: readonly Finding[]): Finding[] {
  return notes.filter(
    (note, index) => notes.findIndex((other) => findingLine(other) === findingLine(note)) === index,
  );
}

/** Times in the unit that is named in it; shares are of 1. */
function sheetJson(
  readings: TimedReadings,
  sheet: Sheet,
  choice: DefineChoice,
  notes: readonly Finding[],
): object {
  const { title, method, cycles, basis, piecesPerCycle, rule, demo } = readings;
  const { standard, interval, piecesPerHour } = sheet;
  const part = (value: number) => value / piecesPerCycle;
  return {
    ok: true,
    title,
    demo,
    method,
    cycles,
    basis,
    piecesPerCycle,
    unit: { id: choice.unit, symbol: timeUnits[choice.unit].symbol },
    confidence: choice.confidence,
    rating: { rated: sheet.rated, scale: choice.scale, standard: ratingScales[choice.scale].standard },
    elements: sheet.rows.map(({ name, summary, rated, trend, needed }, index) => ({
      name,
      readings: readings.elements[index]?.readings,
      frequency: standard.elements[index]?.frequency,
      summary,
      rated,
      trend,
      needed,
    })),
    precision: choice.precision,
    allowance: {
      share: choice.allowance,
      contingency: choice.contingency,
      convention: choice.convention,
      words: standard.words,
    },
    cycle: { basic: standard.basic, standard: standard.standard, interval },
    piece: {
      basic: part(standard.basic),
      standard: part(standard.standard),
      low: interval === undefined ? undefined : part(interval.interval.low),
      high: interval === undefined ? undefined : part(interval.interval.high),
      anHour: piecesPerHour.rate,
      wholeAnHour: piecesPerHour.whole,
    },
    rule,
    notes,
  };
}
