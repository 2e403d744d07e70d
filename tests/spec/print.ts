/** Prints every numbered rule with the file that holds it: `npx tsx tests/spec/print.ts`. */
import { areaOf, citations } from "./citations.ts";

let file = "";
for (const { rule, says, file: where } of citations()) {
  if (where !== file) {
    file = where;
    process.stdout.write(`\n${areaOf(rule)}  ${file}\n`);
  }
  process.stdout.write(`  ${rule.padEnd(5)} ${says}\n`);
}
