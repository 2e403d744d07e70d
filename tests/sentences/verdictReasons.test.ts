/** A receiver that misses carriers for several reasons: all of them are said. Who is to blame is common practice, no source. */
import { expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { report } from "../../src/findings/report.ts";
import { verdictSentence } from "../../src/sentences/verdict.ts";
import { draw } from "../draw.ts";

/** Two dishes on a position switch: the LNB of the first behind a DC block, the second dish 12 dB off its satellite. */
const EVALUATION = evaluate(
  draw(
    {
      rx: ["receiver-sat", { position: "1" }],
      ps: ["position-switch"],
      blk: ["dc-block"],
      l1: ["lnb-universal"],
      d1: ["dish"],
      l2: ["lnb-universal"],
      d2: ["dish", { orbitalPositionDegE: 28, pointingLossDb: 12 }],
    },
    "d1.sky > l1.sky, l1.out > blk.in, blk.out > ps.in1, d2.sky > l2.sky, l2.out > ps.in2, ps.out > rx.sat",
  ),
);
const REPORT = report(EVALUATION);

test("both reasons are said, what lets nothing arrive before what is too weak", () => {
  const verdict = REPORT.verdicts.find((v) => v.part === "rx");
  if (!verdict) throw new Error("no verdict");
  expect(verdictSentence(verdict, EVALUATION)).toMatch(
    /^Gets none of 160 satellite transponders\. 80 are lost at “.*”, which has no supply\. 80 are too weak or too noisy\.$/,
  );
});

// The dead LNB stands beside the way from the second dish: it takes nothing from that.
test("and each is a cause of its own", () => {
  expect(REPORT.causes.map(({ root }) => root.parts[0]).sort()).toEqual(["blk", "d2"]);
});
