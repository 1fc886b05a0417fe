import type { TextEntry } from './text-entry.ts';

/** What is told when cycles are proposed from tracks: the part of the catalogue on proposals. */
export const proposeTexts = {
  'propose/no-method': { severity: 'error', text: 'The study has no method “{method}”. It has: {methods}.' },
  'propose/no-rate': {
    severity: 'error',
    text: 'Method “{method}” counts microseconds and not frames of a film, so it must be said how many frames a second the track has (--rate).',
  },
  'propose/no-film': { severity: 'error', text: 'The film of method “{method}” is not in the study.' },
  'propose/composed': {
    severity: 'error',
    text: 'Method “{method}” is composed and not recorded: no film shows it, so a track tells nothing of it. Choose a recorded method.',
  },
  'propose/rate': {
    severity: 'warning',
    text: 'At {rate} frames a second the track lasts {track} s, but the rows of “{method}” reach to {rows} s. If both are of the whole film, the rate is wrong (--rate).',
  },
  'propose/cycle-unseen': {
    severity: 'warning',
    text: 'In the confirmed cycle from {from} to {to} s the track shows hardly anything of either hand, so nothing was learned from it.',
  },
  'propose/cycles-unseen': {
    severity: 'error',
    text: 'In the confirmed cycle from {from} to {to} s the track shows hardly anything of either hand, so nothing can be learned from it. Mark another cycle, in which the hands are seen, or make the track anew; if the track is a table, check that it is of this film and at its rate.',
  },
  'propose/frames': {
    severity: 'error',
    text: 'The track has {track} frames and the film has {film}, so the track belongs to another film or to another cut of it. Make the track from this film.',
  },
  'propose/frames-few': {
    severity: 'warning',
    text: 'The track has {track} frames and the film has {film}; what lies after the track was left alone.',
  },
  'propose/no-hands': {
    severity: 'error',
    text: 'The track shows no hand in the film, so there is nothing to go by. Hands in gloves or cut by the edge of the picture are often missed: wristbands, or drawn regions of movement, are other ways to a track.',
  },
  'propose/still': {
    severity: 'error',
    text: 'In the track no hand moves or opens from the first frame to the last, so there is nothing to go by. If the hands move in the film, check how the track was made: in a table, that x and y are the places of the hands.',
  },
  'propose/one-hand': {
    severity: 'warning',
    text: 'The track shows the {seen} hand alone. What is proposed for the {other} hand rests on the {seen} one and is uncertain.',
  },
  'propose/gaps': {
    severity: 'warning',
    text: 'The {hand} hand is not seen in {share} % of the film. Boundaries there are uncertain.',
  },
  'propose/no-cycle': {
    severity: 'note',
    text: 'No cycle of “{method}” is confirmed, so only a rough row was proposed: moving, taking, letting go, holding or idle. Mark one whole cycle with both hands, and the others can be proposed with their objects and places.',
  },
  'propose/short-cycle': {
    severity: 'error',
    text: 'The confirmed cycle at {at} s lasts {seconds} s. Cycles shorter than half a second cannot be told apart in a film; take several units together as one cycle.',
  },
  'propose/nothing-free': {
    severity: 'note',
    text: 'Everything in “{method}” is marked, confirmed or set aside already; there is nothing left to propose. Where the last motion of a hand runs on to the end of the film, end it where the cycle ends.',
  },
  'propose/part-marked': {
    severity: 'warning',
    text: 'Cycle {cycle}, from {from} to {to} s, is only partly marked, so it was left as it is and nothing was learned from it. Mark the rest of it for both hands, or clear what is marked in it, and propose anew.',
  },
  'propose/part-confirmed': {
    severity: 'warning',
    text: 'In {cycles} some motions are confirmed and some only proposed, so all of that was left as it is and nothing was learned from it. Confirm or refuse the rest, and propose anew.',
  },
  'propose/none-found': {
    severity: 'warning',
    text: 'Nothing else in the film runs like the confirmed {cycles}. Either it holds no other cycle, or the track does not show what makes one; nothing was proposed.',
  },
  'propose/unlike': {
    severity: 'warning',
    text: 'From {from} to {to} s something goes on that is too unlike the confirmed {cycles}; nothing was proposed there. Look at it, and mark it if it is a cycle.',
  },
  'propose/left-out': {
    severity: 'warning',
    text: 'In the cycle at {at} s these motions were not found: {motions}. Look at it.',
  },
  'propose/something-else': {
    severity: 'warning',
    text: 'In the cycle at {at} s something goes on from {from} to {to} s that is not in the confirmed {cycles}: a fumble, a pause or another motion. Look at it.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
