import type { LearningModel, LearningPoint } from '@evenhand/core/define';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { plainNumber, short } from '../readings/cell-text.ts';
import { linesIn } from './calculator-input.ts';

/** What the pasted times are: of single units, or averages of all units up to each. */
export type TimesAre = 'units' | 'averages';

/** One time a line, or the number of the unit and its time. Without numbers they are the units from 1. */
export function readPoints(text: string): Result<readonly LearningPoint[], string> {
  const points: LearningPoint[] = [];
  for (const { line, cells } of linesIn(text)) {
    const values = cells.map(plainNumber);
    const [one, two] = values;
    if (values.some((value) => value === undefined) || values.length > 2 || one === undefined) {
      return fail(`Line ${line}: “${short(cells.join(' '))}” should be a time, or a unit and its time.`);
    }
    const unit = two === undefined ? points.length + 1 : one;
    const time = two ?? one;
    if (!Number.isSafeInteger(unit) || unit < 1)
      return fail(`Line ${line}: “${cells[0]}” is no number of a unit.`);
    if (!(time > 0)) return fail(`Line ${line}: a time is above 0.`);
    points.push({ unit, time });
  }
  return ok(points);
}

/**
 * The points as the model wants them. Times of units become averages, and averages times of units, only where every unit
 * from 1 on is there: otherwise what lies between is not known.
 */
export function pointsFor(
  model: LearningModel,
  are: TimesAre,
  points: readonly LearningPoint[],
): Result<readonly LearningPoint[], string> {
  if ((model === 'unit') === (are === 'units')) return ok(points);
  if (!points.every(({ unit }, index) => unit === index + 1)) {
    return fail(
      model === 'unit'
        ? 'Averages can be turned into times of units only where every unit from 1 on has one.'
        : 'Times of units can be turned into averages only where every unit from 1 on has one.',
    );
  }
  let [sum, before] = [0, 0];
  const turned = points.map(({ unit, time }) => {
    sum += time;
    const total = time * unit;
    const own = total - before;
    before = total;
    return { unit, time: model === 'unit' ? own : sum / unit };
  });
  const wrong = turned.find(({ time }) => !(time > 0));
  return wrong === undefined
    ? ok(turned)
    : fail(`The averages fall so fast that unit ${wrong.unit} would have taken no time. Check them.`);
}
