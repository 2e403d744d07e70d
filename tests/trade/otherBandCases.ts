/** Houses with satellites of C band and Ka band: what goes wrong there, and such in which all is well. */
import { c, one, rx, sound, type TradeCase } from "./drawings.ts";

const big = ["dish-c-band"] as const;
const ka = ["dish-ka-band"] as const;
const LINE = "dish.sky > lnb.sky, lnb.out > run.in, run.out > rx.sat";

export const OTHER_BAND_CASES: readonly TradeCase[] = [
  sound("a C band dish with its own LNB", { rx: rx(), run: c(25), lnb: ["lnb-c-band"], dish: big }, LINE),
  one(
    "a universal LNB on a C band dish",
    "lnb",
    { dish: big, lnb: ["lnb-universal"], run: c(25), rx: rx() },
    LINE,
  ),
  one(
    "an LNB for C band on an ordinary dish",
    "lnb",
    { run: c(25), dish: ["dish"], lnb: ["lnb-c-band"], rx: rx() },
    LINE,
  ),
  one(
    "the menu left at the universal LNB for a satellite of C band",
    "rx",
    { dish: big, lnb: ["lnb-c-band"], run: c(25), rx: rx({ menuCBandMHz: 9750 }) },
    LINE,
  ),
  one(
    "a C band dish that is too small",
    "dish",
    { dish: ["dish-c-band", { diameterM: 0.9 }], lnb: ["lnb-c-band"], run: c(25), rx: rx() },
    LINE,
  ),
  one(
    "an LNB that keeps phone masts out, and a transponder below 3.7 GHz",
    "lnb",
    {
      dish: [
        "dish-c-band",
        { transponders: [3_550, 3_800, 3_900].map((mhz) => ({ frequencyMHz: mhz, polarisation: "V" })) },
      ],
      lnb: ["lnb-c-band", { fromMHz: 3_700 }],
      run: c(25),
      rx: rx(),
    },
    LINE,
  ),
  one(
    "two receivers on one output of an LNB for C band",
    "split lnb",
    { dish: big, lnb: ["lnb-c-band"], split: ["splitter"], a: rx(), b: rx({ polarisation: "H" }) },
    "dish.sky > lnb.sky, lnb.out > split.in, split.out1 > a.sat, split.out2 > b.sat",
  ),
  sound(
    "C band and Ku band on a position switch",
    {
      rx: rx({ position: "2" }),
      run: c(20),
      sw: ["position-switch"],
      lnb: ["lnb-c-band"],
      ku: ["dish"],
      lnb2: ["lnb-universal"],
      dish: big,
    },
    "dish.sky > lnb.sky, ku.sky > lnb2.sky, lnb2.out > sw.in1, lnb.out > sw.in2, sw.out > run.in, run.out > rx.sat",
  ),
  sound(
    "a twin LNB for C band on VL and HL of a multiswitch, which gives them 13 and 18 V",
    {
      dish: big,
      lnb: ["lnb-c-band", { outputs: "2", gainDb: 55 }],
      ms: ["multiswitch"],
      run: c(20),
      rx: rx({ polarisation: "H" }),
      b: rx(),
    },
    "dish.sky > lnb.sky, lnb.out1 > ms.vl, lnb.out2 > ms.hl, ms.out1 > run.in, run.out > rx.sat, ms.out2 > b.sat",
  ),
  sound("a Ka band dish with its own LNB", { dish: ka, lnb: ["lnb-ka-band"], run: c(25), rx: rx() }, LINE),
  one(
    "an LNB for Ka band with its oscillator above, and a menu for the other sort",
    "rx",
    { dish: ka, lnb: ["lnb-ka-band", { loMHz: 21_200 }], run: c(25), rx: rx() },
    LINE,
  ),
  sound(
    "the same with its own oscillator in the menu",
    { dish: ka, lnb: ["lnb-ka-band", { loMHz: 21_200 }], run: c(25), rx: rx({ menuKaBandMHz: 21_200 }) },
    LINE,
  ),
  one(
    "an LNB for Ka band made for linear waves on a circular satellite",
    "lnb",
    { dish: ka, lnb: ["lnb-ka-band", { feedType: "linear" }], run: c(25), rx: rx() },
    LINE,
  ),
];
