import { writeFileSync } from 'node:fs';
import process from 'node:process';

/**
 * @typedef {import('./count.mjs').Report} Report
 * @typedef {import('vitest/node').TestCase} TestCase
 * @typedef {import('vitest/node').TestModule} TestModule
 * @typedef {import('vitest/node').Reporter} Reporter
 */

/**
 * Prints every failure when it happens and keeps the report true after every file, so that a run that is ended still
 * tells what failed, what passed and what was not run. The report is written to the file named by
 * EVENHAND_TEST_REPORT.
 * @implements {Reporter}
 */
export default class RunningReporter {
  /** @type {Report} */
  report = { success: false, unfinished: [], testResults: [] };

  /** @param {readonly import('vitest/node').TestSpecification[]} specifications */
  onTestRunStart(specifications) {
    this.report.unfinished = specifications.map(({ moduleId, project }) => unit(project.name, moduleId));
    this.write();
  }

  /** @param {TestCase} test */
  onTestCaseResult(test) {
    const result = test.result();
    const errors = result.errors ?? [];
    if (result.state === 'failed' || errors.length > 0 || test.diagnostic()?.flaky)
      tell(`${test.module.moduleId} > ${test.fullName}`, errors);
  }

  /** @param {TestModule} module */
  onTestModuleEnd(module) {
    const key = unit(module.project.name, module.moduleId);
    const at = this.report.unfinished.indexOf(key);
    if (at >= 0) this.report.unfinished.splice(at, 1);
    if (module.errors().length > 0) tell(module.moduleId, module.errors());
    this.report.testResults.push({
      name: module.moduleId,
      status: module.ok() ? 'passed' : 'failed',
      assertionResults: [...module.children.allTests()].map((test) => ({
        fullName: test.fullName,
        status: test.result().state,
        again: test.result().state === 'passed' && test.diagnostic()?.flaky === true,
      })),
    });
    this.write();
  }

  /**
   * @param {readonly TestModule[]} _modules
   * @param {readonly unknown[]} unhandled
   * @param {string} reason
   */
  onTestRunEnd(_modules, unhandled, reason) {
    this.report.success = reason === 'passed' && unhandled.length === 0;
    this.write();
  }

  write() {
    const file = process.env.EVENHAND_TEST_REPORT;
    if (file) writeFileSync(file, JSON.stringify(this.report));
  }
}

/**
 * @param {string | undefined} project
 * @param {string} file
 */
const unit = (project, file) => (project ? `${file} (${project})` : file);

/**
 * @param {string} where
 * @param {readonly { message?: string, stack?: string, diff?: string }[]} errors
 */
function tell(where, errors) {
  process.stdout.write(`\nFAILED (at least once) ${where}\n`);
  for (const { message, stack, diff } of errors)
    process.stdout.write(`${stack || message || 'no message'}\n${diff ? `${diff}\n` : ''}`);
}
