import type { TextEntry } from './text-entry.ts';

/** What is told about the search for hands in a film. */
export const handsTexts = {
  'hands/search': {
    severity: 'error',
    text: 'The hands could not be sought: {reason}. Load the page again; if it happens again, mark wristbands in the film or read a table of positions instead.',
  },
  'hands/no-browser': {
    severity: 'error',
    text: 'The hands cannot be sought here: {reason}. Films are decoded by a browser, which runs without a window. Install Chrome, Chromium or Edge, or bring one with “npm run browser”, or name one in EVENHAND_BROWSER; or seek the hands on the record desk and save the track there.',
  },
  'hands/not-built': {
    severity: 'error',
    text: 'The hands cannot be sought yet: {reason}. Run “npm run build” in the folder of the program, then give the command again.',
  },
  'hands/none': {
    severity: 'warning',
    text: 'Hardly a hand was seen: in {seen} of {frames} frames. Gloves, hands that are small in the picture, cut off by its edge or blurred are not recognised. Put coloured wristbands on and follow those, or film nearer and with more light.',
  },
  'hands/one': {
    severity: 'warning',
    text: 'Only the {hand} hand was seen, in {seen} of {frames} frames; the {other} hand hardly ever. If both hands work here, film from above so that both are whole in the picture, or follow coloured wristbands. Nothing is proposed for a hand that was not seen.',
  },
  'hands/camera': {
    severity: 'warning',
    text: 'The camera seems to move: in {moves} of {looks} looks the whole picture lay elsewhere than a moment before. Places and speeds of the hands then hold the movement of the camera too, and the bench cannot be measured by clicks. Put the camera on a stand and film again; do not rely on proposals from this film.',
  },
  'hands/more': {
    severity: 'warning',
    text: 'In {more} of {frames} frames more than two hands were seen. The two that go on best were kept; look whether they are the operator’s. Film one operator alone, or let wristbands tell whose hands count.',
  },
} as const satisfies Readonly<Record<string, TextEntry>>;
