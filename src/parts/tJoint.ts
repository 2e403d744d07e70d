/** The T joint: a line and two others twisted together or on a plain T piece, without anything that parts them. */
import { z } from "zod";
import { joinedLinesDb } from "../rf/mismatch.ts";
import { flat, type Response } from "../signal/response.ts";
import { define } from "./contract.ts";
import { coaxIn, coaxOut } from "./passive.ts";
import { equipmentScreening, screened } from "./screening.ts";

/** The line that comes, and two that go on. */
const LINES = 3;

export const tJoint = define({
  kind: "t-joint",
  family: "join",
  name: "T joint",
  summary:
    "Three cables simply connected: each leg disturbs the other, and an unused one takes whole channels away.",
  keywords: ["T piece", "twisted", "two outlets on one cable", "branch", "stub", "splice", "Y adaptor"],
  prefix: "tee",
  trade: { job: "splitter", price: 2, workMinutes: 10, isRare: true },
  options: z.object({ screening: equipmentScreening("none") }),
  symbol: "t-joint",
  caption: () => "no isolation",
  ports: () => [coaxIn("in"), coaxOut("out1", "out 1", "leg"), coaxOut("out2", "out 2", "leg")],
  joinsLines: true,
  signal: (o, context) => {
    const { deadEnds = {} } = context;
    const { lossDb, returnLossDb } = joinedLinesDb(LINES);
    // Beside a dead leg the other one is no longer one of two: what it gets follows from what the dead one sends back.
    const beside = (leg: string): Response => {
      const dead = deadEnds[leg];
      return dead ? { type: "stub", stub: dead.stub, loss: dead.loss } : flat(-lossDb);
    };
    return screened(context, o, {
      paths: [
        { from: "in", to: "out1", response: beside("out2") },
        { from: "in", to: "out2", response: beside("out1") },
      ],
      // From leg to leg it is no further than from the line to either.
      isolationDb: lossDb,
      returnLossDb,
    });
  },
  power: () => ({
    paths: [
      { from: "out1", to: "in", tone: true },
      { from: "out2", to: "in", tone: true },
    ],
  }),
});
