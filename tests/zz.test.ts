import { test } from "vitest";
import { TRADE_CASES } from "./trade/cases.ts";
import { evaluate } from "../src/evaluate/evaluate.ts";
import { report } from "../src/findings/report.ts";
import { messageOf } from "../src/sentences/finding.ts";
import { writeFileSync } from "node:fs";
test("look", () => {
  let out = ""; let named = 0;
  for (const c of TRADE_CASES) {
    const e = evaluate(c.design); const r = report(e);
    const causes = r.causes.filter((x) => x.severity !== "note");
    const ok = causes.slice(0, 2).some(({ root }) => c.culprits.includes(root.parts[0]));
    const first = causes[0] && c.culprits.includes(causes[0].root.parts[0]);
    if (ok) named++;
    out += `${ok ? (first ? "1st" : "2nd") : "NO "} ${c.fault} [${c.culprits}] findings ${r.findings.length} causes ${causes.length}\n`;
    for (const x of causes.slice(0, 4)) out += `      ${x.severity} ${x.root.rule} <${x.root.parts.join(",")}> at ${x.root.at.part}${x.root.at.port ? "." + x.root.at.port : ""} (${x.findings.length}: ${x.findings.slice(1).map((f) => f.rule + "@" + f.at.part).join(" ")}) rx ${x.receivers} out ${x.outlets}: ${messageOf(x.root, e)}\n`;
  }
  writeFileSync("/tmp/cz/look.txt", `${named} of ${TRADE_CASES.length}\n` + out);
});
