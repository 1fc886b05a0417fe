import type { RecordDesk } from './desk.ts';
import {
  clear,
  copyToNext,
  copyToOther,
  endCyclesHere,
  join,
  markCycle,
  nudge,
  remove,
  removeCycle,
  split,
} from './desk-edits.ts';
import { proposalCommands } from './proposals/proposal-commands.ts';

/** A command of the record desk: what a key, a button or a test calls by its id. */
export interface DeskCommand {
  readonly id: string;
  readonly title: string;
  readonly group: 'film' | 'score' | 'marks' | 'cycles' | 'proposals' | 'study';
  /** Physical keys with modifiers, such as `Ctrl+Shift+KeyZ`; the first is the one shown. */
  readonly keys: readonly string[];
  readonly run: (desk: RecordDesk) => void;
}

type Row = readonly [
  id: string,
  group: DeskCommand['group'],
  title: string,
  keys: readonly string[],
  run: (desk: RecordDesk) => void,
];

const rows: readonly Row[] = [
  ['film.play', 'film', 'Play or pause', ['Space'], (desk) => desk.togglePlay()],
  [
    'film.play-backward',
    'film',
    'Play backward or pause',
    ['Shift+Space', 'Backspace'],
    (desk) => desk.playBackward(),
  ],
  ['film.step-forward', 'film', 'One frame forward', ['ArrowRight'], (desk) => desk.step(1)],
  ['film.step-back', 'film', 'One frame back', ['ArrowLeft'], (desk) => desk.step(-1)],
  ['film.step-forward-ten', 'film', 'Ten frames forward', ['Shift+ArrowRight'], (desk) => desk.step(10)],
  ['film.step-back-ten', 'film', 'Ten frames back', ['Shift+ArrowLeft'], (desk) => desk.step(-10)],
  ['film.to-start', 'film', 'To the first frame', ['Home'], (desk) => desk.jump(0)],
  ['film.to-end', 'film', 'To the last frame', ['End'], (desk) => desk.jump(desk.end - 1)],
  ['film.next-boundary', 'film', 'To the next boundary', ['BracketRight'], (desk) => desk.jumpToBoundary(1)],
  [
    'film.previous-boundary',
    'film',
    'To the boundary before',
    ['BracketLeft'],
    (desk) => desk.jumpToBoundary(-1),
  ],
  ['film.faster', 'film', 'Faster', ['Equal'], (desk) => desk.changeSpeed(1)],
  ['film.slower', 'film', 'Slower', ['Minus'], (desk) => desk.changeSpeed(-1)],
  ['film.loop', 'film', 'Loop the selection or the cycle', ['Backslash'], (desk) => desk.toggleLoop()],
  [
    'score.select-left',
    'score',
    'Select the left hand’s motion here',
    ['ArrowUp'],
    (desk) => desk.selectAtPlayhead('left'),
  ],
  [
    'score.select-right',
    'score',
    'Select the right hand’s motion here',
    ['ArrowDown'],
    (desk) => desk.selectAtPlayhead('right'),
  ],
  [
    'score.next-motion',
    'score',
    'Select the next motion',
    ['Ctrl+BracketRight'],
    (desk) => desk.selectNeighbour(1),
  ],
  [
    'score.previous-motion',
    'score',
    'Select the motion before',
    ['Ctrl+BracketLeft'],
    (desk) => desk.selectNeighbour(-1),
  ],
  [
    'score.span-from',
    'score',
    'Selected span begins here',
    ['Alt+BracketLeft'],
    (desk) => desk.spanEdge('from'),
  ],
  [
    'score.span-to',
    'score',
    'Selected span ends with this frame',
    ['Alt+BracketRight'],
    (desk) => desk.spanEdge('to'),
  ],
  ['score.select-cycle', 'score', 'Select the cycle', ['Alt+Enter'], (desk) => desk.selectCycle()],
  ['score.zoom-in', 'score', 'Zoom in', ['PageUp'], (desk) => desk.score?.zoomBy(2)],
  ['score.zoom-out', 'score', 'Zoom out', ['PageDown'], (desk) => desk.score?.zoomBy(0.5)],
  ['score.zoom-selection', 'score', 'Zoom to the selection', ['Alt+KeyZ'], (desk) => zoomToSelection(desk)],
  ['score.fit', 'score', 'Show the whole film', ['Alt+KeyF'], (desk) => desk.score?.fit()],
  ['score.escape', 'score', 'Give up, end the loop, or select nothing', ['Escape'], (desk) => desk.escape()],
  ['marks.split', 'marks', 'Split the selected motion here', ['Alt+KeyX'], split],
  ['marks.join', 'marks', 'Join with the motion before', ['Alt+KeyJ'], join],
  ['marks.remove', 'marks', 'Clear the span, or join with the motion before', ['Delete'], remove],
  ['marks.clear', 'marks', 'Clear the marks of the selection', ['Shift+Delete'], clear],
  [
    'marks.start-earlier',
    'marks',
    'Start one frame earlier',
    ['Ctrl+ArrowLeft'],
    (desk) => nudge(desk, 'start', -1),
  ],
  [
    'marks.start-later',
    'marks',
    'Start one frame later',
    ['Ctrl+ArrowRight'],
    (desk) => nudge(desk, 'start', 1),
  ],
  [
    'marks.end-earlier',
    'marks',
    'End one frame earlier',
    ['Ctrl+Shift+ArrowLeft'],
    (desk) => nudge(desk, 'end', -1),
  ],
  [
    'marks.end-later',
    'marks',
    'End one frame later',
    ['Ctrl+Shift+ArrowRight'],
    (desk) => nudge(desk, 'end', 1),
  ],
  ['marks.copy-other-hand', 'marks', 'Copy to the other hand', ['Alt+KeyC'], copyToOther],
  ['marks.copy-next-cycle', 'marks', 'Copy to the next cycle', ['Alt+KeyN'], copyToNext],
  ['cycles.mark', 'cycles', 'A cycle begins here', ['Enter'], markCycle],
  ['cycles.remove', 'cycles', 'Take this cycle’s mark away', ['Alt+Delete'], removeCycle],
  ['cycles.end', 'cycles', 'The last cycle ends here', ['Shift+Enter'], endCyclesHere],
  ...proposalCommands.map(
    ([id, title, keys, run]) => [id, 'proposals', title, keys, run] as const satisfies Row,
  ),
  ['study.undo', 'study', 'Undo', ['Ctrl+KeyZ'], (desk) => desk.undo()],
  ['study.redo', 'study', 'Redo', ['Ctrl+Shift+KeyZ', 'Ctrl+KeyY'], (desk) => desk.redo()],
];

export const deskCommands: readonly DeskCommand[] = rows.map(([id, group, title, keys, run]) => ({
  id,
  group,
  title,
  keys,
  run,
}));

function zoomToSelection(desk: RecordDesk): void {
  const span = desk.selectedSpan;
  if (span !== undefined) desk.score?.zoomTo(span.from, span.to);
}

const byKey = new Map(deskCommands.flatMap((command) => command.keys.map((key) => [key, command] as const)));

/** The command on a chord such as `Ctrl+KeyZ`. */
export function commandForChord(chord: string): DeskCommand | undefined {
  return byKey.get(chord);
}

export function commandById(id: string): DeskCommand {
  const command = deskCommands.find((item) => item.id === id);
  if (command === undefined) throw new RangeError(`no command ${id}`);
  return command;
}

interface Pressed {
  readonly code: string;
  readonly ctrlKey: boolean;
  readonly metaKey: boolean;
  readonly altKey: boolean;
  readonly shiftKey: boolean;
}

/** A key press as a chord by physical keys; Command on a Mac counts as Ctrl. */
export function chordOf(event: Pressed): string {
  const parts = [
    event.ctrlKey || event.metaKey ? 'Ctrl' : '',
    event.altKey ? 'Alt' : '',
    event.shiftKey ? 'Shift' : '',
    event.code,
  ];
  return parts
    .filter((part) => part !== '')
    .join('+')
    .replace('NumpadEnter', 'Enter');
}
