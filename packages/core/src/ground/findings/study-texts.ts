import type { TextEntry } from './text-entry.ts';

/** What is told about the time studies, comparisons and works of a study document, and about edits of them. */
export const studyTexts = {
  'study/names-unknown-method': {
    severity: 'error',
    text: '“{name}” names the method {method}, which the study does not have. Add the method or choose another.',
  },
  'study/sitting-order': {
    severity: 'error',
    text: 'The sitting that begins with cycle {cycle} does not come after the one before it. Each must begin with a later cycle.',
  },
  'study/foreign-element': {
    severity: 'error',
    text: 'The foreign element “{what}” names the element {element}, which the time study does not have.',
  },
  'study/reading-order': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} does not come after the one before it. There is at most one reading for each cycle, in the order of the cycles.',
  },
  'study/reading-of-record': {
    severity: 'error',
    text: 'The reading of “{element}” in cycle {cycle} has a time of its own, but this time study takes its times from the marked record. Leave the time out.',
  },
  'study/compared-with-itself': {
    severity: 'error',
    text: 'The method {method} is compared with itself. Choose two methods.',
  },
  'edit/no-time-study': {
    severity: 'error',
    text: 'The time study {timeStudy} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-timed-element': {
    severity: 'error',
    text: 'The element {element} is not in the time study any more; the edit was kept apart.',
  },
  'edit/reading-cycle': {
    severity: 'error',
    text: 'An edit of a reading must name one cycle before and after.',
  },
  'edit/no-comparison': {
    severity: 'error',
    text: 'The comparison {comparison} is not in the study any more; the edit was kept apart.',
  },
  'study/change-order': {
    severity: 'error',
    text: 'The change {change} does not come after the one before it. There is at most one entry for each change, in the order of their names.',
  },
  'edit/no-work': {
    severity: 'error',
    text: 'The work {work} is not in the study any more; the edit was kept apart.',
  },
  'edit/no-work-step': {
    severity: 'error',
    text: 'The step {step} is not in the work any more; the edit was kept apart.',
  },
  'edit/no-work-place': {
    severity: 'error',
    text: 'The place {place} is not in the work any more; the edit was kept apart.',
  },
  'edit/last-of-work': {
    severity: 'error',
    text: '{item} is the last one of the work. Add another before this one is taken out, or remove the whole work.',
  },
  'edit/work-change-name': {
    severity: 'error',
    text: 'An edit of a change must name one change before and after.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
