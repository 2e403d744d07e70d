/**
 * Whose fault it is that a carrier arrives and is lost to noise or to what disturbs it. A tuner of 8 dB noise figure adds
 * 5.310 times the noise of a matched line, which is 3.59 dBµV (290 K, 7.61 MHz, 75 Ω); 64 QAM 2/3 needs 18.7 dB (NorDig
 * Unified 2.2, as quoted in a public table).
 */
import { describe, expect, test } from "vitest";
import { evaluate } from "../../../src/evaluate/evaluate.ts";
import { blameForLostCarrier } from "../../../src/findings/blame/lostCarrier.ts";
import { draw, type Sketch } from "../../draw.ts";
import { aerial } from "./missed.ts";

const lost = { origin: "a", index: 0 };

function blamed(
  parts: Sketch,
  wires: string,
  { inputs = ["in"], to = "noisy" as "noisy" | "disturbed", carrier = lost } = {},
) {
  const evaluation = evaluate(draw({ z: ["receiver-tv"], ...parts }, wires));
  return blameForLostCarrier(evaluation, { receiver: "z", inputs }, carrier, to);
}

const PAD: Sketch = { p: ["attenuator", { lossDb: 20 }], a: aerial(55) };
const WIRES = "a.out > p.in, p.out > z.in";

describe("a carrier lost to noise", () => {
  // Behind the source 1, behind the pad 100, with the tuner 631. Without the pad 1 + 630/100 = 7.3: 19.37 dB better;
  // at a socket, where no tuner adds, it would be 17.01.
  test("is followed with the tuner's own noise", () => {
    const found = blamed(PAD, WIRES);
    expect(found?.spoiler).toEqual({ by: "noise" });
    expect(found?.culprit).toMatchObject({ part: "p", port: "out", does: "attenuates" });
    expect(found?.culprit?.excessDb).toBeCloseTo(19.37, 1);
  });

  // Eight runs of 30 m, each as usual, lose 8·4.374 = 34.99 dB; with the pad 20.0 dBµV arrive: 8.41 dB, of which 10.29
  // are missing, a quarter of it 2.57. Without the pad p of the noise 6.31·p are 6.31 − 1/p less: a pad of 3 dB
  // brings 2.67 dB, one of 2.5 dB 2.21.
  test("is missing what its modulation needs beyond what is there with the tuner", () => {
    const runs = [1, 2, 3, 4, 5, 6, 7, 8].map((n) => `c${n}`);
    const parts = (lossDb: number): Sketch => ({
      p: ["attenuator", { lossDb }],
      ...Object.fromEntries(runs.map((id) => [id, ["cable", { lengthM: 30 }] as const])),
      a: aerial(55 + lossDb),
    });
    const wires = ["a.out", ...runs.flatMap((id) => [`${id}.in`, `${id}.out`]), "p.in"];
    const joined = wires.flatMap((port, n) => (n % 2 === 0 ? [`${port} > ${wires[n + 1]}`] : [])).join(", ");
    const at = (lossDb: number) => blamed(parts(lossDb), `${joined}, p.out > z.in`)?.culprit;
    expect(at(3)).toMatchObject({ part: "p", does: "attenuates" });
    expect(at(2.5)).toMatchObject({ does: "long cable" });
  });

  test("is followed from the first input at which it arrives", () => {
    expect(blamed(PAD, WIRES, { inputs: ["other", "in"] })?.culprit).toMatchObject({ part: "p" });
  });

  test("is followed by nobody where it does not arrive", () => {
    expect(blamed(PAD, WIRES, { inputs: ["other"] })).toBeUndefined();
    expect(blamed(PAD, WIRES, { inputs: [] })).toBeUndefined();
    expect(blamed(PAD, WIRES, { carrier: { origin: "b", index: 0 } })).toBeUndefined();
  });
});

describe("a carrier lost to what disturbs it", () => {
  const joined: Sketch = { j: ["combiner"], b: aerial(55), a: aerial(60) };
  const wires = "a.out > j.in1, b.out > j.in2, j.out > z.in";

  test("is told by that", () => {
    const found = blamed(joined, wires, { to: "disturbed" });
    expect(found?.spoiler).toMatchObject({ by: "foreign", part: "j" });
    expect(found?.culprit).toMatchObject({ part: "j", does: "brings together" });
    expect(found?.culprit?.amount).toBeCloseTo(5, 1);
    expect(blamed(joined, wires)?.spoiler).toEqual({ by: "noise" });
  });

  test("is told of nobody where nothing disturbs", () => {
    expect(blamed(PAD, WIRES, { to: "disturbed" })).toBeUndefined();
  });
});
