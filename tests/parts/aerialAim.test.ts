/** What an aerial makes of the transmitters around it. */
import { describe, expect, test } from "vitest";
import { RECEIVE } from "../../src/parts/receive.ts";
import { kindNamed, runPart } from "./workbench.ts";

const MODE = "dvbt2-256qam-2/3";

/** Level of every carrier that comes out, by its name. */
function levels(kind: string, options: Record<string, unknown>): Record<string, number> {
  const { bands } = runPart({ kind: kindNamed(RECEIVE, kind), options });
  return Object.fromEntries(
    bands("out").flatMap((band) =>
      Array.from(band.level, (level, i) => [band.grid.plan[band.grid.index[i] ?? 0]?.name ?? "", level]),
    ),
  );
}

describe("a UHF aerial that is turned", () => {
  const channels = [
    { channel: 23, mode: MODE, transmitter: "Hill", bearingDeg: 0 },
    { channel: 30, mode: MODE, transmitter: "Dale", bearingDeg: 45, polarisation: "H" },
    { channel: 40, mode: MODE, transmitter: "Far", bearingDeg: 180, wanted: false },
  ];

  // Recommendation ITU-R BT.419-3, Bands IV and V: 0 dB to 20°, 0.4 · (45 − 20) = 10 dB at 45°, 16 dB from 60° on.
  test("takes off each transmitter what the reference pattern of the ITU takes", () => {
    const turned = levels("aerial-uhf", { levelDbuv: 60, aim: "bearing", bearingDeg: 0, channels });
    expect(turned.C23).toBeCloseTo(60, 9);
    expect(turned.C30).toBeCloseTo(50, 9);
    expect(turned.C40).toBeCloseTo(44, 9);
  });

  // BT.419-3: 16 dB combined at all angles; a row that says nothing of polarisation has that of the aerial.
  test("with elements the other way takes 16 dB off whatever says its polarisation", () => {
    const upright = { levelDbuv: 60, aim: "bearing", bearingDeg: 0, polarisation: "V", channels };
    const { C23, C30 } = levels("aerial-uhf", upright);
    expect(C23).toBeCloseTo(60, 9);
    expect(C30).toBeCloseTo(44, 9);
  });

  // A beam of 30° takes 12 · (45 / 30)² = 27 dB at 45°, less than its 30 dB to the back.
  test("with a beam of its own takes the square of the angle, and its front-to-back ratio", () => {
    const beam = { pattern: "beam", beamWidthDeg: 30, frontToBackDb: 30 };
    const { C30, C40 } = levels("aerial-uhf", { levelDbuv: 60, aim: "bearing", ...beam, channels });
    expect(C30).toBeCloseTo(33, 9);
    expect(C40).toBeCloseTo(30, 9);
  });

  test("as listed gives every row its listed level, as before bearings were known", () => {
    const { C23, C30, C40 } = levels("aerial-uhf", { levelDbuv: 60, bearingDeg: 90, channels });
    expect([C23, C30, C40]).toEqual([60, 60, 60]);
  });
});

// Band III: from 27° to 12 dB at 60° (BT.419-3, from memory); at 43.5° half of it. Band II alike (BS.599).
test.each([
  { kind: "aerial-dab", list: "blocks", row: { block: "12A" }, name: "12A" },
  { kind: "aerial-fm", list: "stations", row: { frequencyMHz: 98 }, name: "98.0" },
])("$kind has the pattern of its own band", ({ kind, list, row, name }) => {
  const turned = levels(kind, {
    levelDbuv: 60,
    aim: "bearing",
    bearingDeg: 0,
    [list]: [{ ...row, bearingDeg: 60 }],
  });
  expect(turned[name]).toBeCloseTo(48, 9);
});

describe("the bands of an aerial", () => {
  const bandsOf = (channels: readonly object[], id = "a") =>
    (
      kindNamed(RECEIVE, "aerial-uhf").signal(kindNamed(RECEIVE, "aerial-uhf").options.parse({ channels }), {
        id,
        powered: true,
      }).emits ?? []
    ).flatMap((e) => e.bands);

  test("are one, named after the aerial, where no row names a transmitter", () => {
    const [band, ...more] = bandsOf([{ channel: 23 }, { channel: 30 }]);
    expect(more).toEqual([]);
    expect(band?.origin).toEqual({ key: "a", service: "tv", part: "a" });
  });

  test("of one transmitter have one name in two aerials, and one number for one channel", () => {
    const [one] = bandsOf([{ channel: 30, transmitter: "Hill" }], "a");
    const [two] = bandsOf(
      [
        { channel: 23, transmitter: " hill" },
        { channel: 30, transmitter: "Hill " },
      ],
      "b",
    );
    expect(two?.origin.key).toBe(one?.origin.key);
    expect(Array.from(two?.grid.index ?? [])).toContain(one?.grid.index[0]);
  });

  test("of what nobody wants are a distant transmitter’s", () => {
    const bands = bandsOf([{ channel: 23 }, { channel: 30, wanted: false }]);
    expect(bands.map((b) => [b.origin.service, b.grid.plan[b.grid.index[0] ?? 0]?.name])).toEqual([
      ["tv", "C23"],
      ["distant", "C30"],
    ]);
  });
});
