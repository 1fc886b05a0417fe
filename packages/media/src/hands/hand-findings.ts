import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { CameraMoves } from './camera-watch.ts';
import type { HandReport } from './tracking.ts';

/** A hand that is seen in fewer frames than this share is all but missing. */
const hardlySeen = 0.02;
/** More than two hands in more frames than this share is worth telling. */
const oftenMore = 0.02;

/** A camera that moved so often, and in more looks than this share, stands on no stand. */
const fewMoves = 3;
const oftenMoved = 0.04;

/** What a person should know before they rely on a track. */
export function handFindings(report: HandReport, camera: CameraMoves): readonly Finding[] {
  const { frames, both, leftOnly, rightOnly, more } = report;
  const [left, right] = [both + leftOnly, both + rightOnly];
  const rare = Math.max(1, frames * hardlySeen);
  const found: Finding[] = [];
  if (left < rare && right < rare) {
    found.push(finding('hands/none', {}, { seen: frames - report.none, frames }));
  } else if (left < rare) {
    found.push(finding('hands/one', {}, { hand: 'right', other: 'left', seen: right, frames }));
  } else if (right < rare) {
    found.push(finding('hands/one', {}, { hand: 'left', other: 'right', seen: left, frames }));
  }
  if (more > frames * oftenMore) found.push(finding('hands/more', {}, { more, frames }));
  if (camera.moves >= fewMoves && camera.moves > camera.looks * oftenMoved)
    found.push(finding('hands/camera', {}, { moves: camera.moves, looks: camera.looks }));
  return found;
}
