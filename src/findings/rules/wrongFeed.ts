import type { ReceiverInput } from "../../parts/contract.ts";
import { capital, plainName } from "../../sentences/explain/plainWords.ts";
import { pictureOfInputs } from "../../sentences/explain/receiverPicture.ts";
import { carriers, list, namesOf, partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** A receiver that is given a kind of feed it cannot use. */
export const wrongFeed: SpokenRule = {
  id: "wrong-feed",
  title: "A receiver on the wrong kind of feed",
  explain:
    "A universal receiver works out frequencies with oscillators of 9.75 and 10.6 GHz and asks for a quadrant; a wideband receiver " +
    "expects a whole polarisation on each cable, converted with about 10.4 GHz; a single-cable receiver tunes through its user band. " +
    "On another kind of feed it finds nothing where it looks.",
  source: "IF = RF − LO; EN 50494 and EN 50607 for user bands; wideband: common practice, no source",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, missing }) =>
      missing
        .filter((m) => m.why === "wrong feed")
        .map((m) => ({
          severity: "error" as const,
          parts: [record.part.id],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} cannot use ${carriers(m.count, service)}: ${plural(m.count, { one: m.clause.one("it"), other: m.clause.other("they") })}.`,
          value: m.count,
          limit: 0,
          unit: namesOf(service),
          source: wrongFeed.source,
          service,
          cure: "Use a converter that suits the receiver, or a receiver that suits the converter.",
        })),
    ),
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      `${capital(plainName(facts, facts.finding.parts[0]))} and the equipment at the dish do not suit each other, so it does not find its channels.`,
    trade: (facts) => {
      const { finding, record } = facts;
      const inputs = (record?.kind.reception?.(record.options).inputs ?? []).filter(
        (i) => i.feed !== "terrestrial",
      );
      const wants = [...new Set(inputs.map((i) => FEED_WORDS[i.feed]))];
      return (
        `${partName(finding.parts[0] ?? "")} expects ${list(wants)}. What comes to it was converted otherwise, so ${plural(
          finding.value ?? 0,
          {
            one: (n) =>
              `${n} of its ${finding.unit ?? "transponders"} stands at a frequency where it does not look`,
            other: (n) =>
              `${n} of its ${finding.unit ?? "transponders"} stand at frequencies where it does not look`,
          },
        )}: ` +
        "a transponder at 11 778 MHz lies at 1 178 MHz behind 10.6 GHz, at 1 378 MHz behind 10.4 GHz, and on the centre of whatever user band it was put on."
      );
    },
    measure: (facts) =>
      `Satellite meter at the input of ${partName(facts.finding.parts[0] ?? "")}, set in turn to a universal, a wideband and a single-cable converter: the setting with which it locks tells what kind of feed is there. ` +
      "Power from 300 to 950 MHz on the screen means wideband.",
    neighbours: ["wrong-quadrant", "polarisation-missing", "receiver-misses", "too-many-tuners"],
    picture: (facts) =>
      pictureOfInputs(
        facts,
        { kind: "wrong", label: "another kind of feed" },
        (lost) => lost.why === "wrong feed",
      ),
  },
};

const FEED_WORDS: Readonly<Record<ReceiverInput["feed"], string>> = {
  terrestrial: "a terrestrial feed",
  switched: "a switched output with oscillators of 9.75 and 10.6 GHz",
  wideband: "a whole polarisation on each cable, converted with about 10.4 GHz",
  stacked: "a user band of its own on a single-cable line",
};
