import { describe, expect, it } from 'vitest';
import { parseStudy, writeStudy } from './index.ts';

/** A study as format 1 had it, written by hand. */
const first = `{
  "formatVersion": 1,
  "id": "hose-couplings",
  "title": "Hose couplings",
  "operation": { "name": "Put a coupling together" },
  "films": [],
  "places": [{ "id": "bin", "name": "rings, right" }],
  "methods": [
    {
      "id": "present",
      "name": "Present method",
      "kind": "recorded",
      "base": { "kind": "micros" },
      "unitsPerCycle": 1,
      "left": {
        "items": [
          { "id": "l1", "start": 0, "kind": "H", "object": "body", "said": "marked" }
        ],
        "end": 4000000
      },
      "right": {
        "items": [
          { "id": "r1", "start": 0, "kind": "TE", "to": "bin", "said": "marked" }
        ],
        "end": 4000000
      },
      "cycles": {
        "items": [
          { "id": "c1", "start": 0 }
        ],
        "end": 4000000
      }
    }
  ]
}
`;

describe('a study of an older format', () => {
  it('of format 1 opens, and written again only its number differs', () => {
    const read = parseStudy(first);
    expect(read.ok ? [] : read.error).toEqual([]);
    if (!read.ok) return;
    expect(read.value.formatVersion).toBe(4);
    expect(JSON.parse(writeStudy(read.value))).toEqual({ ...JSON.parse(first), formatVersion: 4 });
  });

  it('is not changed by being opened', () => {
    const document = Object.freeze(JSON.parse(first));
    expect(parseStudy(JSON.stringify(document)).ok).toBe(true);
    expect(document.formatVersion).toBe(1);
  });

  it('keeps its faults: what format 1 did not have is checked as in the formats after it', () => {
    const read = parseStudy(first.replace('"title"', '"examinations": [], "title"'));
    expect(read.ok ? [] : read.error.map((item) => item.where.pointer)).toEqual(['/examinations']);
  });
});

describe('a study of a newer format', () => {
  it('is refused with the number that was found, the number that is known and what to do', () => {
    const read = parseStudy(first.replace('"formatVersion": 1', '"formatVersion": 5'));
    const [fault, ...more] = read.ok ? [] : read.error;
    expect(more).toEqual([]);
    expect(fault).toMatchObject({ code: 'study/newer-format', where: { pointer: '/formatVersion' } });
    expect(fault?.message).toBe(
      'The study was written in format 5; this program reads up to 4. Update Evenhand to open it.',
    );
  });
});
