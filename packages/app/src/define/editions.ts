import type { TimeStudyAllowances } from '@evenhand/core/ground/study';
import {
  type AllowanceColumn,
  type AllowanceEditionId,
  type AllowanceRow,
  type AllowanceRowId,
  allowanceEditions,
} from '@evenhand/core/ground/tables';

export type TableRelaxation = Extract<TimeStudyAllowances['relaxation'], { kind: 'table' }>;

/** The rows that always apply, in the first column of an edition. */
export function firstTable(edition: AllowanceEditionId): TableRelaxation {
  const { columns, rows } = allowanceEditions[edition];
  const always = rows.filter(({ id }) => id === 'personal' || id === 'basic-fatigue');
  return {
    kind: 'table',
    edition,
    column: columns[0] ?? 'one',
    choices: always.map(({ id }) => ({ row: id, level: 0 })),
  };
}

export function rowIn(edition: AllowanceEditionId, row: AllowanceRowId): AllowanceRow | undefined {
  return allowanceEditions[edition].rows.find(({ id }) => id === row);
}

/**
 * The choices in another edition. Only levels with the same words go over: a load in pounds is none in kilograms. Rows and
 * levels that the other one does not print fall away.
 */
export function inEdition(relaxation: TableRelaxation, edition: AllowanceEditionId): TableRelaxation {
  const known: readonly AllowanceColumn[] = allowanceEditions[edition].columns;
  const column = known.includes(relaxation.column) ? relaxation.column : (known[0] ?? 'one');
  const at = known.indexOf(column);
  const choices = relaxation.choices.flatMap(({ row, level }) => {
    const words = rowIn(relaxation.edition, row)?.levels[level]?.words;
    const levels = rowIn(edition, row)?.levels ?? [];
    const same = levels.findIndex((each) => each.words === words);
    const percent = levels[same]?.percents[at];
    return percent === undefined || percent === null ? [] : [{ row, level: same }];
  });
  return { kind: 'table', edition, column, choices };
}
