/** Channel lists of real cable networks, drawn: every entry can be entered at a hand-over point, and is received. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { CABLE_ENTRY } from "../../src/parts/cableEntry.ts";
import { draw } from "../draw.ts";
import { sayMissing } from "./loud.ts";

/** Debian package dtv-scan-tables (LGPL-2.1+), read in place: networks as they were up to 2019. */
const FOLDER = "/usr/share/dvb/dvb-c";

const names = existsSync(FOLDER) ? readdirSync(FOLDER).sort() : [];
if (names.length === 0)
  sayMissing({
    what: "Channel lists of cable networks",
    unchecked: "whether they can be drawn",
    install: "apt-get install dtv-scan-tables",
  });

type Row = { readonly frequencyMHz: number; readonly mode: string };

function readNetwork(name: string): readonly Row[] {
  const text = readFileSync(`${FOLDER}/${name}`, "utf8").replaceAll(/#.*$/gm, "");
  return [...text.matchAll(/FREQUENCY\s*=\s*(\d+)[\s\S]*?MODULATION\s*=\s*QAM\/(\d+)/g)].map(
    ([, hertz, points]) => ({ frequencyMHz: Number(hertz) / 1e6, mode: `dvbc-${points}qam` }),
  );
}

describe.skipIf(names.length === 0)("the channel lists of cable networks", () => {
  // grep -h MODULATION: 447 of 64QAM, 82 of 128QAM, 541 of 256QAM in 59 files.
  test("can all be entered, 1,070 entries in 59 lists", () => {
    const all = names.flatMap(readNetwork);
    expect(names).toHaveLength(59);
    expect(all).toHaveLength(1070);
    const refused = names.filter(
      (name) => !CABLE_ENTRY.options.safeParse({ channels: readNetwork(name) }).success,
    );
    expect(refused).toEqual([]);
  });

  // Behind a house amplifier, a four-way splitter and 20 m of cable: all that the list has.
  test.each(["de-Brandenburg-Havel", "de-Muenchen", "fi-Turku", "hu-Digikabel"])(
    "%s is received whole in a flat",
    (name) => {
      const channels = [...new Map(readNetwork(name).map((row) => [row.frequencyMHz, row])).values()];
      const design = draw(
        {
          network: ["cable-entry", { levelDbuv: 66, channels }],
          amp: ["amp-distribution", { gainDb: 16, outputDbuv: 112, uhfTo: "862" }],
          split: ["splitter", { ways: 4 }],
          drop: ["cable"],
          plate: ["outlet-tv"],
          tv: ["receiver-tv"],
          e2: ["load"],
          e3: ["load"],
          e4: ["load"],
        },
        `network.out > amp.in, amp.out > split.in, split.out1 > drop.in, drop.out > plate.in, plate.tv > tv.in,
         split.out2 > e2.in, split.out3 > e3.in, split.out4 > e4.in`,
      );
      const { verdicts } = report(evaluate(design));
      const [service] = verdicts.find((v) => v.part === "tv")?.services ?? [];
      expect(channels.length).toBeGreaterThan(5);
      expect(service).toMatchObject({ wanted: channels.length, got: channels.length });
    },
  );
});
