import type { TextEntry } from './text-entry.ts';

/** What is told about the proof of a better method: the part of the catalogue on evaluating. */
export const evaluateTexts = {
  'evaluate/number': { severity: 'error', text: '{what} must be {range}; {found} was given.' },
  'evaluate/no-cycle': {
    severity: 'error',
    text: 'There is no cycle time of “{method}”. Time at least one cycle of it, better ten.',
  },
  'evaluate/cycle-time': {
    severity: 'error',
    text: 'Cycle time {place} of “{method}” cannot be used: {found}. A cycle takes more than no time; correct it, or set the cycle aside with its reason.',
  },
  'evaluate/one-cycle': {
    severity: 'warning',
    text: 'Of “{method}” one cycle counts, so nothing can be said about how sure the difference is. Time more cycles.',
  },
  'evaluate/no-spread': {
    severity: 'warning',
    text: 'All {count} cycle times of “{method}” are equal, so they say nothing about how much it varies. The watch may be too coarse, or figures were copied.',
  },
  'evaluate/few-cycles': {
    severity: 'note',
    text: 'Of “{method}” {count} cycles count. With so few, intervals are wide, and those from drawing again are rather too narrow.',
  },
  'evaluate/same-method': {
    severity: 'error',
    text: 'Both sides are the method “{method}”. Choose another one to compare it with.',
  },
  'evaluate/range-order': {
    severity: 'error',
    text: '{what}: low {low}, likely {likely}, high {high} are not in order. Low must not be above likely, and likely not above high.',
  },
  'evaluate/no-years': {
    severity: 'error',
    text: 'There is no year to count. Give the years for which the method is expected to run, 1 or more.',
  },
  'evaluate/learning-slow': {
    severity: 'error',
    text: 'At a learning rate of {rate} the new method would reach its time after more than {most} units. Give a lower rate, or a first unit that is nearer to that time.',
  },
  'evaluate/no-shared-motion': {
    severity: 'warning',
    text: 'The two methods share no motion of the same kind with the same object over a similar distance, so nothing can be said about pace. Name the objects and places in both, or rate the pace of both.',
  },
  'evaluate/few-shared': {
    severity: 'note',
    text: 'The motions that both methods share fill {share} of the worked time of the new one. What is said about pace rests on them alone.',
  },
  'evaluate/pace-unsure': {
    severity: 'warning',
    text: 'From these cycles the pace of the two records cannot be told apart well: it could explain up to {most} of the saving, or none. Time more cycles of both.',
  },
  'evaluate/pace-unknown': {
    severity: 'warning',
    text: 'With so few cycles nothing can be said about how sure the pace is, so it may explain any part of the saving. Time more cycles of both.',
  },
  'evaluate/pace-explains': {
    severity: 'warning',
    text: 'The same motions took {times} of their time in “{before}” when done in “{after}”. That is pace, not method: it explains {explained} of the saving. Use the saving at equal pace, {equal}.',
  },
  'evaluate/pace-hides': {
    severity: 'note',
    text: 'The same motions took {times} of their time in “{before}” when done in “{after}”. If the work was slower there, the method saves more, at equal pace {equal}; if the method itself makes them slower, such as two hands at work at once, it does not. The saving as it was measured is the safe figure.',
  },
  'evaluate/pace-disagrees': {
    severity: 'note',
    text: 'Of the {count} shared motions, {faster} ran faster in the new method and {slower} slower. Where they do not agree, something else than pace may have changed; look at them one by one.',
  },
  'evaluate/machines-beyond': {
    severity: 'error',
    text: 'More machines than {most} for one group of workers are not counted here. Give fewer.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
