import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { studyArb } from '../../../../../../tests/helpers/study-arbitraries.ts';
import { parseVtt } from '../../../../../../tests/oracles/vtt-parser.ts';
import {
  emptyStudy,
  filmOf,
  frameClock,
  type Hand,
  hands,
  itemAt,
  type Method,
  type Motion,
  type Study,
} from '../../../ground/study/index.ts';
import { motionsToVtt } from './index.ts';

const seeded = { seed: 31_337, numRuns: 300 };

function vttOf(study: Study, method: string): string {
  const vtt = motionsToVtt(study, method);
  if (!vtt.ok) throw new Error(vtt.error.message);
  return vtt.value;
}

const handOf = (id: string | undefined): Hand => (id?.endsWith('left') ? 'left' : 'right');

describe('motions as captions (WebVTT)', () => {
  it('are a file that the W3C syntax allows, whatever a person wrote', () => {
    fc.assert(
      fc.property(
        studyArb,
        fc.constantFrom('filmed', 'plain'),
        fc.string({ unit: 'binary', minLength: 1 }),
        (study, id, text) => {
          const titled = {
            ...study,
            title: `${text} --> & <b>`,
            places: study.places.map((place) => ({ ...place, name: `${text}\n\n-->` })),
          };
          const file = parseVtt(vttOf(titled, id));
          expect(file.notes.length).toBe(1);
          for (const cue of file.cues) expect(cue.lines).toBeLessThanOrEqual(2);
        },
      ),
      seeded,
    );
  });

  it('show at every frame just the motions that the film has there', () => {
    fc.assert(
      fc.property(studyArb, (study) => {
        const method = study.methods[0] as Method;
        const film = filmOf(study, method);
        if (film === undefined) throw new Error('no film');
        const clock = frameClock(film.frameTimes);
        fc.pre(shortestFrame(clock) >= 1000);
        const { cues } = parseVtt(vttOf(study, method.id));
        for (let frame = 0; frame < clock.frames; frame += 1) {
          const at = clock.timeOf(frame) / 1000;
          for (const hand of hands) {
            const kind = itemAt<Motion>(method[hand], frame)?.item.kind ?? 'unmarked';
            const shown = cues.filter(
              (cue) => handOf(cue.id) === hand && cue.startMs <= at && at < cue.endMs,
            );
            expect(shown.length).toBe(kind === 'unmarked' ? 0 : 1);
            if (kind !== 'unmarked')
              expect(shown[0]?.text).toMatch(new RegExp(`^${hand === 'left' ? 'Left' : 'Right'}: ${kind} `));
          }
        }
      }),
      seeded,
    );
  });

  it('stand at film time though the scene clock runs otherwise; the left hand’s at the left (worked by hand)', () => {
    const said = 'marked' as const;
    const method: Method = {
      id: 'm',
      name: 'Present',
      kind: 'recorded',
      base: { kind: 'frames', film: 'f' },
      unitsPerCycle: 1,
      left: { items: [{ id: 'a', start: 0, kind: 'H', object: 'A & B <new>', said }], end: 30 },
      right: {
        items: [
          { id: 'b', start: 0, kind: 'unmarked', said },
          { id: 'c', start: 10, kind: 'TE', to: 'bin', said },
        ],
        end: 40,
      },
      cycles: { items: [], end: 40 },
    };
    const study: Study = {
      ...emptyStudy('s', 'Couplings'),
      places: [{ id: 'bin', name: 'bin 2' }],
      films: [
        {
          ...{
            id: 'f',
            sha256: '0'.repeat(64),
            name: 'f.mp4',
            bytes: 1,
            container: 'MP4',
            codec: 'avc1',
            width: 1,
            height: 1,
            rotation: 0 as const,
          },
          frameTimes: { ticksPerSecond: 30_000, start: 0, steps: [{ repeat: 40, deltas: [1001] }] },
          clock: { kind: 'factor', realPerFilm: 0.125 },
        },
      ],
      methods: [method],
    };
    expect(vttOf(study, 'm')).toBe(`WEBVTT Evenhand: Couplings

NOTE
Motions of both hands, method: Present.
Times are those of the film, not of the scene clock.

1 left
00:00:00.000 --> 00:00:00.333 line:-2 position:2% size:46% align:left
Left: <b>H</b> hold
A &amp; B &lt;new&gt;

2 left
00:00:00.333 --> 00:00:01.001 line:-2 position:2% size:46% align:left
Left: <b>H</b> hold
A &amp; B &lt;new&gt;

2 right
00:00:00.333 --> 00:00:01.001 line:-2 position:98% size:46% align:right
Right: <b>TE</b> transport empty
to bin 2

3 right
00:00:01.001 --> 00:00:01.334 line:-2 position:98% size:46% align:right
Right: <b>TE</b> transport empty
to bin 2
`);
    expect(parseVtt(vttOf(study, 'm')).cues[0]?.text).toBe('Left: H hold\nA & B <new>');
  });

  it('say of what is only proposed that nobody has confirmed it', () => {
    const study = (...said: readonly Motion['said'][]): Study => {
      const items = said.map((word, at) => ({
        id: `a${at}`,
        start: at * 1e6,
        kind: 'H' as const,
        said: word,
      }));
      const empty = { items: [], end: 0 };
      const method: Method = {
        id: 'm',
        name: 'Present',
        kind: 'composed',
        base: { kind: 'micros' },
        unitsPerCycle: 1,
        left: { items, end: said.length * 1e6 },
        right: empty,
        cycles: empty,
      };
      return { ...emptyStudy('s', 'Couplings'), methods: [method] };
    };
    const { cues, notes } = parseVtt(vttOf(study('marked', 'proposed', 'confirmed'), 'm'));
    expect(cues.map(({ text }) => text)).toEqual(['Left: H hold', 'Left: H hold (proposed)', 'Left: H hold']);
    expect(notes[0]).toContain('1 motion is only proposed; nobody has confirmed it.');
    expect(vttOf(study('marked', 'confirmed'), 'm')).not.toContain('proposed');
    expect(vttOf(study('proposed', 'proposed'), 'm')).toContain('2 motions are only proposed');
  });

  it('names the methods there are when asked for another', () => {
    const vtt = motionsToVtt(emptyStudy('s', 'S'), 'z');
    expect(vtt.ok ? '' : vtt.error.code).toBe('record/no-method');
  });
});

function shortestFrame(clock: { frames: number; timeOf: (frame: number) => number }): number {
  return Math.min(
    ...Array.from({ length: clock.frames }, (_, frame) => clock.timeOf(frame + 1) - clock.timeOf(frame)),
  );
}

describe('the reader used here refuses what the syntax forbids', () => {
  const cue = (timing: string, text = 'x') => `WEBVTT\n\n${timing}\n${text}\n`;
  it.each([
    ['no signature', 'WEBVT\n\n'],
    ['text right after the signature', 'WEBVTTx\n\n'],
    ['no empty line', 'WEBVTT\n00:00.000 --> 00:01.000\nx'],
    ['a comma as decimal mark', cue('00:00,000 --> 00:01,000')],
    ['one digit of minutes', cue('0:00.000 --> 0:01.000')],
    ['61 seconds', cue('00:61.000 --> 01:02.000')],
    ['an end that is not later', cue('00:01.000 --> 00:01.000')],
    ['no blank before the arrow', cue('00:00.000--> 00:01.000')],
    ['a position beyond 100 %', cue('00:00.000 --> 00:01.000 position:101%')],
    ['an unknown setting', cue('00:00.000 --> 00:01.000 colour:red')],
    ['a bare ampersand', cue('00:00.000 --> 00:01.000', 'a & b')],
    ['a bare less-than', cue('00:00.000 --> 00:01.000', 'a < b')],
    ['an open tag', cue('00:00.000 --> 00:01.000', '<b>a')],
    ['an arrow in the text', cue('00:00.000 --> 00:01.000', 'a --> b')],
  ])('%s', (_, text) => expect(() => parseVtt(text)).toThrow());
});
