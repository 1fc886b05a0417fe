import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import {
  type Film,
  frameClock,
  frameCount,
  hands,
  parseStudy,
  type Study,
} from '@evenhand/core/ground/study';
import { describe, expect, it } from 'vitest';
import { filmEntry } from '../../examples/couplings/film-entry.ts';
import type { Script } from '../../examples/couplings/motions.ts';
import { improvedScript } from '../../examples/couplings/script-improved.ts';
import { presentScript } from '../../examples/couplings/script-present.ts';
import { demoStudy } from '../../examples/couplings/study.ts';

const folder = new URL('../../examples/couplings/', import.meta.url);
const bytesOf = (name: string) => readFile(new URL(name, folder));

async function study(): Promise<Study> {
  const parsed = parseStudy((await bytesOf('couplings.evenhand.json')).toString('utf8'));
  if (!parsed.ok) throw new Error(JSON.stringify(parsed.error));
  return parsed.value;
}

const scripts: readonly Script[] = [presentScript(), improvedScript()];

function methodOf(whole: Study, script: Script) {
  const method = whole.methods.find(({ id }) => id === script.id);
  const film = whole.films.find(({ id }) => id === script.id);
  if (method === undefined || film === undefined) throw new Error(`no method ${script.id} in the study`);
  return { method, film };
}

describe('the study of the demonstration', () => {
  it('is read without a finding, is marked as invented, and has both methods on films of their own', async () => {
    const whole = await study();
    expect(whole.demo).toBe(true);
    expect(whole.methods.map(({ id, kind, base }) => [id, kind, base])).toEqual([
      ['present', 'recorded', { kind: 'frames', film: 'present' }],
      ['improved', 'recorded', { kind: 'frames', film: 'improved' }],
    ]);
  });

  it('is the one its scripts and films give', async () => {
    const path = (name: string) => new URL(name, folder).pathname;
    const films = {
      present: await filmEntry('present', path('present.mp4')),
      improved: await filmEntry('improved', path('improved.mp4')),
    };
    expect(await study()).toEqual(demoStudy(films));
  });

  it('knows its films by the SHA-256 of their bytes; together they stay below 6 MB', async () => {
    let total = 0;
    for (const film of (await study()).films) {
      const bytes = await bytesOf(film.name);
      expect([film.name, createHash('sha256').update(bytes).digest('hex')]).toEqual([film.name, film.sha256]);
      expect(film.bytes).toBe(bytes.length);
      total += bytes.length;
    }
    expect(total).toBeLessThan(6_000_000);
  });

  it.each(scripts)(
    '$id: as many frames as the script, each at frame / 30 s to the nearest microsecond',
    async (script) => {
      const { film } = methodOf(await study(), script);
      expect(frameCount(film.frameTimes)).toBe(script.frames);
      expect(wrongTimes(film)).toEqual([]);
    },
  );

  it.each(scripts)(
    '$id: every boundary is the frame at which the script begins the motion',
    async (script) => {
      const { method } = methodOf(await study(), script);
      for (const hand of hands) {
        expect(method[hand].items.map(({ start, kind }) => [start, kind])).toEqual(
          script[hand].map(({ start, kind }) => [start, kind]),
        );
        expect(method[hand].end).toBe(script.frames);
      }
      expect(method.cycles.items.map(({ start }) => start)).toEqual(script.cycles.map(({ start }) => start));
      expect(method.cycles.end).toBe(script.cyclesEnd);
    },
  );

  it.each(scripts)('$id: at least six typical cycles, everything in them marked', async (script) => {
    const { method } = methodOf(await study(), script);
    expect(
      method.cycles.items.filter(({ setAside }) => setAside === undefined).length,
    ).toBeGreaterThanOrEqual(6);
    const first = method.cycles.items[0]?.start ?? 0;
    for (const hand of hands) {
      const open = method[hand].items.filter(
        ({ kind, start }) => kind === 'unmarked' && start >= first && start < method.cycles.end,
      );
      expect(open).toEqual([]);
    }
  });

  it('present: one cycle is set aside with a reason, and the left hand holds through most of every cycle', async () => {
    const { method } = methodOf(await study(), presentScript());
    expect(method.cycles.items.filter(({ setAside }) => setAside !== undefined)).toHaveLength(1);
    const holds = method.left.items.filter(({ kind }) => kind === 'H');
    expect(holds).toHaveLength(method.cycles.items.length);
  });

  it('improved: both hands do the same motions in the same order, but for the fumble and the waits it is drawn with', async () => {
    const { method } = methodOf(await study(), improvedScript());
    const left = method.left.items;
    const slip = left.findIndex(({ note }) => note?.includes('two rings'));
    expect(left.slice(slip - 1, slip + 2).map(({ kind }) => kind)).toEqual(['G', 'RL', 'G']);
    const kindsOf = (items: typeof left) => items.map(({ kind }) => kind).filter((kind) => kind !== 'H');
    const withoutSlip = left.filter((_, index) => index !== slip && index !== slip + 1);
    expect(kindsOf(withoutSlip)).toEqual(kindsOf(method.right.items));
  });
});

/** The films are made at 30 frames a second: frame k is shown at k/30 s. */
function wrongTimes(film: Film): number[] {
  const clock = frameClock(film.frameTimes);
  const wrong: number[] = [];
  for (let frame = 0; frame <= clock.frames; frame += 1) {
    if (Math.abs(clock.timeOf(frame) - (frame * 1_000_000) / 30) > 1) wrong.push(frame);
  }
  return wrong;
}
