import { type Command, optionName } from './command.ts';

const width = 78;

export function overview(commands: readonly Command[]): string {
  const calls = commands.map((command) => command.words.join(' '));
  const longest = Math.max(...calls.map((call) => call.length));
  return [
    'Evenhand: from a film of two hands to a better method that is proven.',
    '',
    'evenhand COMMAND …',
    ...commands.map((command, index) => `  ${(calls[index] ?? '').padEnd(longest)}  ${command.summary}`),
    `  ${'help COMMAND'.padEnd(longest)}  say more about a command`,
    `  ${'--version'.padEnd(longest)}  print the version`,
    '',
    'STUDY is a *.evenhand.json file; - stands for standard input or standard output.',
    'Results go to standard output, messages to standard error.',
    'Exit code: 0 done, 1 findings, 2 bad input or use.',
    '',
  ].join('\n');
}

export function commandHelp(command: Command): string {
  const options = Object.entries(command.options).map(
    ([name, facts]) => [optionName(name, facts), facts.help] as const,
  );
  const longest = Math.max(...options.map(([name]) => name.length));
  const needed = Object.entries(command.options)
    .filter(([, facts]) => facts.needed)
    .map(([, facts]) => `-${facts.short} ${facts.value}`);
  return [
    `evenhand ${[...command.words, ...command.operands, ...needed].join(' ')}`,
    '',
    ...wrap(`${command.summary[0]?.toUpperCase()}${command.summary.slice(1)}.`, ''),
    '',
    ...options.flatMap(([name, help]) => wrap(help, ' '.repeat(longest + 4), `  ${name.padEnd(longest)}  `)),
    '',
    ...command.notes.flatMap((note) => [...wrap(note, ''), '']),
    `Example: ${command.example}`,
    '',
  ].join('\n');
}

/** Breaks text into lines; the first begins with `first`, the others with `indent`. */
function wrap(text: string, indent: string, first = indent): string[] {
  const lines: string[] = [];
  let line = first;
  let empty = true;
  for (const word of text.split(' ')) {
    if (!empty && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
      empty = true;
    }
    line += empty ? word : ` ${word}`;
    empty = false;
  }
  return [...lines, line];
}
