import { roundMicros } from '../../../ground/base/index.ts';
import {
  fitText,
  groupNode,
  lineNode,
  type Scene,
  type SceneNode,
  textNode,
} from '../../../ground/scene/index.ts';
import { type TimeUnit, timeText } from '../../../ground/units/index.ts';
import { caseFields, type Outlook, type TornadoBar } from '../money/outlook.ts';
import { amountText, fieldText } from './money-rows.ts';

export interface TornadoLook {
  /** Paper units, 320 or more. */
  readonly width: number;
  readonly unit: TimeUnit;
  readonly currency: string;
  /** Size of the letters; 11 when left out. */
  readonly size?: number | undefined;
}

/** What matters most: for each uncertain figure alone, the net present value from its lowest to its highest. */
export function tornadoPicture({ tornado, likely }: Outlook, look: TornadoLook): Scene {
  const { width, currency, size = 11 } = look;
  const values = [
    likely.netPresentValue,
    ...tornado.flatMap(({ low, high }) => [low.netPresentValue, high.netPresentValue]),
  ];
  const [least, most] = [Math.min(...values), Math.max(...values)];
  const [left, right] = [size * 15, size * 1];
  const room = width - left - right;
  const span = most - least || 1;
  // Room at both ends for what the bars stand for.
  const pad = Math.min(size * 8, room * 0.22);
  const x = (value: number) => left + pad + ((value - least) / span) * (room - 2 * pad);
  const line = size * 2.2;
  const top = size * 2;
  const bottom = top + tornado.length * line;
  const middle = x(likely.netPresentValue);
  const label = `likely ${amountText(likely.netPresentValue, currency)}`;
  return {
    width,
    height: bottom + size * 0.8,
    title: 'What matters most for the net present value',
    description: tornado.map((bar) => barWords(bar, look)).join(' '),
    nodes: [
      groupNode('layer', [
        lineNode(middle, top - size * 0.4, middle, bottom, 0.8, 'ink'),
        ...(least < 0 && most > 0 ? [lineNode(x(0), top, x(0), bottom, 0.6, 'warn', [3, 2])] : []),
      ]),
      groupNode('note', [textNode(middle, size, label, { size: size * 0.9, weight: 600, align: 'middle' })]),
      groupNode(
        'table',
        tornado.map((bar, index) => barRow(bar, top + index * line, { ...look, size, line, left, x })),
        'What matters most',
      ),
    ],
  };
}

interface Plan extends TornadoLook {
  readonly size: number;
  readonly line: number;
  readonly left: number;
  readonly x: (value: number) => number;
}

function barRow(bar: TornadoBar, y: number, plan: Plan): SceneNode {
  const { size, line, left, x } = plan;
  const [atLow, atHigh] = [x(bar.low.netPresentValue), x(bar.high.netPresentValue)];
  const base = y + line / 2 + size * 0.36;
  const name = fitText(shortName(bar), left - size, size, 400);
  const small = size * 0.85;
  const turned = atLow > atHigh;
  const [first, last] = turned ? [bar.high, bar.low] : [bar.low, bar.high];
  return groupNode('row', [
    groupNode('layer', [
      {
        kind: 'rect',
        x: Math.min(atLow, atHigh),
        y: y + line * 0.2,
        width: Math.max(0.6, Math.abs(atHigh - atLow)),
        height: line * 0.6,
        fill: { ink: 'shade' },
        stroke: { ink: 'ink', width: 0.6 },
      },
    ]),
    groupNode('cell', [textNode(0, base, name, { size })]),
    groupNode('cell', [
      textNode(Math.min(atLow, atHigh) - 4, base, valueText(bar, first.value, plan), {
        size: small,
        align: 'end',
        ink: 'soft',
      }),
    ]),
    groupNode('cell', [
      textNode(Math.max(atLow, atHigh) + 4, base, valueText(bar, last.value, plan), {
        size: small,
        ink: 'soft',
      }),
    ]),
  ]);
}

function valueText({ field }: TornadoBar, value: number, { currency, unit }: TornadoLook): string {
  return fieldText(field, value, currency, (us) => timeText(roundMicros(us), unit));
}

/** The name without what makes it the subject of a sentence. */
function shortName({ field }: TornadoBar): string {
  const words = caseFields[field].replace(/^The /, '').replace(/,.*$/, '');
  return `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}`;
}

function barWords(bar: TornadoBar, look: TornadoLook): string {
  const { low, high } = bar;
  const { currency } = look;
  return `${shortName(bar)} from ${valueText(bar, low.value, look)} to ${valueText(bar, high.value, look)}: ${amountText(low.netPresentValue, currency)} to ${amountText(high.netPresentValue, currency)}.`;
}
