/**
 * No code outside `src/parts/` decides anything by the key of a kind: what it needs to know is declared with the kind.
 * A key may stand there only as the kind of a part that is put in. Our own rule; the catalogue holds the keys.
 */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { CATALOGUE } from "../../src/parts/catalogue.ts";

const KEYS: ReadonlySet<string> = new Set(CATALOGUE.map((kind) => kind.kind));

/** Designs written out in code: rule examples are sketches of kinds and wires. */
const DESIGNS = /\/examples\//;

/** Ideas of cures bear names of their own, some of them after what they put in ("dc-block"). */
const IDEAS = /^(?:remedies\/cureStep\.ts|sentences\/cures\/words\/)/;

const FILES = readdirSync("src", { recursive: true, encoding: "utf8" })
  .map((file) => file.replaceAll("\\", "/"))
  .filter(
    (file) => /\.tsx?$/.test(file) && !file.startsWith("parts/") && !DESIGNS.test(file) && !IDEAS.test(file),
  );

/** Jobs and roles are words of the declaration; some are also keys ("splitter", "tap"). */
const DECLARED = /\b(?:job|role|response\.type)\s*[!=]==\s*"[^"]*"/g;

const textOf = (file: string) => readFileSync(`src/${file}`, "utf8").replace(DECLARED, "");

const quotedKeys = (text: string): readonly string[] =>
  [...text.matchAll(/"([a-z][a-z0-9-]*)"/g)].map(([, word = ""]) => word).filter((word) => KEYS.has(word));

/** Files that name kinds, which ones, and why that is no knowledge about them. */
const NAMED: Readonly<Record<string, readonly [keys: string, why: string]>> = {
  "design/feeding/feedingGraph.ts": ["cable equaliser filter load meter", "jobs of the declaration"],
  "evaluate/cell.ts": ["load", "a symbol for the unknown kind"],
  "evaluate/trace.ts": ["cable filter", "shapes of a response and what a step is called"],
  "signal/band.ts": ["filter", "why a carrier is cut"],
  "signal/gain.ts": ["cable", "a shape of a response"],
  "signal/response.ts": ["cable", "a shape of a response"],
  "signal/treat.ts": ["filter", "why a carrier is cut"],
  "sentences/culpritWords.ts": ["combiner splitter", "jobs of the declaration, in words"],
  "remedies/candidates/swapLeads.ts": ["tap", "a role of a port"],
  "remedies/candidates/trunks.ts": ["cable", "put in"],
  "ui/features/training/Meter.tsx": ["meter", "the look of the reading"],
  "remedies/candidates/converters.ts": [
    "lnb-quattro lnb-stacked lnb-universal lnb-wideband receiver-hybrid receiver-sat receiver-sat-twin",
    "put in",
  ],
  "remedies/candidates/ends.ts": ["load", "put in"],
  "remedies/candidates/amplifiers.ts": ["amp-if amp-masthead splitter", "put in"],
  "remedies/candidates/bandCombiner.ts": ["diplexer-combine triplexer-combine", "put in"],
  "remedies/candidates/bandConverter.ts": ["lnb-c-band lnb-ka-band lnb-universal", "put in"],
  "remedies/candidates/bands.ts": ["filter", "put in"],
  "remedies/candidates/joints.ts": ["splitter", "put in"],
  "remedies/candidates/levels.ts": ["attenuator", "put in"],
  "remedies/candidates/noise.ts": ["amp-masthead power-inserter", "put in"],
  "remedies/candidates/phones.ts": ["filter-mobile", "put in"],
  "remedies/candidates/separate.ts": ["cable outlet-sat-twin receiver-hybrid splitter", "put in"],
  "remedies/candidates/share.ts": ["cable lnb-quattro multiswitch outlet-sat-twin", "put in"],
  "remedies/candidates/sharePositions.ts": ["cable", "put in"],
  "remedies/candidates/aerialCable.ts": ["cable outlet-sat outlet-tv splitter", "put in"],
  "remedies/candidates/loopOut.ts": ["cable", "put in"],
  "remedies/candidates/secondLead.ts": ["cable outlet-sat-twin", "put in"],
  "remedies/candidates/secondAerial.ts": ["combiner filter-channel", "put in"],
  "remedies/candidates/unitTrunks.ts": ["amp-if amp-trunks attenuator", "put in"],
  "remedies/secondThought.ts": ["equaliser", "the idea of the same name"],
  "remedies/candidates/shorts.ts": ["dc-block", "put in"],
  "remedies/candidates/slope.ts": ["equaliser", "put in"],
  "remedies/candidates/stack.ts": ["stacking-converter", "put in"],
  "remedies/candidates/supply.ts": ["power-inserter", "put in"],
  "remedies/candidates/userBands.ts": ["receiver-stacked", "put in"],
  "remedies/faults/change.ts": ["cable t-joint", "put in as the fault"],
  "remedies/faults/types/fitted.ts": [
    "attenuator",
    "the plain coupler that sits in the place of what is missing",
  ],
  "remedies/faults/types/leads.ts": ["bad-joint dc-block", "put in as the fault"],
};

describe("a key of the catalogue outside src/parts/", () => {
  test("stands only where the list of these places has it, and the list names no place too many", () => {
    const found = Object.fromEntries(
      FILES.map((file) => [file, [...new Set(quotedKeys(textOf(file)))].sort().join(" ")] as const).filter(
        ([, keys]) => keys !== "",
      ),
    );
    expect(found).toEqual(Object.fromEntries(Object.entries(NAMED).map(([file, [keys]]) => [file, keys])));
  });

  test("is compared with nothing", () => {
    expect(FILES.length).toBeGreaterThan(100);
    expect(
      FILES.flatMap((file) => comparisons(textOf(file), file).map((form) => `${file}: ${form}`)),
    ).toEqual([]);
  });

  test("would be seen in any of the usual forms", () => {
    const forms = [
      'if (record.kind.kind === "amp-masthead") return;',
      'if ("amp-masthead" !== part.kind) return;',
      'case "outlet-quad":',
      '["amp-if"].includes(kind)',
      'kind.startsWith("outlet-")',
      "/^lnb-/.test(record.kind.kind)",
      "/^(filter|load)$/.test(part.kind)",
      '  "lnb-universal": [["lnb-wideband"]],',
    ];
    expect(forms.filter((form) => comparisons(form, "x.ts").length === 0)).toEqual([]);
  });

  test("is still what the list says it is when it is put in", () => {
    const put = ['d.insert("attenuator", { lossDb }, [id, input]);', 'd.swap(id, "lnb-quattro");'];
    expect(put.flatMap((form) => comparisons(form, "x.ts"))).toEqual([]);
  });
});

/** Comparisons with a key, cases and tables of keys, and patterns that are tried on keys. */
function comparisons(text: string, file: string): readonly string[] {
  const compared = [
    ...text.matchAll(/[!=]==?\s*"([a-z0-9-]+)"/g),
    ...text.matchAll(/"([a-z0-9-]+)"\s*[!=]==?/g),
    ...text.matchAll(/\bcase "([a-z0-9-]+)"/g),
    ...text.matchAll(/"([a-z0-9-]+)"\][^;\n]*\.includes\(/g),
    // A key with a hyphen must be quoted in a table; one without could be any property.
    ...text.matchAll(/^\s*"([a-z0-9]+-[a-z0-9-]+)":/gm),
  ]
    .filter(([, word = ""]) => KEYS.has(word) && !(SHAPES[word] ?? []).includes(file))
    .map(([form]) => form);
  const patterns = [
    ...text.matchAll(/\bkind\b\)?\.(?:startsWith|endsWith|match|search)\(/g),
    ...text.matchAll(/\/\.test\([\w.?]*\bkind\b[^.]/g),
  ].map(([form]) => form);
  return [...compared, ...patterns];
}

/** Words that mean a shape of a response there, and no kind. */
const SHAPES: Readonly<Record<string, readonly string[]>> = {
  cable: ["signal/gain.ts", "evaluate/trace.ts"],
};
