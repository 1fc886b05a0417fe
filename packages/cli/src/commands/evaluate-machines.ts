import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { badUse, type Call, type Command } from '../command.ts';
import { exitCode } from '../io.ts';
import { failWith, outJson } from '../report.ts';
import { readNumber, readPercent, readWhole } from './define-words.ts';
import { type MachinesAsked, machinesFound } from './evaluate-machines-found.ts';
import { machinesText } from './evaluate-machines-text.ts';

export const evaluateMachines: Command = {
  words: ['evaluate', 'machines'],
  summary: 'say how many machines a worker can serve, in a fixed round or as they call at random',
  operands: [],
  options: {
    together: { value: 'MINUTES', help: 'a fixed round: worker and machine together, at one machine' },
    'worker-alone': {
      value: 'MINUTES',
      help: 'worker alone at one machine, with the way to the next; left out, 0',
    },
    'machine-alone': { value: 'MINUTES', help: 'the machine runs by itself' },
    'hourly-cost': { value: 'N', help: 'cost of an hour of the worker, for the cost of a piece' },
    'machine-cost': { value: 'N', help: 'cost of an hour of one machine, with --hourly-cost' },
    pieces: { value: 'N', help: 'pieces that a machine makes in a cycle; left out, 1' },
    stopped: {
      value: 'PERCENT',
      help: 'machines that call at random: share of the time in which one would stand being served if it never waited',
    },
    machines: { value: 'N', help: 'this number of machines alone; left out, those that come into question' },
    workers: { value: 'N', help: 'who serve the machines that call at random; left out, 1' },
    hours: { value: 'N', help: 'of the shift, for the hours lost; left out, 8' },
    json: { help: 'print the result as JSON' },
  },
  example:
    'evenhand evaluate machines --together 1 --worker-alone 0.1 --machine-alone 2 --hourly-cost 10 --machine-cost 20',
  notes: [
    'In a fixed round (synchronous servicing) every machine is served once in each cycle, and all times are constant.',
    'At random, a machine stops when it will and waits for a free worker. Two figures stand beside each other: the binomial rule of the textbooks, which leaves waiting out of the chance to stand, and a finite group with exponential times solved exactly.',
    'It says how busy a worker would be, not how much may be asked of one: the way, the load and the rest belong to local rules and qualified people.',
  ],
  run: async (call, io) => {
    const json = call.flag('json');
    const asked = readAsked(call);
    if (!asked.ok) return failWith(io, json, [badUse(asked.error, evaluateMachines.example)]);
    const found = machinesFound(asked.value);
    if (!found.ok) return failWith(io, json, [found.error]);
    if (json) await outJson(io, { ok: true, reportVersion: 1, given: asked.value, ...found.value });
    else await io.out(machinesText(asked.value, found.value));
    return exitCode.done;
  },
};

const ofRound = ['together', 'worker-alone', 'machine-alone', 'hourly-cost', 'machine-cost', 'pieces'];
const ofCalls = ['stopped', 'workers', 'hours'];

function readAsked(call: Call): Result<MachinesAsked, string> {
  const given = (options: readonly string[]) => options.find((option) => call.text(option) !== undefined);
  const [round, calls] = [given(ofRound), given(ofCalls)];
  if (round !== undefined && calls !== undefined)
    return fail(
      `--${round} belongs to a fixed round and --${calls} to machines that call at random; ask for one.`,
    );
  const machines = optional(call, 'machines', readWhole);
  if (!machines.ok) return machines;
  if (calls !== undefined) return readCalls(call, machines.value);
  return readRound(call, machines.value);
}

function optional(
  call: Call,
  option: string,
  read: (option: string, text: string) => Result<number, string>,
): Result<number | undefined, string> {
  const text = call.text(option);
  return text === undefined ? ok(undefined) : read(option, text);
}

function readRound(call: Call, machines: number | undefined): Result<MachinesAsked, string> {
  const numbers: Record<string, number> = {};
  for (const option of ofRound) {
    const number = optional(call, option, readNumber);
    if (!number.ok) return number;
    if (number.value !== undefined) numbers[option] = number.value;
  }
  const { together, pieces = 1 } = numbers;
  const machineAlone = numbers['machine-alone'];
  if (together === undefined || machineAlone === undefined)
    return fail(
      'Say --together and --machine-alone for a fixed round, or --stopped for machines that call at random.',
    );
  const [workerCost, machineCost] = [numbers['hourly-cost'], numbers['machine-cost']];
  if ((workerCost === undefined) !== (machineCost === undefined))
    return fail('The cost of a piece needs both --hourly-cost N and --machine-cost N.');
  const workerAlone = numbers['worker-alone'] ?? 0;
  const costs =
    workerCost === undefined || machineCost === undefined ? undefined : { workerCost, machineCost };
  return ok({ kind: 'round', together, workerAlone, machineAlone, piecesACycle: pieces, costs, machines });
}

function readCalls(call: Call, machines: number | undefined): Result<MachinesAsked, string> {
  const text = call.text('stopped');
  if (text === undefined)
    return fail('For machines that call at random, the option --stopped PERCENT is missing.');
  const stopped = readPercent('stopped', text);
  if (!stopped.ok) return stopped;
  const workers = optional(call, 'workers', readWhole);
  if (!workers.ok) return workers;
  const hours = optional(call, 'hours', readNumber);
  if (!hours.ok) return hours;
  return ok({
    kind: 'calls',
    stopped: stopped.value,
    workers: workers.value ?? 1,
    hours: hours.value ?? 8,
    machines,
  });
}
