import type { TextEntry } from './text-entry.ts';

/** What is told about the work of a cycle and about methods that are composed: the part of the catalogue on developing. */
export const developTexts = {
  'develop/no-places': {
    severity: 'error',
    text: 'No motion of “{method}” says where it is done, so the work cannot be drawn. Give the moves of one cycle the places they go to.',
  },
  'develop/without-place': {
    severity: 'warning',
    text: '{count} stretches of motions say nowhere where they are done and were left out. Give the moves before them the places they go to.',
  },
  'develop/hold-serves-nothing': {
    severity: 'note',
    text: 'While {objects} was held, nothing was done to it with the other hand, so the work does without that hold.',
  },
  'develop/left-out': {
    severity: 'note',
    text: 'Left out, for nothing has to be done there: {kinds} in {cycle}.',
  },
  'develop/no-pace': {
    severity: 'note',
    text: 'No recorded motion tells the pace of this work, so the times of moves rest on published laws at a working pace that nobody has measured here. Their intervals are wide.',
  },
  'develop/guessed-times': {
    severity: 'note',
    text: 'For some motions nothing is measured and no law is published, so their times are wide guesses: {steps}. Time them, or write their times into the work.',
  },
  'develop/no-position': {
    severity: 'warning',
    text: 'These places have no position on the bench, so distances to them are guessed: {places}. Write their millimetres, or put them on the plan.',
  },
  'develop/schedule': { severity: 'error', text: 'This method cannot be done so: {reason}.' },
  'develop/no-method': {
    severity: 'error',
    text: 'No method was found that does this work: what one step leaves in a hand does not fit what another needs, or steps wait for each other. Look at {steps}.',
  },
  'develop/long-cycle': {
    severity: 'error',
    text: 'All steps of the cycle one after the other take more than eight minutes, which is more than the composer reckons with; the longest is “{step}”. Mend its times, take fewer units for each cycle, or split the work.',
  },
  'develop/not-json': {
    severity: 'error',
    text: 'This is no work file: {reason}. Open the file in a text editor at that place; a number is written such as 240000.',
  },
  'develop/no-source': {
    severity: 'error',
    text: 'This is neither a study nor a work file: it has no formatVersion and no workFormat. Choose a file that ends in .evenhand.json, or write a work as docs/work-format.md says.',
  },
  'develop/work-for-study': {
    severity: 'error',
    text: 'This is a work file, and {what} asks for a study with a record. Choose a file that ends in .evenhand.json.',
  },
  'develop/newer-work': {
    severity: 'error',
    text: 'The work was written in format {found}; this program reads up to {known}. Use a newer version of the program.',
  },
  'develop/work-shape': {
    severity: 'error',
    text: 'The work file is not as it must be, at {field}: {reason}. docs/work-format.md says how it is written.',
  },
  'develop/item-shape': {
    severity: 'error',
    text: 'The {what} “{name}” is not as it must be, at {field}: {reason}.',
  },
  'develop/unknown-place': {
    severity: 'error',
    text: '{step} names the place {place}, which the work does not have. Add the place or choose another.',
  },
  'develop/unknown-step': {
    severity: 'error',
    text: '“{step}” names the step {before}, which the work does not have. Correct the name, or take the link out.',
  },
  'develop/circle': {
    severity: 'error',
    text: 'These steps wait for each other, so none can begin: {steps}. Take one of the links out.',
  },
  'develop/never-put-down': {
    severity: 'error',
    text: 'After “{step}” a hand carries {object}, and no step of the unit takes it from there or puts it down as often as it is taken. Add the step that puts it down, or call it as the next step does.',
  },
  'develop/never-taken-up': {
    severity: 'error',
    text: '“{step}” needs {object} in the hand, and no step of the unit takes it up. Add the step that gets it, or call it as the step before does.',
  },
  'develop/no-hand': {
    severity: 'error',
    text: '“{step}” takes both hands, so no hand is left to hold {object}. Let a fixture hold it, or do the step with one hand.',
  },
  'develop/absurd-size': {
    severity: 'error',
    text: '{what} is {mm} mm, less than a hand can aim at. Write it in millimetres, {least} or more, or leave it out.',
  },
  'develop/unit-beyond': {
    severity: 'error',
    text: '“{step}” belongs to unit {unit}, but the cycle makes {units}. Give the step another unit, or the work more units a cycle.',
  },
  'develop/unit-without-steps': {
    severity: 'note',
    text: 'No step belongs to unit {unit} of the {units} that a cycle makes, so the steps of the others are taken to make it, too. If they do not, correct the units a cycle.',
  },
  'develop/absurd-time': {
    severity: 'error',
    text: 'A motion of “{step}” takes an hour or more, which is no hand motion. Write its time in microseconds.',
  },
  'develop/out-of-reach': {
    severity: 'error',
    text: 'The place “{place}” lies {distance} mm away, out of everyone’s reach. Correct its millimetres, or bring it closer.',
  },
  'develop/nothing-to-change': {
    severity: 'error',
    text: 'Nothing in this work can be changed so: {changes}. A change asks for what it changes, such as a hold for a fixture, and for a method after it.',
  },
  'develop/unknown-change': {
    severity: 'error',
    text: '“{change}” is no change of this work. It can be {known}.',
  },
  'develop/changes-clash': {
    severity: 'error',
    text: '“{one}” and “{other}” cannot be made together. Leave one of them out.',
  },
  'develop/units-held': {
    severity: 'error',
    text: '{units} units at once ask for two free hands, but in “{step}” a hand holds or both take part. Take the change fixture as well, or change the step.',
  },
  'develop/units-taken': {
    severity: 'error',
    text: 'The work has {found} units a cycle already, so it is not made one of {units} units. Draw it from one unit.',
  },
  'develop/cost-without-change': {
    severity: 'error',
    text: 'A cost is given for {change}, which is not among the changes that are tried. Add it to the changes, or leave its cost out.',
  },
  'develop/table-head': {
    severity: 'error',
    text: 'This is no time table: {reason}. Its first line names the columns {columns}.',
  },
  'develop/table-line': {
    severity: 'error',
    text: 'Line {line} of the time table cannot be read: {reason}.',
  },
  'develop/nothing-movable': {
    severity: 'error',
    text: 'No place of the work may be moved. Mark a bin, a tool or an exit as one that does not have to stay.',
  },
  'develop/no-spot': {
    severity: 'error',
    text: 'For these places no spot is within reach of everybody chosen, on their side, large enough and clear of what stays: {places}. Give more spots, choose other people, or make room.',
  },
  'develop/few-spots': {
    severity: 'error',
    text: '{places} places are to be put on {spots} spots. Give more spots, or let some places stay.',
  },
  'develop/no-layout': {
    severity: 'error',
    text: 'No layout keeps reach, side, room and gap for all of these places at once: {places}. Give more spots, or a smaller gap.',
  },
  'develop/layout-not-found': {
    severity: 'error',
    text: 'No layout was found that keeps reach, side, room and gap for {places}; whether there is one is not known. Give more spots, or more time.',
  },
  'develop/steps-out-of-reach': {
    severity: 'error',
    text: 'A step of the work is out of reach of every hand that may do it, wherever the places are put. Bring the places that stay closer, or choose other people.',
  },
  'develop/plan-too-large': {
    severity: 'error',
    text: 'A bench of {width} by {depth} mm does not fit on {paper} at 1:{scale}. Take 1:10, a larger sheet, or a smaller bench.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
