import type { StudyElement } from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { Study, TimeStudy, TimeStudyElement } from '@evenhand/core/ground/study';
import { ratingScales } from '@evenhand/core/ground/tables';
import { fromUnit, numberText, type TimeUnit, timeUnits } from '@evenhand/core/ground/units';
import { badUse, type Call } from '../command.ts';
import type { DefineChoice } from './define-choice.ts';
import { nameKey, strayName } from './define-words.ts';

/** Readings that were found, before it is said how they become a standard. */
export interface FoundReadings {
  readonly elements: readonly StudyElement[];
  /** The unit of their times. */
  readonly unit: TimeUnit;
  readonly method: string | undefined;
  readonly piecesPerCycle: number;
}

/** Longer than any reading can be, as in the document: 11 days. */
const longest = 1e12;

/** A time study of readings, with everything that the options say. It is in no document. */
export function timeStudyOf(
  { elements, unit, method, piecesPerCycle }: FoundReadings,
  choice: DefineChoice,
): Result<TimeStudy, readonly Finding[]> {
  const fault = namesFault(elements, choice);
  if (fault !== undefined) return fail([badUse(fault, 'evenhand help define')]);
  const long = elements.flatMap((element) => longReadings(element, unit));
  if (long.length > 0) return fail(long);
  const { scale, rating, confidence, precision, ratingError, allowances } = choice;
  return ok({
    id: 'readings',
    name: 'Readings',
    source: { kind: 'readings', timing: 'typed', ...(method === undefined ? {} : { method }) },
    unit: choice.unit,
    scale,
    rating: rating.all ?? ratingScales[scale].standard,
    ratingError,
    confidence,
    precision,
    allowances,
    piecesPerCycle,
    elements: elements.map((element, index) => elementOf(element, `e${index + 1}`, unit, choice)),
  });
}

function namesFault(elements: readonly StudyElement[], choice: DefineChoice): string | undefined {
  const names = elements.map(({ name }) => name);
  const stray =
    strayName('rating', choice.rating.byName, names) ??
    strayName('every', choice.every.byName, names) ??
    strayName('work', choice.work, names) ??
    strayName('allowance', choice.ownAllowances, names);
  const wrong = [...choice.every.byName.values(), choice.every.all ?? 1].find(
    (every) => !(every >= 1e-4 && every <= 1e6),
  );
  return stray ?? (wrong === undefined ? undefined : `--every ${wrong} is not above 0 or is too large.`);
}

function longReadings({ name, readings }: StudyElement, unit: TimeUnit): Finding[] {
  return readings.flatMap(({ cycle, time }) =>
    time === undefined || time * timeUnits[unit].microseconds <= longest
      ? []
      : [finding('define/cell-long', {}, { found: `${numberText(time, 2)} (${name}, cycle ${cycle})` })],
  );
}

function elementOf(
  { name, readings }: StudyElement,
  id: string,
  unit: TimeUnit,
  { rating, every, work, ownAllowances }: DefineChoice,
): TimeStudyElement {
  const key = nameKey(name);
  const pace = rating.byName.get(key);
  const relaxation = ownAllowances.get(key);
  const often = every.byName.get(key) ?? every.all ?? 1;
  return {
    id,
    name,
    work: work.get(key) ?? 'worker',
    ...(pace === undefined ? {} : { rating: pace }),
    ...(relaxation === undefined ? {} : { relaxation }),
    ...(often === 1 ? {} : { occurs: inWholeCycles(often) }),
    readings: [...readings]
      .sort((a, b) => a.cycle - b.cycle)
      .map(({ cycle, time, setAside, rating: own }) => ({
        cycle,
        ...(time === undefined ? {} : { us: fromUnit(time, unit) }),
        ...(own === undefined ? {} : { rating: own }),
        ...(setAside === undefined ? {} : { setAside }),
      })),
  };
}

/** Every 2.5 cycles is 10 times in 25. */
function inWholeCycles(every: number): { readonly times: number; readonly cycles: number } {
  let times = 1;
  while (times < 10_000 && !Number.isInteger(every * times)) times *= 10;
  return { times, cycles: Math.max(1, Math.round(every * times)) };
}

/** Elements with a reading whose pace nobody has rated. */
export function unratedIn({ elements }: TimeStudy, { rating }: DefineChoice): readonly string[] {
  if (rating.all !== undefined) return [];
  return elements
    .filter(({ work, rating: pace }) => work !== 'process' && pace === undefined)
    .filter(({ readings }) =>
      readings.some(
        ({ us, rating: own, setAside }) => us !== undefined && setAside === undefined && own === undefined,
      ),
    )
    .map(({ name }) => name);
}

/** What may be said of a stored time study that is only another way to look at it. */
const viewOptions: readonly string[] = ['study', 'unit', 'confidence', 'precision', 'draws', 'seed', 'json'];

/** A time study of the document, by id or name, as the options want to see it. */
export function storedTimeStudy(
  study: Study,
  wish: string,
  call: Call,
  choice: DefineChoice,
  options: readonly string[],
): Result<TimeStudy, Finding> {
  const stored = study.timeStudies ?? [];
  const byName = stored.filter(({ name }) => nameKey(name) === nameKey(wish));
  const found = stored.find(({ id }) => id === wish) ?? (byName.length === 1 ? byName[0] : undefined);
  if (found === undefined) {
    const known = knownTimeStudies(study);
    const reason = `The study has no time study “${wish}”. ${known === '' ? 'It has none at all.' : `It has: ${known}.`}`;
    return fail(badUse(reason, 'evenhand help define'));
  }
  const needless = saidOfReadings(call, options);
  if (needless !== undefined) {
    const reason = `--${needless} is what the time study “${found.name}” says itself. Leave it out here, or change it in the study.`;
    return fail(badUse(reason, `evenhand define STUDY --study ${found.id}`));
  }
  const given = (option: string) => call.text(option) !== undefined;
  return ok({
    ...found,
    ...(given('unit') ? { unit: choice.unit } : {}),
    ...(given('confidence') ? { confidence: choice.confidence } : {}),
    ...(given('precision') ? { precision: choice.precision } : {}),
  });
}

/** The first option that says which readings count or what becomes of them; a stored time study says that itself. */
export function saidOfReadings(call: Call, options: readonly string[]): string | undefined {
  return options.find(
    (option) => !viewOptions.includes(option) && (call.text(option) !== undefined || call.flag(option)),
  );
}

/** Ids and names; empty when there is none. */
export function knownTimeStudies({ timeStudies = [] }: Study): string {
  return timeStudies.map(({ id, name }) => `${id} (${name})`).join(', ');
}
