/**
 * Dead ends of cable on a joint. Notches: transmission line theory, c = 299.792 m·MHz; open at odd multiples of c·VF/(4·L), shorted
 * at multiples of c·VF/(2·L). Velocity factor of the foam cable 0.82.
 */
import { describe, expect, test } from "vitest";
import { draw, type Sketch } from "../../draw.ts";
import { backwards, foundBy } from "./foundBy.ts";

const CHANNELS = [{ channel: 26 }, { channel: 27 }, { channel: 28 }, { channel: 30 }];

const joined = (more: Sketch, wires: string) =>
  draw(
    {
      a: ["aerial-uhf", { levelDbuv: 70, channels: CHANNELS }],
      t: ["t-joint"],
      k: ["cable", { lengthM: 10 }],
      z: ["receiver-tv"],
      ...more,
    },
    `a.out > t.in, t.out1 > k.in, k.out > z.in, ${wires}`,
  );

describe("a dead end on a T joint", () => {
  // c·0.82/(4·3 m) = 20.486 MHz, 25 times: 512.1 MHz; every 40.97 MHz. Channel 26 is centred on 514 MHz, 27 on 522 MHz, 28 on 530 MHz,
  // 30 on 546 MHz, where 3 m look open again nearly (26.65 quarters).
  const dead = joined({ d: ["cable", { lengthM: 3 }] }, "t.out2 > d.in");

  test("is told with the channels that it takes and its notch", () => {
    const [found, ...more] = foundBy("dead-stub", dead);
    expect(more).toEqual([]);
    expect(found).toMatchObject({ severity: "warning", at: { part: "t", port: "out2" }, parts: ["t", "d"] });
    expect(found?.facts).toMatchObject({ end: "open", lengthM: 3, hit: [{ service: "tv", name: "C26" }] });
    expect(found?.facts.notchMHz).toBeCloseTo(512.1, 1);
    expect(found?.facts.periodMHz).toBeCloseTo(40.97, 2);
    expect(foundBy("dead-stub", backwards(dead))).toMatchObject([{ parts: ["t", "d"] }]);
  });

  test("is not told once more as an open end", () => {
    expect(foundBy("not-connected", dead)).toEqual([]);
    // 0.2 m hit none of these channels: nobody suffers, so its open end is a note as any other.
    const harmless = joined({ d: ["cable", { lengthM: 0.2 }] }, "t.out2 > d.in");
    expect(foundBy("dead-stub", harmless)).toEqual([]);
    expect(foundBy("not-connected", harmless)).toMatchObject([{ severity: "note", parts: ["d"] }]);
  });

  // Shorted: multiples of 40.97 MHz, 13 times: 532.6; 12 times: 491.7. 28 lies from 526 to 534 MHz.
  test("stops other channels where it is shorted", () => {
    const [found] = foundBy(
      "dead-stub",
      joined(
        { d: ["cable", { lengthM: 3 }], s: ["bad-joint", { fault: "shorted" }], f: ["receiver-tv"] },
        "t.out2 > d.in, d.out > s.in, s.out > f.in",
      ),
    );
    expect(found?.facts.end).toBe("shorted");
    expect(found?.facts.notchMHz).toBeCloseTo(532.6, 1);
  });

  test("is none where the leg is in use or terminated", () => {
    const leg: Sketch = { d: ["cable", { lengthM: 3 }] };
    expect(foundBy("dead-stub", joined({ ...leg, e: ["load"] }, "t.out2 > d.in, d.out > e.in"))).toEqual([]);
    expect(
      foundBy("dead-stub", joined({ ...leg, e: ["receiver-tv"] }, "t.out2 > d.in, d.out > e.in")),
    ).toEqual([]);
  });

  test("counts up to the empty socket of a plate", () => {
    const parts: Sketch = { d: ["cable", { lengthM: 3 }], p: ["outlet-tv", { lossDb: 0 }] };
    const [found] = foundBy("dead-stub", joined(parts, "t.out2 > d.in, d.out > p.in"));
    expect(found?.parts).toEqual(["t", "d", "p"]);
  });

  // c·0.82/(4·2.2 m) = 27.94 MHz: notches at 17 and 19 times, 474.9 and 530.8 MHz. Channel 23 (490 MHz) lies 15 MHz beside the first, and
  // 474.9/490 = 0.97: with 3 % less of cable it lies in it. A lossless open stub lets 4δ²/(1 + 4δ²) of the power by, δ = (π/2)·Δf/28.8
  // beside its notch (from 4/(4 + tan²θ)); over ±3.8 MHz, 2δ up to 0.414, the mean is 1 − arctan(0.414)/0.414 = 0.052, 12.8 dB.
  // A joint of three lines loses 20·log10(3/2) = 3.5 dB anyway: 9.3 dB, a little less for the loss of the stub.
  test("is told as a possible one where a notch lies right beside a channel", () => {
    const one = joined(
      { d: ["cable", { lengthM: 2.2 }], a: ["aerial-uhf", { levelDbuv: 70, channels: [{ channel: 23 }] }] },
      "t.out2 > d.in",
    );
    const [found] = foundBy("dead-stub", one);
    expect(found).toMatchObject({ severity: "warning", parts: ["t", "d"], facts: { isPossible: true } });
    expect(found?.facts.hit).toMatchObject([{ name: "C23" }]);
    expect(found?.value).toBeGreaterThan(8.8);
    expect(found?.value).toBeLessThan(9.6);
  });

  // 100 m lose 14 dB each way: nothing comes back that three decibels could be lost by.
  test("is no matter where the cable is so long that it swallows what comes back", () => {
    expect(foundBy("dead-stub", joined({ d: ["cable", { lengthM: 100 }] }, "t.out2 > d.in"))).toEqual([]);
  });
});

test("on a splitter the legs are apart", () => {
  const design = draw(
    {
      a: ["aerial-uhf", { channels: CHANNELS }],
      t: ["splitter"],
      d: ["cable", { lengthM: 3 }],
      z: ["receiver-tv"],
    },
    "a.out > t.in, t.out1 > z.in, t.out2 > d.in",
  );
  expect(foundBy("dead-stub", design)).toEqual([]);
});
