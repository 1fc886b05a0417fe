import { expect } from 'vitest';

/** A publication behind a check, and how it was seen. */
export interface PublishedSource {
  readonly reference: string;
  readonly locator?: string;
  readonly how: string;
}

/** One figure as it is printed. */
export interface Printed {
  readonly name: string;
  readonly value: number | readonly (number | string)[];
  /** Decimals of the print. */
  readonly decimals: number;
  /** Is the exact value within half a unit of the last printed place? */
  readonly agrees: boolean;
  readonly why?: string;
}

/** A published example: what goes in, what is printed, and what comes out in full precision by a second program. */
export interface Check<Inputs, SourceName extends string> {
  readonly id: string;
  readonly inputs: Inputs;
  readonly printed: readonly Printed[];
  readonly computed: Readonly<Record<string, number | readonly (number | string)[]>>;
  /** `seen-inputs`: the answer was not printed where it was read; `memory`: recalled; `derived`: from the definitions. */
  readonly seen: 'seen' | 'seen-inputs' | 'memory' | 'derived';
  /** The printed answer is wrong, or mixes conventions: it must not come out. */
  readonly trap?: boolean;
  readonly source: SourceName;
  readonly note?: string;
}

type Found = Readonly<Record<string, number | readonly (number | string)[]>>;

type Counted = Map<string, { readonly trap: boolean; readonly compared: number }>;

/** What ran, by the file of the test: files may share this module. */
const countedIn = new Map<string, Counted>();

function counted(): Counted {
  const file = expect.getState().testPath ?? '';
  const own: Counted = countedIn.get(file) ?? new Map();
  countedIn.set(file, own);
  return own;
}

/** How many checks ran in this file so far, how many of them are traps, and how many figures were compared. */
export function tally(): { readonly checks: number; readonly traps: number; readonly figures: number } {
  const all = [...counted().values()];
  return {
    checks: all.length,
    traps: all.filter(({ trap }) => trap).length,
    figures: all.reduce((sum, { compared }) => sum + compared, 0),
  };
}

/**
 * Holds what was found against a check. Every printed figure must be among what was found: where the print agrees with
 * the exact value, within half a unit of its last place; where it does not, the exact value is expected and the printed
 * one must NOT come out. Everything else that was found must be what the second program computed, to nine digits.
 * @param leftOut printed figures that the project does not compute on purpose
 */
export function expectCheck(
  check: Check<unknown, string>,
  found: Found,
  leftOut: readonly string[] = [],
): void {
  let compared = 0;
  for (const [name, value] of Object.entries(found)) {
    const computed = check.computed[name];
    expect(computed, `${check.id}: nothing to hold ${name} against`).toBeDefined();
    if (typeof value === 'number' && typeof computed === 'number')
      expectClose(value, computed, `${check.id} ${name}`);
    else expect(value, `${check.id} ${name}`).toEqual(computed);
    compared += 1;
  }
  for (const printed of check.printed) {
    if (leftOut.includes(printed.name)) continue;
    expectPrinted(printed, found[printed.name], check.id);
  }
  const wrong = check.printed.filter(({ agrees, name }) => !agrees && !leftOut.includes(name));
  if (check.trap)
    expect(wrong.length, `${check.id}: a trap needs a printed figure that must not come out`).toBeGreaterThan(
      0,
    );
  expect(compared, `${check.id}: nothing was compared`).toBeGreaterThan(0);
  expect(counted().has(check.id), `${check.id} ran twice`).toBe(false);
  counted().set(check.id, { trap: check.trap === true, compared });
}

function expectPrinted(
  { name, value, decimals, agrees }: Printed,
  found: Found[string] | undefined,
  id: string,
): void {
  if (typeof value !== 'number') {
    expect(found, `${id} ${name} as printed`).toEqual(value);
    return;
  }
  expect(found, `${id} ${name} was not computed`).toBeTypeOf('number');
  const away = Math.abs(Number(found) - value);
  const half = 0.5 * 10 ** -decimals * (1 + 1e-9);
  if (agrees) expect(away, `${id} ${name} as printed (${value})`).toBeLessThanOrEqual(half);
  else expect(away, `${id} ${name}: the printed ${value} must not come out`).toBeGreaterThan(half);
}

function expectClose(found: number, computed: number, what: string): void {
  const room = 1e-9 * Math.max(1e-3, Math.abs(computed));
  expect(Math.abs(found - computed), `${what}: ${found} instead of ${computed}`).toBeLessThanOrEqual(room);
}

/** The value of a result, or a failure that tells the sentence. */
export function told<T>(
  result:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly error: { readonly message: string } },
): T {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** The citation of a check for the title of its test. */
export function titled<Inputs, Name extends string>(
  checks: readonly Check<Inputs, Name>[],
  sources: Readonly<Record<Name, PublishedSource>>,
): { readonly title: string; readonly check: Check<Inputs, Name> }[] {
  return checks.map((check) => {
    const { reference, locator } = sources[check.source];
    const trap = check.trap ? ', print is wrong' : '';
    const title = `${check.id}${trap} (${reference}${locator === undefined ? '' : `, ${locator}`}; ${check.seen})`;
    return { title, check };
  });
}
