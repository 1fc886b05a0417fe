import { describe, expect, it } from 'vitest';
import { commands } from './run.ts';
import { call } from './testing/fake-io.ts';

describe('the command line', () => {
  it('without a command says what there is, and that this was no use', async () => {
    const { code, out, err } = await call([]);
    expect([code, out]).toEqual([2, '']);
    for (const command of commands) expect(err).toContain(command.words.join(' '));
  });

  it.each([['--help'], ['-h'], ['help']])('%s prints the overview to stdout', async (word) => {
    const { code, out, err } = await call([word]);
    expect([code, err]).toEqual([0, '']);
    expect(out).toContain('record chart');
    expect(out).toContain('Exit code: 0 done, 1 findings, 2 bad input or use.');
  });

  it.each(commands.map((command) => [command.words.join(' '), command] as const))(
    'help %s names every option and an example',
    async (words, command) => {
      for (const argv of [
        ['help', ...command.words],
        [...command.words, '--help'],
        [...command.words, '-h', '--json'],
      ]) {
        const { code, out } = await call(argv);
        expect(code).toBe(0);
        expect(out).toContain(`evenhand ${words}`);
        for (const option of Object.keys(command.options)) expect(out).toContain(`--${option}`);
        expect(out).toContain(`Example: ${command.example}`);
        expect(Math.max(...out.split('\n').map((line) => line.length))).toBeLessThanOrEqual(120);
      }
    },
  );

  it('help of a step tells of all its commands', async () => {
    const { code, out } = await call(['help', 'record']);
    expect(code).toBe(0);
    for (const name of ['chart', 'import', 'export']) expect(out).toContain(`evenhand record ${name}`);
  });

  it.each([['--version'], ['version']])('%s prints the version', async (word) => {
    expect(await call([word])).toMatchObject({ code: 0, out: '1.2.3\n', err: '' });
  });

  it.each([
    [['chart'], 'There is no command “chart”'],
    [['record'], 'There is no command “record”'],
    [['record', 'print', 'x'], 'There is no command “record print”'],
    [['help', 'nothing'], 'There is no command “nothing”'],
    [['--wrong'], 'There is no command “--wrong”'],
    [['check'], 'STUDY is missing.'],
    [['check', 'a', 'b'], '“b” is one word too many.'],
    [['check', 'a', '--fast'], "Unknown option '--fast'."],
    [['record', 'import', 'a.csv'], 'The option -o, --output STUDY is missing.'],
    [['record', 'export', 'a', '-o'], 'argument missing'],
    [['check', 'a', '--json=yes'], 'does not take an argument'],
    [['serve', 'here'], '“here” is one word too many.'],
  ])('%j is bad use: %s', async (argv, reason) => {
    const { code, out, err } = await call(argv);
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(reason);
    expect(err).toMatch(/Try: evenhand .+ \[cli\/use\]/);
  });

  it('bad use with --json is JSON on stdout too', async () => {
    const { code, out } = await call(['check', '--json']);
    expect(code).toBe(2);
    expect(JSON.parse(out)).toMatchObject({ ok: false, findings: [{ code: 'cli/use' }] });
  });

  it('a fault of the program is told in one line without a stack, with what to report', async () => {
    const { code, out, err } = await call(['serve'], {
      serve: () => Promise.reject(new TypeError('x is not a function\n at y')),
    });
    expect([code, out]).toEqual([2, '']);
    expect(err).toContain(
      'This is a fault of the program, not of your file: x is not a function. Please report it',
    );
    expect(err).toContain('the version 1.2.3');
    expect(err.trim().split('\n').length).toBe(1);
  });
});
