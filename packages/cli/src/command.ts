import { parseArgs } from 'node:util';
import { fail, ok, type Result } from '@evenhand/core/ground/base';
import { type Finding, finding } from '@evenhand/core/ground/findings';
import type { ExitCode, Io } from './io.ts';

export interface OptionFacts {
  readonly short?: string;
  /** Name of the value in the help; left out, the option is a switch. */
  readonly value?: string;
  readonly help: string;
  readonly needed?: true;
}

export interface Command {
  /** The words that call it: `['record', 'chart']`. */
  readonly words: readonly string[];
  readonly summary: string;
  /** Names of what must follow, such as STUDY. */
  readonly operands: readonly string[];
  readonly options: Readonly<Record<string, OptionFacts>>;
  readonly example: string;
  /** Paragraphs below the options in the help. */
  readonly notes: readonly string[];
  readonly run: (call: Call, io: Io) => Promise<ExitCode>;
}

/** A call that fits its command: every needed operand and option is there. */
export interface Call {
  readonly operands: readonly string[];
  readonly text: (option: string) => string | undefined;
  readonly flag: (option: string) => boolean;
}

export function badUse(reason: string, example: string): Finding {
  return finding('cli/use', {}, { reason, example });
}

/** Reads what follows the words of a command. */
export function parseCall(command: Command, argv: readonly string[]): Result<Call, Finding> {
  const known = Object.entries(command.options);
  const options = Object.fromEntries(
    known.map(([name, { short, value }]) => [
      name,
      {
        type: value === undefined ? ('boolean' as const) : ('string' as const),
        ...(short === undefined ? {} : { short }),
      },
    ]),
  );
  let parsed: { values: Record<string, unknown>; positionals: string[] };
  try {
    parsed = parseArgs({ args: [...argv], options, allowPositionals: true });
  } catch (error) {
    return fail(badUse(plainReason(error), helpOf(command)));
  }
  const { values, positionals } = parsed;
  const missing = command.operands[positionals.length];
  if (missing !== undefined) return fail(badUse(`${missing} is missing.`, command.example));
  const extra = positionals[command.operands.length];
  if (extra !== undefined) return fail(badUse(`“${extra}” is one word too many.`, command.example));
  const needed = known.find(([name, facts]) => facts.needed && values[name] === undefined);
  if (needed !== undefined)
    return fail(badUse(`The option ${optionName(needed[0], needed[1])} is missing.`, command.example));
  return ok({
    operands: positionals,
    text: (name) => (typeof values[name] === 'string' ? values[name] : undefined),
    flag: (name) => values[name] === true,
  });
}

export function optionName(name: string, facts: OptionFacts): string {
  const short = facts.short === undefined ? '' : `-${facts.short}, `;
  return `${short}--${name}${facts.value === undefined ? '' : ` ${facts.value}`}`;
}

export function helpOf(command: Command): string {
  return `evenhand help ${command.words.join(' ')}`;
}

/** The first sentence of what Node says about a wrong option; the rest speaks of Node's own ways. */
function plainReason(error: unknown): string {
  const text = error instanceof Error ? error.message : String(error);
  const dashed = /^Option '(?:-\w, )?(--[\w-]+)(?: <value>)?' argument is ambiguous/.exec(text)?.[1];
  if (dashed !== undefined)
    return `The value of ${dashed} is missing, or begins with a dash; then write ${dashed}=VALUE.`;
  return `${(text.split(/\.\s|\n/)[0] ?? text).replace(/\.$/, '')}.`;
}
