import { imDb } from "../../signal/readout.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { becauseOf, culpritCure } from "../culpritWords.ts";
import { pictureOfPlace, tuned, whereOf } from "../explain/place.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { beside, countedCarriers, partName, share } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"intermodulation">;

export const intermodulation: RuleWords<"intermodulation"> = {
  title: "Too many third-order products at a socket",
  explain:
    "Amplifiers that work hard add third-order products, which fall on the channels and look like noise. " +
    "Those of amplifiers behind each other add up: two alike cost 6 dB, ten alike 20 dB. " +
    "They cannot be filtered out afterwards; each amplifier must stay further below its rated output.",
  source: "Spanish Royal Decree 346/2011, Annex I 4.5",
  severities: ["warning"],
  message: (told) => {
    const { at, facts, value = 0, limit = 0 } = told.finding;
    const which = share(facts.failing, facts.of, countedCarriers(facts.worst, at.service));
    const figures = `${beside(value, limit)} dB below; ${numeral(limit)} dB are asked for`;
    const seen = plural(facts.failing, {
      one: `At ${whereOf(told)}, ${which} is disturbed by third-order products, only ${figures}.`,
      other: `At ${whereOf(told)}, ${which} are disturbed by third-order products. The worst lie only ${figures}.`,
    });
    return `${reasonOf(told)}${seen}`;
  },
  cure: ({ finding: { facts } }) => culpritCure(facts.culprit),
  customer: (told) =>
    `${capital(plainName(told, told.finding.at.part))} gets a distorted signal${becauseOf(told)}. It works with less in reserve than it should.`,
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { cascade } = told.evaluation.design.settings ?? {};
    const law = cascade === "by power" ? "by power, 10·log10(n)" : "in step, 20·log10(n)";
    return (
      `${reasonOf(told)}At ${whereOf(told)}, products lie ${numeral(value)} dB below ${tuned(facts.worst)}, ` +
      `${numeral(limit - value)} dB short of the ${numeral(limit)} dB asked for. ` +
      `Products of amplifiers behind each other are added ${law}. Each decibel less at every output makes them two decibels weaker.`
    );
  },
  measure: ({ finding: { facts, value = 0 } }) =>
    `Level meter on a free channel beside ${tuned(facts.worst)}: it shows about ${numeral(value)} dB less than the channel. ` +
    "Proof: put 6 dB of attenuation before the amplifier. The free channel falls by 18 dB, the channel by 6 dB.",
  neighbours: ["overload", "low-carrier-to-noise", "level-limits"],
  picture: (told) =>
    pictureOfPlace(
      told,
      { kind: "noisy", label: `products less than ${numeral(told.finding.limit ?? 0)} dB below` },
      (band, i, limits) => limits.imDb !== undefined && imDb(band, i) < limits.imDb,
    ),
};

/** Whose products they are; empty where they cannot be followed. */
function reasonOf({ finding: { facts, at } }: Here): string {
  const { culprit, amplifiers = 1 } = facts;
  if (!culprit || culprit.part === at.part) return "";
  const name = partName(culprit.part);
  return plural(amplifiers, {
    one: `${name} makes too many products. `,
    other: (n) => `Products of ${n} amplifiers behind each other add up, most of them because of ${name}. `,
  });
}
