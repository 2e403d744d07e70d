/** Some checks lean on a program or on data that a machine may lack; then they are skipped, but never silently. */

/** Says in a frame on the error stream what is not being checked, and how to have it checked. */
export function sayMissing(options: { what: string; unchecked: string; install: string }): void {
  const lines = [
    `${options.what} is missing: ${options.unchecked} NOT checked in this run.`,
    `To have it checked: ${options.install}`,
  ];
  const rule = "!".repeat(Math.max(...lines.map((line) => line.length)) + 4);
  process.stderr.write(`\n${rule}\n${lines.map((line) => `! ${line}`).join("\n")}\n${rule}\n\n`);
}
