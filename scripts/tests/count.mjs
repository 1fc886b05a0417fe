/**
 * What the running reporter keeps: `unfinished` names the files that were not run to their end.
 * @typedef {{ fullName: string, status: string, again?: boolean }} ReportedTest
 * @typedef {{ name: string, status: string, message?: string, assertionResults: ReportedTest[] }} ReportedFile
 * @typedef {{ success: boolean, unfinished: string[], testResults: ReportedFile[] }} Report
 * @typedef {{ passed: number, failed: number, skipped: number, failures: string[], skips: string[], again: string[] }} Count
 */

/**
 * Counts a run. What cannot be read as a passed test counts against the run: a file that could not be loaded, an
 * error outside all tests, a file that was not run to its end, a run that ended without a report, a run in which not one
 * test was run.
 * @param {Report | null} report
 * @param {number} exitCode
 * @param {(file: string) => string} [shorten]
 * @returns {Count}
 */
export function countReport(report, exitCode, shorten = (file) => file) {
  /** @type {Count} */
  const count = { passed: 0, failed: 0, skipped: 0, failures: [], skips: [], again: [] };
  for (const file of report?.testResults ?? []) countFile(file, shorten(file.name), count);
  for (const file of report?.unfinished ?? []) fail(count, `${shorten(file)} was not run to its end`);
  if (report === null) fail(count, 'the test run ended without a report');
  else if (count.passed + count.failed === 0) fail(count, 'not one test was run');
  else if ((exitCode !== 0 || !report.success) && count.failed === 0)
    fail(count, 'an error outside the tests; see above');
  return count;
}

/**
 * @param {ReportedFile} file
 * @param {string} name
 * @param {Count} count
 */
function countFile(file, name, count) {
  const before = count.failed;
  for (const test of file.assertionResults) {
    if (test.again) count.again.push(`${name} > ${test.fullName}`);
    if (test.status === 'passed') count.passed += 1;
    else if (test.status === 'failed') fail(count, `${name} > ${test.fullName}`);
    else {
      count.skipped += 1;
      count.skips.push(`${name} > ${test.fullName}`);
    }
  }
  if (file.status === 'failed' && count.failed === before) fail(count, `${name} could not be run`);
  else if (file.assertionResults.length === 0) fail(count, `${name} holds no test`);
}

/**
 * @param {Count} count
 * @param {string} what
 */
function fail(count, what) {
  count.failed += 1;
  count.failures.push(what);
}

/**
 * The last line of a run.
 * @param {Pick<Count, 'passed' | 'failed' | 'skipped'>} count
 */
export const closingLine = ({ passed, failed, skipped }) =>
  `${passed} passed, ${failed} failed, ${skipped} skipped`;
