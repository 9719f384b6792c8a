// Reads vitest's JSON report and prints one line, `N passed, N failed`; ends with 1 when a test failed or none ran.
//
// A test file that could not be loaded has no tests to count, so each such file counts as one failure. A missing report
// means that the runner did not come to its end: nothing passed, one failure.
import { existsSync, readFileSync } from "node:fs";

const path = process.argv[2];
const report =
  path !== undefined && existsSync(path)
    ? JSON.parse(readFileSync(path, "utf8"))
    : { success: false, numPassedTests: 0, numFailedTests: 1, testResults: [] };
const unloaded = report.testResults.filter(
  (file) => file.status === "failed" && !file.assertionResults.some((test) => test.status === "failed"),
);
const passed = report.numPassedTests;
const failed = report.numFailedTests + unloaded.length;
console.log(`${passed} passed, ${failed} failed`);
process.exitCode = failed > 0 || passed === 0 || !report.success ? 1 : 0;
