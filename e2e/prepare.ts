/** Run before the end-to-end tests: makes sure that a browser is there, or says what to install. */
import { ensureBrowser } from "./browser.ts";

try {
  const path = ensureBrowser((line) => process.stdout.write(`${line}\n`));
  process.stdout.write(`Browser: ${path}\n`);
} catch (problem) {
  process.stderr.write(`${problem instanceof Error ? problem.message : String(problem)}\n`);
  process.exitCode = 1;
}
