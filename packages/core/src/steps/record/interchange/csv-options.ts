import type { Hand } from '../../../ground/study/index.ts';
import type { LabelMapping } from './csv-mapping.ts';

export interface CsvOptions {
  /** Title of the study and name of its operation; empty or longer than 200 characters is mended. */
  readonly title: string;
  /** Gives the study its id. All other ids follow from their place in the table. */
  readonly newId: () => string;
  /** One line a motion, or one line a cycle with the seconds of its elements in columns; left out, motions. */
  readonly shape?: 'motions' | 'elements' | undefined;
  /** Which motion a label of the table stands for. Where it is given, it alone decides. */
  readonly mapping?: LabelMapping | undefined;
  /** `unmarked`: a label without a motion is time that is not marked; left out, such labels are faults. */
  readonly unmapped?: 'unmarked' | undefined;
  /** Whose lines are read, where the table tells of several. */
  readonly subject?: string | undefined;
  /** The hand of lines that name none, and of a whole table of elements; left out, such lines are faults. */
  readonly hand?: Hand | undefined;
  /** `copy`: a line for both hands is read for each; left out, such lines are faults. */
  readonly both?: 'copy' | undefined;
  /** `cut`: where one hand does two things at once, the one that began last has the time; left out, a fault. */
  readonly overlaps?: 'cut' | undefined;
}
