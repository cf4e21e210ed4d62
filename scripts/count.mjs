/** How many tests passed and failed, by the runner's own report? What failed without being a test counts as well. */

/**
 * @typedef {{ status: string, fullName?: string }} Assertion
 * @typedef {{ name: string, status: string, message?: string, assertionResults: Assertion[] }} FileResult
 * @typedef {{ passed: number, failed: number, skipped: readonly string[], notes: readonly string[] }} Counted
 */

/**
 * @param {{ testResults?: FileResult[] } | undefined} report the runner's JSON report; undefined where it wrote none
 * @param {number} exitCode the runner's exit code
 * @param {string} what a name for this run
 * @returns {Counted}
 */
export function count(report, exitCode, what) {
  /** @type {string[]} */
  const notes = [];
  if (report?.testResults === undefined) {
    return { passed: 0, failed: 1, skipped: [], notes: [`${what}: the test runner wrote no report`] };
  }
  const assertions = report.testResults.flatMap((file) => file.assertionResults);
  const passed = assertions.filter((assertion) => assertion.status === "passed").length;
  let failed = assertions.filter((assertion) => assertion.status === "failed").length;
  const skipped = assertions.filter((assertion) => !["passed", "failed"].includes(assertion.status));
  for (const file of report.testResults) {
    const hasFailedTest = file.assertionResults.some((assertion) => assertion.status === "failed");
    if (file.status === "failed" && !hasFailedTest) {
      failed += 1;
      notes.push(`${what}: ${file.name} could not be run as a whole`);
    }
  }
  if (exitCode !== 0 && failed === 0) {
    failed += 1;
    notes.push(`${what}: the test runner ended with ${exitCode} though no test failed`);
  }
  if (passed + failed === 0) {
    failed += 1;
    notes.push(`${what}: no test was run`);
  }
  return { passed, failed, skipped: skipped.map((assertion) => assertion.fullName ?? "?"), notes };
}
