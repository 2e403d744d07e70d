/** Why carriers are missing, in clauses that take their subject. */

import type { Evaluation } from "../evaluate/evaluation.ts";
import { loopOutOf } from "../findings/loopOut.ts";
import type { Missing, MissingReason } from "../findings/missing.ts";
import { IF_FROM_MHZ, IF_TO_MHZ } from "../parts/quadrants.ts";
import type { StackStandard } from "../signal/band.ts";
import type { Service } from "../signal/carrier.ts";
import { waveOf } from "../signal/leak.ts";
import { numeral, numeralAsSet } from "../words/numbers.ts";
import { plural } from "../words/plural.ts";
import { besideLimit } from "./figures.ts";
import { type Clause, partName } from "./phrases.ts";
import { portsWords } from "./supplyWords.ts";

/** "17 are stopped by ⟦plate⟧"; of a single carrier "the only one is stopped by …". */
export function missingClause(
  { count, reason, spoiler }: Missing,
  wanted: number,
  evaluation: Evaluation,
  service: Service,
): string {
  const isHiss = service === "fm" && reason.kind === "noisy";
  const isProducts = reason.kind === "disturbed" && spoiler?.by === "products";
  const clause = isHiss
    ? are("lost in hiss")
    : isProducts
      ? are(`lost in the products of ${partName(spoiler.part)}, which is overdriven`)
      : reasonClause(reason, evaluation);
  return count === 1 && wanted === 1 ? clause.one("the only one") : plural(count, clause);
}

/** A clause with a verb that differs between one and several. */
function verb(one: string, other: string, rest: string): Clause {
  return { one: (n) => `${n} ${one} ${rest}`, other: (n) => `${n} ${other} ${rest}` };
}

const are = (rest: string) => verb("is", "are", rest);
const doNot = (rest: string) => verb("does not", "do not", rest);

/** What is said of carriers that are missing for a reason. */
export function reasonClause(reason: MissingReason, evaluation: Evaluation): Clause {
  switch (reason.kind) {
    case "does not arrive":
      return doNot("arrive here");
    case "no source":
      return are("sent by nothing drawn here");
    case "no lead":
      return are("missing because nothing is connected to this input");
    case "open input":
      return are(`missing because ${portName(reason.part, reason.port, evaluation, "in")} is open`);
    case "wrong lead":
      return are(
        `missing because ${portName(reason.part, reason.port, evaluation, "in")} gets the lead of another signal`,
      );
    case "other output":
      return verb(
        "comes",
        "come",
        `out of ${portsWords(evaluation.record(reason.part), reason.outputs)} of ${partName(reason.part)}, not out of ${portLabelOf(reason.part, reason.port, evaluation)}`,
      );
    case "no way through":
      if (loopOutOf(evaluation.record(reason.part)))
        return doNot(`come out of the loop-out of ${partName(reason.part)}`);
      return doNot(`get through ${partName(reason.part)}`);
    case "outside its range":
      return are(
        `outside ${numeralAsSet(reason.fromMHz)} to ${numeralAsSet(reason.toMHz)} MHz, the range of ${partName(reason.part)}`,
      );
    case "no supply":
      return are(`lost at ${partName(reason.part)}, which has no supply`);
    case "loop":
      return are(`lost in the loop at ${partName(reason.part)}`);
    case "open output":
      return doNot(`get further than ${partName(reason.part)}, whose output leads nowhere`);
    case "cut":
      return are(`stopped by ${partName(reason.part)}`);
    case "outside tuning range":
      return are(
        `outside ${numeralAsSet(reason.fromMHz)} to ${numeralAsSet(reason.toMHz)} MHz, where this input tunes`,
      );
    case "no tuner for it":
      return verb("needs", "need", `a ${reason.system} tuner, which this receiver does not have`);
    case "not converted":
      return are("not converted to satellite IF");
    case "switched feed on a wideband input":
      return are("on a switched or quattro feed, but this input needs a wideband one");
    case "wideband feed on a switched input":
      return are("on a wideband feed, which this input cannot tune");
    case "other oscillator":
      return isFarOff(reason)
        ? are(
            `not found: the menu has an oscillator of ${numeralAsSet(reason.menuMHz)} MHz, the LNB one of ${numeralAsSet(reason.realMHz)} MHz`,
          )
        : verb("appears", "appear", shiftWords(reason));
    case "other messages":
      return are(
        `out of reach on user band ${reason.userBand}: ${partName(reason.part)} does not obey ${MESSAGES[reason.sends]} messages there`,
      );
    case "plain feed on a single-cable input":
      return are("not on a user band");
    case "single-cable feed on a plain input":
      return are("on a user band, which this input cannot ask for");
    case "wrong polarisation at the input":
      return are(
        `on the input for ${reason.input}, but polarised ${waveOf({ ...reason, polarisation: reason.arrives })}`,
      );
    case "leads changed":
      return verb("comes", "come", `in by a wrong input of ${partName(reason.part)}`);
    case "no user band set":
      return are("out of reach: no user band is set for the tuner");
    case "no such user band":
      return are(
        `out of reach on user band ${reason.userBand}, which ${partName(reason.part)} does not have`,
      );
    case "other centre":
      return are(
        `out of reach on user band ${reason.userBand}: ${numeral(reason.hereMHz)} MHz here, ${numeral(reason.thereMHz)} MHz at ${partName(reason.part)}`,
      );
    case "user band used twice":
      return are(`retuned by ${partName(reason.by)}, which also uses user band ${reason.userBand}`);
    case "line held":
      return are(`out of reach: ${partName(reason.by)} blocks the line`);
    case "fixed supply":
      return are(`out of reach: a fixed voltage without tone leaves ${partName(reason.part)} where it is`);
    case "no command":
      return are(`out of reach: no command gets from here to ${partName(reason.part)}`);
    case "no message":
      return are(`out of reach: no message gets to ${partName(reason.part)}`);
    case "no tone":
      return verb("needs", "need", `the 22 kHz tone, which does not reach ${partName(reason.part)}`);
    case "too few volts":
      if (reason.volts === 0)
        return verb("needs", "need", `18 V, and the supply of ${partName(reason.part)} then shuts down`);
      return verb(
        "needs",
        "need",
        `18 V, but only ${numeral(reason.volts)} V arrive at ${partName(reason.part)}`,
      );
    case "dies at vertical":
      return verb(
        "needs",
        "need",
        `${besideLimit(reason.volts, reason.leastVolts)[1]} V at ${partName(reason.part)}, but only ${besideLimit(reason.volts, reason.leastVolts)[0]} V of the 13 V arrive`,
      );
    case "set by another":
      return are(`there only when ${partName(reason.by)} asks for the same at ${partName(reason.part)}`);
    case "not handed on":
      return doNot("come out usable");
    case "blocked":
      return are(
        reason.by === "total"
          ? "blocked: all signals together are too strong for the tuner"
          : "blocked by a far stronger signal beside",
      );
    case "disturbed":
      return are("lost to what else is on the same frequencies");
    case "noisy":
      return are("too weak or too noisy");
  }
}

type OtherOscillator = Extract<MissingReason, { readonly kind: "other oscillator" }>;

/** No one shift tells it: by more than the whole satellite IF is wide, or in turned order. */
export function isFarOff({ menuMHz, realMHz, sides }: OtherOscillator): boolean {
  return sides === "either" || Math.abs(menuMHz - realMHz) > IF_TO_MHZ - IF_FROM_MHZ;
}

/** "250 MHz below where it is looked for" */
export function shiftWords({
  menuMHz,
  realMHz,
  sides,
}: Pick<OtherOscillator, "menuMHz" | "realMHz" | "sides">): string {
  const isAbove = menuMHz > realMHz !== (sides === "above");
  return `${numeralAsSet(Math.abs(menuMHz - realMHz))} MHz ${isAbove ? "above" : "below"} where the receiver looks`;
}

/** What messages of a standard are called. */
export const MESSAGES: Readonly<Record<StackStandard, string>> = {
  "EN 50494": "SCR",
  "EN 50607": "dSCR",
  both: "SCR or dSCR",
};

/** "the input HH of ⟦ms⟧" */
export function portName(part: string, port: string, evaluation: Evaluation, side: "in" | "out"): string {
  const several = (evaluation.record(part)?.ports ?? []).filter((p) => p.side === side).length > 1;
  const what = side === "in" ? "input" : "output";
  return several
    ? `the ${what} ${portLabelOf(part, port, evaluation)} of ${partName(part)}`
    : `the ${what} of ${partName(part)}`;
}

/** Label of a port: "HH". */
export function portLabelOf(part: string, port: string, evaluation: Evaluation): string {
  return evaluation.record(part)?.ports.find((p) => p.id === port)?.label ?? port;
}
