import { expect, test } from 'vitest';
import { closingLine, countReport, type Report } from '../../scripts/tests/count.mjs';

const file = (name: string, status: string, statuses: readonly string[]): Report['testResults'][number] => ({
  name,
  status,
  assertionResults: statuses.map((each, index) => ({ fullName: `test ${index}`, status: each })),
});
const report = (success: boolean, ...testResults: Report['testResults']): Report => ({
  success,
  unfinished: [],
  testResults,
});

test('tests are counted and those that failed or were skipped are named', () => {
  const run = report(
    false,
    file('a', 'failed', ['passed', 'failed', 'skipped']),
    file('b', 'passed', ['passed', 'pending', 'todo']),
  );
  expect(countReport(run, 1)).toEqual({
    passed: 2,
    failed: 1,
    skipped: 3,
    failures: ['a > test 1'],
    skips: ['a > test 2', 'b > test 1', 'b > test 2'],
    again: [],
  });
});

test('a test that passed only the second time is counted as passed and named', () => {
  const run = report(true, {
    name: 'a',
    status: 'passed',
    assertionResults: [{ fullName: 'slow', status: 'passed', again: true }],
  });
  expect(countReport(run, 0)).toMatchObject({ passed: 1, failed: 0, again: ['a > slow'] });
});

test.each([
  ['a run without a report', null, 1, 'without a report'],
  ['a run without a report that claims success', null, 0, 'without a report'],
  ['a run without a test', report(true), 0, 'not one test'],
  ['a run of skipped tests only', report(true, file('a', 'passed', ['skipped'])), 0, 'not one test'],
  [
    'a file that could not be loaded',
    report(false, file('a', 'failed', []), file('b', 'passed', ['passed'])),
    1,
    'a could not be run',
  ],
  [
    'a file without a test',
    report(true, file('a', 'passed', []), file('b', 'passed', ['passed'])),
    0,
    'a holds no test',
  ],
  ['an error outside the tests', report(true, file('a', 'passed', ['passed'])), 1, 'outside the tests'],
  [
    'a file that was not run to its end',
    { ...report(false, file('a', 'passed', ['passed'])), unfinished: ['b'] },
    1,
    'b was not run to its end',
  ],
])('%s counts as failed', (_title, run, code, why) => {
  const count = countReport(run, code);
  expect(count.failed).toBe(1);
  expect(count.failures.join()).toContain(why);
});

test('the closing line is plain', () => {
  expect(closingLine({ passed: 12, failed: 0, skipped: 3 })).toBe('12 passed, 0 failed, 3 skipped');
});
