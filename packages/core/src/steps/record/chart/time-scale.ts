import { micros } from '../../../ground/base/index.ts';
import { groupNode, lineNode, type SceneNode, textNode } from '../../../ground/scene/index.ts';
import { inUnit, numberText, timeNumber } from '../../../ground/units/index.ts';
import type { ChartPage } from './pages.ts';
import { type ChartScale, graduationFor } from './scale.ts';
import { hairline, thinLine } from './sheet.ts';

/** Where the scale stands on the sheet: between the two columns of bars. */
export interface ScalePlace {
  readonly left: number;
  readonly right: number;
  readonly top: number;
}

const numberSize = 6.3;
const numberRoom = 8;

/** The time scale down the middle: graduated on both edges, numbered between them, its ends read out in bold. */
export function timeScale(place: ScalePlace, page: ChartPage, scale: ChartScale): SceneNode {
  const end = place.top + (page.to - page.from) * scale.pointsPerMicro;
  return groupNode('layer', [
    lineNode(place.left, place.top, place.left, end, thinLine, 'ink'),
    lineNode(place.right, place.top, place.right, end, thinLine, 'ink'),
    ...graduation(place, page, scale, end),
    ...endReadings(place, page, scale, end),
  ]);
}

function graduation(place: ScalePlace, page: ChartPage, scale: ChartScale, end: number): SceneNode[] {
  const { major, minor, decimals } = graduationFor(scale, 24);
  const parts = Math.round(major / minor);
  const first = Math.ceil(inUnit(micros(page.from), scale.unit) / minor - 1e-9);
  const last = Math.floor(inUnit(micros(page.to), scale.unit) / minor + 1e-9);
  const nodes: SceneNode[] = [];
  for (let step = first; step <= last; step += 1) {
    const y = place.top + lengthFrom(page.from, step * minor, scale);
    const numbered = step % parts === 0;
    const length = numbered ? 5 : step % (parts / 2) === 0 ? 3.5 : 2.2;
    nodes.push(lineNode(place.left, y, place.left + length, y, hairline, 'ink'));
    nodes.push(lineNode(place.right - length, y, place.right, y, hairline, 'ink'));
    if (numbered && y - place.top > numberRoom && end - y > numberRoom) {
      nodes.push(middleNumber(place, y, numberText(step * minor, decimals), false));
    }
  }
  return nodes;
}

function lengthFrom(from: number, units: number, scale: ChartScale): number {
  return (units / inUnit(micros(1), scale.unit) - from) * scale.pointsPerMicro;
}

function endReadings(place: ScalePlace, page: ChartPage, scale: ChartScale, end: number): SceneNode[] {
  const reading = (time: number) => (time === 0 ? '0' : timeNumber(micros(time), scale.unit));
  const first = middleNumber(place, place.top, reading(page.from), true);
  const last = middleNumber(place, end, reading(page.to), true);
  return end - place.top < numberRoom ? [last] : [first, last];
}

function middleNumber(place: ScalePlace, y: number, text: string, bold: boolean): SceneNode {
  return textNode((place.left + place.right) / 2, y + numberSize * 0.35, text, {
    size: numberSize,
    align: 'middle',
    weight: bold ? 600 : 400,
  });
}
