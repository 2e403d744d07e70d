/** The tables of rules, as the code has them: `npm run tables` writes them (`write.ts`), a test holds them to it. */
import { readFileSync } from "node:fs";
import { DESIGN_RULES, RULES } from "../../src/findings/rules/index.ts";
import { wordsOf } from "../../src/sentences/rules/index.ts";
import { areaOf, citations } from "./citations.ts";

const root = new URL("../../", import.meta.url);
const read = (path: string) => readFileSync(new URL(path, root), "utf8");

export type RuleTable = { readonly path: string; readonly text: string };

export function ruleTables(): readonly RuleTable[] {
  return [
    { path: "tests/spec/RULES.md", text: numberedRules() },
    { path: "src/findings/RULES.md", text: findingRules() },
  ];
}

/** Areas in the order of files, each with what its file says of itself and its rules by number. */
function numberedRules(): string {
  const cited = citations();
  const places = new Map(
    cited.map(({ rule, file }) => [`${areaOf(rule)} ${file}`, { area: areaOf(rule), file }]),
  );
  const sections = [...places.values()].map(({ area, file }) => {
    const says = new Map(cited.filter((c) => areaOf(c.rule) === area).map((c) => [c.rule, c.says]));
    const rules = [...says].sort(([a], [b]) => numberOf(a) - numberOf(b));
    return [
      `## ${area}`,
      `${aboutOf(area, file)} Held by \`${file}\`.`,
      rules.map(([rule, text]) => `- ${rule}: ${text}`).join("\n"),
    ].join("\n\n");
  });
  return page("Numbered rules of the tests", sections);
}

const numberOf = (rule: string) => Number(/\d+$/.exec(rule)?.[0]);

/** The first sentence of the comment at the head of a test file: "EV: whatever a design holds, it evaluates." */
export function aboutOf(area: string, file: string): string {
  const comment = /^\/\*\*([\s\S]*?)\*\//m.exec(read(file))?.[1]?.replace(/\n? *\* ?/g, " ") ?? "";
  const said = new RegExp(`^\\s*${area}: (.*?[.;])(\\s|$)`).exec(comment)?.[1] ?? "";
  return said === "" ? "" : `${said[0]?.toUpperCase()}${said.slice(1).replace(/;$/, ".")}`;
}

/** Rules of findings in the order in which they are asked, which is that in which findings of equal weight are shown. */
function findingRules(): string {
  const lines = [...RULES, ...DESIGN_RULES].map(({ id }) => {
    const { title, severities } = wordsOf(id);
    return `- \`${id}\`: ${title} (${severities.join(", ")})`;
  });
  return page("Rules of findings", [lines.join("\n")]);
}

function page(title: string, sections: readonly string[]): string {
  return `${[`# ${title}`, "Written by `npm run tables`; change the code instead.", ...sections].join("\n\n")}\n`;
}
