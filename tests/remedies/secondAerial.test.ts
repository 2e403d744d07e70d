/** One aerial between two transmitters: a second one for the other, with filters that keep the two apart. */
import { expect, test } from "vitest";
import { secondAerial } from "../../src/remedies/candidates/secondAerial.ts";
import { siteOf } from "../../src/remedies/site.ts";
import { draw } from "../draw.ts";

const rows = (transmitter: string, bearingDeg: number, ...channels: number[]) =>
  channels.map((channel) => ({ channel, mode: "dvbt2-256qam-2/3", transmitter, bearingDeg }));

const house = (channels: readonly unknown[]) =>
  draw(
    {
      yagi: [
        "aerial-uhf",
        { levelFrom: "field", aim: "bearing", bearingDeg: 40, fieldDbuvPerM: 62, channels },
      ],
      down: ["cable", { lengthM: 20 }],
      plate: ["outlet-tv"],
      tv: ["receiver-tv"],
    },
    "yagi.out > down.in, down.out > plate.in, plate.tv > tv.in",
  );

test("looks to the other transmitter, and every channel comes in by one aerial only", () => {
  const site = siteOf(house([...rows("North", 40, 22, 25, 28), ...rows("South", 200, 35, 41)]));
  const weak =
    site.report.findings.find((f) => f.rule === "level-limits") ?? expect.fail("nothing is too weak");
  const [one] = secondAerial(site, weak);
  expect(one?.step.facts).toEqual({ bearingDeg: 200, channels: [35, 41] });
  const after = one?.apply(site.design) ?? expect.fail("not made");
  const tv = siteOf(after).report.verdicts.find((v) => v.part === "tv");
  // By the reference pattern what comes from the side or from behind is 16 dB weaker (ITU-R BT.419-3, from memory): two of
  // the five were lost, and now none is.
  expect(site.report.verdicts.find((v) => v.part === "tv")?.services.map((s) => [s.wanted, s.got])).toEqual([
    [5, 3],
  ]);
  expect(tv?.services.map((s) => [s.wanted, s.got])).toEqual([[5, 5]]);
  expect(
    siteOf(after).report.findings.filter((f) => f.rule === "shared-frequencies" && f.severity !== "note"),
  ).toEqual([]);
});

test.each([
  ["all come from one place", rows("North", 40, 22, 25, 28)],
  [
    "the two send on the same channel, which no filter parts",
    [...rows("North", 40, 22), ...rows("South", 200, 22)],
  ],
  ["the two stand so close that one aerial sees both", [...rows("North", 40, 22), ...rows("South", 60, 35)]],
])("is not thought of where %s", (_, channels) => {
  const site = siteOf(house(channels));
  expect(site.report.findings.flatMap((finding) => secondAerial(site, finding))).toEqual([]);
});
