import { test } from "vitest";
import { EXAMPLES } from "../../src/design/examples.ts";
import { RULE_EXAMPLES } from "../../src/sentences/explain/examples.ts";
import { TRADE_CASES } from "../trade/cases.ts";
import { MORE_CASES } from "../trade/moreCases.ts";
import { textsOf } from "./sentences.ts";
import { writeFileSync } from "node:fs";
test("x", { timeout: 600000 }, () => {
  const found = new Map<string, string>();
  const all = [...EXAMPLES.map(e=>e.load()), ...RULE_EXAMPLES.map(e=>e.speaks.load()), ...TRADE_CASES.map(c=>c.design), ...MORE_CASES.map(c=>c.design)];
  for (const d of all) for (const t of textsOf(d)) for (const s of t.words.split(/(?<=[.!?:;]) +(?=[A-Z“])/)) {
    const n = s.split(/\s+/).filter(w=>/[\p{L}\p{N}]/u.test(w)).length;
    if (n > 25) { const k = t.of + " " + s.replace(/[\d.,]+/g,"#").replace(/“[^”]*”/g,"“”").slice(0,60); if (!found.has(k)) found.set(k, `${n} (${t.of}) ${s}`); }
  }
  writeFileSync("/tmp/looks/long.txt", [...found.values()].sort().join("\n"));
});
