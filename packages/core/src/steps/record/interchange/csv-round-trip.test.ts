import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import {
  checkStudy,
  hands,
  type Method,
  type Motion,
  methodClock,
  type Study,
} from '../../../ground/study/index.ts';
import { csvToStudy, motionsToCsv } from './index.ts';

const seeded = { seed: 8, numRuns: 300 };
const options = { title: 'Again', newId: () => 'again' };

function csvOf(study: Study, method: string): string {
  const csv = motionsToCsv(study, method);
  if (!csv.ok) throw new Error(csv.error.message);
  return csv.value;
}

function importOf(text: string): Study {
  const read = csvToStudy(text, options);
  if (!read.ok) throw new Error(`${JSON.stringify(read.error)}\n${text}`);
  return read.value.study;
}

/** What a table of motions can carry, taken from the method itself and not from the text. */
function carried(study: Study, method: Method) {
  const clock = methodClock(study, method);
  const name = (id: string | undefined) => study.places.find((place) => place.id === id)?.name;
  return hands.map((hand) =>
    method[hand].items
      .map((motion: Motion, index) => ({
        kind: motion.kind,
        start: clock.timeOf(motion.start),
        end: clock.timeOf(method[hand].items[index + 1]?.start ?? method[hand].end),
        object: motion.object,
        from: name(motion.from),
        to: name(motion.to),
      }))
      .filter((motion) => motion.kind !== 'unmarked'),
  );
}

const marked = (method: Method) =>
  hands.some((hand) => method[hand].items.some((motion) => motion.kind !== 'unmarked'));

describe('CSV out and in', () => {
  it('out, in and out again gives the same text for any valid method, filmed or not', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), (study, id) => {
        const method = study.methods.find((item) => item.id === id);
        fc.pre(method !== undefined && marked(method));
        const text = csvOf(study, id);
        const again = importOf(text);
        expect(checkStudy(again)).toEqual([]);
        expect(csvOf(again, 'method-1')).toBe(text);
      }),
      seeded,
    );
  });

  it('carries every marked motion of both hands with its kind, exact times, object and places', () => {
    fc.assert(
      fc.property(studyArb, fc.constantFrom('filmed', 'plain'), (study, id) => {
        const method = study.methods.find((item) => item.id === id);
        fc.pre(method !== undefined && marked(method));
        if (method === undefined) return;
        const again = importOf(csvOf(study, id));
        const [only] = again.methods;
        expect(only === undefined ? [] : carried(again, only)).toEqual(carried(study, method));
      }),
      seeded,
    );
  });

  it('is read the same from a spreadsheet that writes semicolons and a decimal comma', () => {
    fc.assert(
      fc.property(studyArb, (study) => {
        const method = study.methods[1];
        fc.pre(method !== undefined && marked(method));
        const text = csvOf(study, 'plain');
        const again = importOf(text);
        const cells = (value: string) =>
          /[";\r\n]|^\s|\s$/.test(value) ? `"${value.replaceAll('"', '""')}"` : value;
        const places = new Map(again.places.map((place) => [place.id, place.name]));
        const [only] = again.methods;
        if (only === undefined) throw new Error('no method');
        // Written a second way, straight from the study: numbers of cycles are left out on both sides.
        const comma = ['hand;motion;start_s;end_s;object;from;to'];
        for (const hand of hands) {
          for (const [index, motion] of only[hand].items.entries()) {
            if (motion.kind === 'unmarked') continue;
            const end = only[hand].items[index + 1]?.start ?? only[hand].end;
            const seconds = (time: number) => (time / 1e6).toFixed(6).replace('.', ',');
            const guard = (value: string | undefined) =>
              /^'*[=+\-@\t\r\n]/.test(value ?? '') ? `'${value}` : (value ?? '');
            const texts = [motion.object, places.get(motion.from ?? ''), places.get(motion.to ?? '')]
              .map(guard)
              .map(cells);
            comma.push([hand, motion.kind, seconds(motion.start), seconds(end), ...texts].join(';'));
          }
        }
        const read = importOf(comma.join('\n'));
        const withoutCycles = { ...only, cycles: { items: [], end: only.cycles.end } };
        expect(carried(read, read.methods[0] ?? only)).toEqual(carried(again, withoutCycles));
      }),
      { ...seeded, numRuns: 100 },
    );
  });

  it('any text at all gives a study or findings with a line, never a fault', () => {
    const bits = fc.constantFrom(
      'left',
      'right',
      'G',
      'TE',
      ',',
      ';',
      '"',
      '\n',
      '\r\n',
      '1.5',
      '2',
      '-',
      ' ',
      '1e9',
      'ß',
      '\uFEFF',
      '=',
      '9999999999',
    );
    const head = fc.constantFrom('', 'hand,motion,start_s,end_s\n', 'hand;motion;start_s;end_s;cycle\n');
    fc.assert(
      fc.property(
        head,
        fc.oneof(
          fc.array(bits).map((list) => list.join('')),
          fc.string({ unit: 'binary' }),
        ),
        (first, rest) => {
          const read = csvToStudy(first + rest, options);
          if (read.ok) expect(checkStudy(read.value.study)).toEqual([]);
          else {
            expect(read.error.length).toBeGreaterThan(0);
            for (const item of read.error) expect(item.where.line).toBeGreaterThan(0);
          }
        },
      ),
      { ...seeded, numRuns: 1000 },
    );
  });
});
