import type { SheetCell, TimeStudySheet } from '../sheet/index.ts';

/** What the signs in the table of readings mean; only those that stand in it. */
export function signWords(sheet: TimeStudySheet): readonly string[] {
  const cells = sheet.rows.flatMap((row) => row.cells);
  const has = (is: (cell: SheetCell) => boolean) => cells.some(is);
  const summed = sheet.rows.filter(
    ({ element }) => element.occurs === undefined && element.work !== 'inside',
  );
  return [
    [
      has(({ setAside }) => setAside !== undefined)
        ? 'In brackets: set aside, it counts neither in a sum nor in n; the number behind it leads to the reason.'
        : '',
      has(({ time }) => time === undefined) ? 'M: missed.' : '',
      has(({ rating }) => rating !== undefined) ? 'Small below a time: the rating of that reading.' : '',
      has(({ proposal }) => proposal !== undefined)
        ? '?: the rule asks to look at it; it counts as long as nobody sets it aside with a reason.'
        : '',
      (sheet.timeStudy.foreign ?? []).length > 0
        ? 'A letter: something happened there that is no part of the work; its time is in no reading.'
        : '',
      summed.length > 1 && summed.length < sheet.rows.length
        ? 'The whole cycle is the sum of the elements of every cycle, without work inside machine time.'
        : '',
    ]
      .filter((words) => words !== '')
      .join(' '),
  ];
}
