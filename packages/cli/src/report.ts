import { type Finding, findingLine } from '@evenhand/core/ground/findings';
import { type ExitCode, exitCode, type Io } from './io.ts';

export function atFile(found: readonly Finding[], file: string): Finding[] {
  return found.map((item) => ({ ...item, where: { file, ...item.where } }));
}

/** Findings for a person, one a line, worst first where they are many kinds; to stderr. */
export function say(io: Io, found: readonly Finding[]): void {
  for (const item of found) io.say(`${item.severity}: ${findingLine(item)}`);
}

export async function outJson(io: Io, value: unknown): Promise<void> {
  await io.out(`${JSON.stringify(value, null, 2)}\n`);
}

/** Ends a command that could not do what it was asked. */
export async function failWith(io: Io, json: boolean, found: readonly Finding[]): Promise<ExitCode> {
  say(io, found);
  if (json) await outJson(io, { ok: false, findings: found });
  return exitCode.bad;
}

/** "3 errors, 1 warning" of findings by their severity; what there is none of is left out. */
export function tally(found: readonly Finding[]): string {
  const parts = (['error', 'warning', 'note'] as const).flatMap((severity) => {
    const count = found.filter((item) => item.severity === severity).length;
    return count === 0 ? [] : [`${count} ${severity}${count === 1 ? '' : 's'}`];
  });
  return parts.join(', ');
}
