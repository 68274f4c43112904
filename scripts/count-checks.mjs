// Adds up what `.ci/run` left in a folder: one NAME.status per command (its exit status) and, where the command was a
// test run, NAME.json from vitest. Prints the failures and, last, `N passed, N failed`.
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const folder = process.argv[2];
if (folder === undefined) throw new Error("usage: node scripts/count-checks.mjs FOLDER");

let passed = 0;
const failures = [];

for (const file of readdirSync(folder).filter((name) => name.endsWith(".status"))) {
  const name = file.slice(0, -".status".length);
  const status = Number(readFileSync(join(folder, file), "utf8"));
  const reportFile = join(folder, `${name}.json`);
  const failedBefore = failures.length;
  if (existsSync(reportFile)) countTests(name, JSON.parse(readFileSync(reportFile, "utf8")));
  else if (status === 0 && !name.startsWith("test")) passed += 1;
  // A run that stopped without naming a failed test (a crash, no tests, no report) is itself a failure.
  const named = failures.length > failedBefore;
  if (!named && (status !== 0 || (name.startsWith("test") && !existsSync(reportFile)))) {
    failures.push(`${name} (exit status ${status})`);
  }
}

function countTests(name, report) {
  for (const { name: path, status, message, assertionResults } of report.testResults) {
    // A file that does not load has no tests to fail.
    if (status === "failed" && !assertionResults.some((test) => test.status === "failed")) {
      failures.push(`${name}: ${path}: ${message}`);
    }
    for (const test of assertionResults) {
      if (test.status === "passed") passed += 1;
      // Nothing is skipped here: a test that did not run did not pass.
      else failures.push(`${name}: ${test.fullName} (${test.status})`);
    }
  }
  if (report.testResults.length === 0) failures.push(`${name}: no tests were found`);
}

for (const failure of failures) console.log(`failed: ${failure}`);
console.log(`${passed} passed, ${failures.length} failed`);
process.exitCode = failures.length > 0 || passed === 0 ? 1 : 0;
