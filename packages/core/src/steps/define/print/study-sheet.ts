import type { PaperName, Scene, SceneNode } from '../../../ground/scene/index.ts';
import type { Study } from '../../../ground/study/index.ts';
import { countText } from '../../../ground/units/index.ts';
import type { TimeStudySheet } from '../sheet/index.ts';
import { elementsTable, summaryTable } from './element-tables.ts';
import { readingsBlocks } from './readings-blocks.ts';
import {
  allowanceParagraphs,
  limitWords,
  ratingWords,
  sheetFaultWords,
  steadyWords,
  sureWords,
} from './rest-words.ts';
import { resultPart } from './result-part.ts';
import { besideWidth, flow, type Part } from './sheet-flow.ts';
import {
  type Frame,
  firstHead,
  frameOf,
  headHeight,
  laterHead,
  laterHeadHeight,
  sheetFoot,
  sheetTitle,
  signatureHeight,
  signatures,
} from './sheet-frame.ts';
import { sheetMarks } from './sheet-marks.ts';
import { timeWords } from './sheet-numbers.ts';
import { machineTable, relaxationTable, sittingsTable, stepsTable } from './sheet-tables.ts';
import { signWords } from './sign-words.ts';
import { textLines } from './text-lines.ts';

export interface StudySheetLook {
  readonly paper: PaperName;
  /** The day of printing, as it shall stand at the foot; nothing when left out. */
  readonly printed?: string | undefined;
}

/**
 * The time study sheet, one scene a sheet: heading, the standard beside the run of the whole cycle, elements with their
 * break points, summary, every reading once, what was set aside and why, allowances, how sure it all is; to be signed on
 * the first sheet. A study without a standard is printed too and says what stands in its way.
 */
export function studySheetPages(study: Study, sheet: TimeStudySheet, look: StudySheetLook): readonly Scene[] {
  const frame = frameOf(look.paper);
  const body = flow(partsOf(study, sheet, frame), {
    left: frame.left,
    right: frame.right,
    room: (page) =>
      page === 0
        ? { top: frame.top + headHeight + 9, bottom: frame.bottom - signatureHeight }
        : { top: frame.top + laterHeadHeight + 2, bottom: frame.bottom },
  });
  const words = description(study, sheet);
  return body.map(
    (nodes, page): Scene => ({
      width: frame.width,
      height: frame.height,
      title: `${sheetTitle}: ${study.operation.name || study.title}`,
      description: `Sheet ${page + 1} of ${body.length}. ${words}`,
      nodes: [
        ...(page === 0 ? firstHead(frame, study, sheet) : laterHead(frame, study, sheet)),
        ...nodes,
        ...(page === 0 ? signatures(frame, body.length, sheet.standard !== undefined) : ([] as SceneNode[])),
        ...sheetFoot(frame, page + 1, body.length, look.printed),
      ],
    }),
  );
}

function partsOf(study: Study, sheet: TimeStudySheet, place: Frame): readonly Part[] {
  const marks = sheetMarks(sheet);
  const beside = { left: place.left + besideWidth, right: place.right };
  const machine = machineTable(sheet, beside);
  const steps = stepsTable(sheet, beside);
  const rows = relaxationTable(sheet, beside);
  const sittings = sittingsTable(sheet, beside);
  const { note } = sheet.timeStudy;
  return [
    resultPart(sheet, place),
    ...(sheet.rows.length === 0 ? [] : [summaryTable(sheet, place), elementsTable(sheet, place)]),
    textLines('What stands in the way of a standard', sheetFaultWords(sheet), place),
    ...readingsBlocks(sheet, marks, place),
    textLines('Signs', signWords(sheet), place),
    textLines('Set aside', marks.setAside, place),
    textLines('Foreign elements', marks.foreign, place),
    ...(sittings === undefined ? [] : [sittings]),
    textLines('Notes of the sittings', sittingNotes(sheet), place),
    ...(machine === undefined ? [] : [machine]),
    ...(steps === undefined ? [] : [steps]),
    textLines('Allowances', allowanceParagraphs(sheet), place),
    ...(rows === undefined ? [] : [rows]),
    textLines('Rating', ratingWords(sheet), place),
    textLines('How sure it is', sureWords(sheet), place),
    textLines('Drift and operators', steadyWords(sheet), place),
    textLines('Note', note === undefined ? [] : note.split('\n'), place),
    textLines('Limits', limitWords(study, sheet), place),
  ];
}

function sittingNotes({ timeStudy }: TimeStudySheet): readonly string[] {
  return (timeStudy.sittings ?? []).flatMap(({ start, note }) =>
    note === undefined || note.trim() === '' ? [] : [`From cycle ${start}: ${note}`],
  );
}

function description(study: Study, { standard, unit, rows, cycles, words }: TimeStudySheet): string {
  const interval = standard?.interval?.interval;
  return [
    `${study.operation.name || study.title}, ${countText(rows.length, 'element')}, ${countText(cycles.length, 'cycle')}.`,
    standard === undefined
      ? 'There is no standard yet.'
      : `Standard time of a cycle ${timeWords(standard.standard.standard, unit)}${interval === undefined ? '' : `, interval ${timeWords(interval.low, unit)} to ${timeWords(interval.high, unit)}`}.`,
    words.allowance,
    study.demo === true ? 'The data are invented.' : '',
  ]
    .filter((sentence) => sentence !== '')
    .join(' ');
}
