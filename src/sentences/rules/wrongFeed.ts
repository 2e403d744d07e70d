import type { ReceiverInput } from "../../parts/contract.ts";
import { numeral } from "../../words/numbers.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { pictureOfInputs } from "../explain/receiverPicture.ts";
import { list, partName } from "../phrases.ts";
import type { RuleWords } from "../ruleWords.ts";
import { lossCureOf, lossForTrade, lossMessage } from "./receiverLoss.ts";

/** Oscillators of a universal LNB [MHz]. */
const UNIVERSAL = `${numeral(9750)} and ${numeral(10_600)}`;

export const wrongFeed: RuleWords<"wrong-feed"> = {
  title: "A receiver on the wrong kind of feed",
  explain:
    `A universal receiver calculates with oscillators of ${UNIVERSAL} MHz and asks for a quadrant. A wideband receiver expects ` +
    `a whole polarisation on each cable, converted with about ${numeral(10_400)} MHz. An SCR/dSCR receiver tunes through its user band. ` +
    "On another kind of feed it finds nothing where it looks.",
  source: "IF = RF − LO; EN 50494 and EN 50607 for user bands; wideband: common practice, no source",
  severities: ["error"],
  message: lossMessage,
  cure: lossCureOf,
  customer: (told) =>
    `${capital(plainName(told, told.finding.at.part))} and the equipment at the dish do not suit each other, so it does not find its channels.`,
  trade: (told) => {
    const inputs = (told.record?.kind.reception?.(told.record.options).inputs ?? []).filter(
      (i) => i.feed !== "terrestrial",
    );
    const wants = [...new Set(inputs.map((i) => FEED_WORDS[i.feed]))];
    return lossForTrade(
      told,
      `${partName(told.finding.at.part)} expects ${list(wants)}. A transponder at ${numeral(11_778)} MHz lies at 1178 MHz behind an oscillator of ${numeral(10_600)} MHz and at 1378 MHz behind ${numeral(10_400)} MHz. On a single-cable feed it lies on the centre of its user band.`,
    );
  },
  measure: ({ finding }) =>
    `Set a satellite meter at the input of ${partName(finding.at.part)} in turn to a universal, a wideband and an SCR/dSCR LNB. The setting with which it locks tells what kind of feed is there. ` +
    "Power from 300 to 950 MHz on the screen means wideband.",
  neighbours: ["wrong-quadrant", "plane-missing", "receiver-misses", "too-many-tuners"],
  picture: (told) =>
    pictureOfInputs(
      told,
      { kind: "wrong", label: "another kind of feed" },
      (lost) => lost.why === "wrong feed",
    ),
};

const FEED_WORDS: Readonly<Record<ReceiverInput["feed"], string>> = {
  terrestrial: "a terrestrial feed",
  switched: `a switched output with oscillators of ${UNIVERSAL} MHz`,
  wideband: `a whole polarisation on each cable, converted with about ${numeral(10_400)} MHz`,
  stacked: "a user band of its own on a single-cable line",
};
