import { finding, findingLine } from '@evenhand/core/ground/findings';
import { badUse, type Command, parseCall } from './command.ts';
import { check } from './commands/check.ts';
import { define } from './commands/define.ts';
import { defineCycles } from './commands/define-cycles.ts';
import { defineLearning } from './commands/define-learning.ts';
import { defineSampling } from './commands/define-sampling.ts';
import { develop } from './commands/develop.ts';
import { developWork } from './commands/develop-work.ts';
import { evaluate } from './commands/evaluate.ts';
import { evaluateMachines } from './commands/evaluate-machines.ts';
import { examine } from './commands/examine.ts';
import { recordChart } from './commands/record-chart.ts';
import { recordExport } from './commands/record-export.ts';
import { recordImport } from './commands/record-import.ts';
import { recordPaths } from './commands/record-paths.ts';
import { recordPropose } from './commands/record-propose.ts';
import { recordTrack } from './commands/record-track.ts';
import { serve } from './commands/serve.ts';
import { commandHelp, overview } from './help.ts';
import { type ExitCode, exitCode, type Io } from './io.ts';
import { failWith } from './report.ts';

export const commands: readonly Command[] = [
  serve,
  check,
  recordChart,
  recordImport,
  recordExport,
  recordTrack,
  recordPropose,
  recordPaths,
  examine,
  developWork,
  develop,
  evaluateMachines,
  evaluate,
  defineCycles,
  defineSampling,
  defineLearning,
  // after those that begin with the same word
  define,
];

/** Runs one call of the program and gives its exit code; whatever goes wrong is told in words, never as a stack. */
export async function run(argv: readonly string[], io: Io): Promise<ExitCode> {
  try {
    return await dispatch(argv, io);
  } catch (error) {
    io.say(faultText(error, io.version));
    return exitCode.bad;
  }
}

/** What a person is told when the program itself is wrong. */
export function faultText(error: unknown, version: string): string {
  const reason = error instanceof Error ? error.message || error.name : String(error);
  return findingLine(finding('cli/fault', {}, { reason: reason.split('\n')[0] ?? '', version }));
}

async function dispatch(argv: readonly string[], io: Io): Promise<ExitCode> {
  const [first] = argv;
  if (first === undefined) {
    io.say(overview(commands));
    return exitCode.bad;
  }
  if (first === '--version' || first === '-v' || first === 'version') {
    await io.out(`${io.version}\n`);
    return exitCode.done;
  }
  if (first === 'help' || first === '--help' || first === '-h') return help(argv.slice(1), io);
  const command = commandFor(argv);
  if (command === undefined) return failWith(io, argv.includes('--json'), [unknownCommand(argv)]);
  const rest = argv.slice(command.words.length);
  const end = rest.indexOf('--');
  const beforeEnd = end < 0 ? rest : rest.slice(0, end);
  if (beforeEnd.some((word) => word === '--help' || word === '-h')) return help(command.words, io);
  const call = parseCall(command, rest);
  if (!call.ok) return failWith(io, beforeEnd.includes('--json'), [call.error]);
  return command.run(call.value, io);
}

function commandFor(argv: readonly string[]): Command | undefined {
  return commands.find((command) => command.words.every((word, index) => argv[index] === word));
}

async function help(words: readonly string[], io: Io): Promise<ExitCode> {
  const asked = words.filter((word) => !word.startsWith('-'));
  const command = commandFor(asked);
  if (command !== undefined) {
    await io.out(commandHelp(command));
    return exitCode.done;
  }
  // "help record" stands for all commands of the step.
  const below = commands.filter((item) => asked.every((word, index) => item.words[index] === word));
  if (below.length === 0) return failWith(io, false, [unknownCommand(asked)]);
  await io.out(asked.length === 0 ? overview(commands) : below.map(commandHelp).join('\n'));
  return exitCode.done;
}

function unknownCommand(argv: readonly string[]) {
  const words = argv.filter((word) => !word.startsWith('-')).slice(0, 2);
  const known = commands.map((command) => command.words.join(' ')).join(', ');
  return badUse(`There is no command “${words.join(' ') || argv[0]}”; there are: ${known}.`, 'evenhand help');
}
