import type { RecordDesk } from '../desk.ts';

type Row = readonly [id: string, title: string, keys: readonly string[], run: (desk: RecordDesk) => void];

/** The keys of proposals: the way through them is made of Enter for yes, Backspace for no, and one key for the next. */
export const proposalCommands: readonly Row[] = [
  ['proposals.propose', 'Propose the other cycles', ['Alt+KeyP'], (desk) => void desk.proposals.propose()],
  ['proposals.next', 'To the least certain next', ['Quote'], (desk) => desk.proposals.next()],
  [
    'proposals.previous',
    'Back to the one before in that order',
    ['Shift+Quote'],
    (desk) => desk.proposals.next(-1),
  ],
  [
    'proposals.confirm',
    'Confirm what is shown and go on',
    ['Ctrl+Enter', 'Backquote'],
    (desk) => desk.proposals.confirm(),
  ],
  [
    'proposals.confirm-cycle',
    'Confirm the whole cycle and go on',
    ['Ctrl+Shift+Enter'],
    (desk) => desk.proposals.confirmCycle(),
  ],
  [
    'proposals.confirm-above',
    'Confirm all above the chosen certainty',
    ['Ctrl+Alt+Enter'],
    (desk) => desk.proposals.confirmAbove(),
  ],
  [
    'proposals.refuse',
    'Refuse what is shown and go on',
    ['Ctrl+Backspace'],
    (desk) => desk.proposals.refuse(),
  ],
  [
    'proposals.refuse-cycle',
    'Refuse the whole cycle and go on',
    ['Ctrl+Shift+Backspace'],
    (desk) => desk.proposals.refuseCycle(),
  ],
  ['proposals.clear', 'Take all proposals out', [], (desk) => desk.proposals.clear()],
];
