import { countText, numberText, percentText } from '@evenhand/core/ground/units';
import type {
  CallsAsked,
  CallsFound,
  MachinesAsked,
  MachinesFound,
  RoundAsked,
  RoundFound,
} from './evaluate-machines-found.ts';
import { tableLines } from './table-lines.ts';
import { wrapped } from './wrapped.ts';

export function machinesText(asked: MachinesAsked, found: MachinesFound): string {
  const lines =
    asked.kind === 'round' && found.kind === 'round'
      ? roundLines(asked, found)
      : asked.kind === 'calls' && found.kind === 'calls'
        ? callsLines(asked, found)
        : [];
  return `${lines.join('\n')}\n`;
}

const minutes = (value: number) => `${numberText(value, 2)} min`;

function roundLines({ costs }: RoundAsked, { ideal, rows, cheapest }: RoundFound): string[] {
  const priced = costs === undefined ? [] : ['cost a piece'];
  const table = tableLines(
    ['machines', 'cycle', 'worker waits', 'each machine waits', 'pieces an hour', ...priced],
    rows.map((row) => [
      String(row.machines),
      minutes(row.cycle),
      `${minutes(row.workerIdleAnHour)} an hour`,
      `${minutes(row.machineIdleAnHour)} an hour`,
      numberText(row.piecesAnHour, 1),
      ...(row.costAPiece === undefined ? [] : [numberText(row.costAPiece, 4)]),
    ]),
  );
  return [
    `Fixed round: worker and machines would all be busy with ${numberText(ideal, 2)} machines.`,
    '',
    ...table,
    ...(cheapest === undefined ? [] : ['', `A piece costs least with ${countText(cheapest, 'machine')}.`]),
    ...(costs === undefined
      ? wrapped('Which of them is the cheaper one depends on --hourly-cost and --machine-cost.', '')
      : []),
  ];
}

function callsLines({ stopped, workers, hours }: CallsAsked, { rows }: CallsFound): string[] {
  const bound = workers === 1 ? [`lost in ${numberText(hours, 1)} h (binomial rule)`] : [];
  const table = tableLines(
    ['machines', 'running on average', 'waiting', 'output left', 'a call has to wait', ...bound],
    rows.map((row) => [
      String(row.machines),
      numberText(row.running, 2),
      numberText(row.waiting, 2),
      percentText(row.efficiency),
      percentText(row.mustWait),
      ...(row.lostHours === undefined ? [] : [`${numberText(row.lostHours, 2)} machine-hours`]),
    ]),
  );
  return [
    `At random: each machine would stand ${percentText(stopped)} of the time if it never waited; ${countText(workers, 'worker')}.`,
    '',
    ...table,
    '',
    ...wrapped(
      'Output left: of what there would be without waiting. Running and service times are taken as exponential, the long run solved exactly.',
      '',
    ),
  ];
}
