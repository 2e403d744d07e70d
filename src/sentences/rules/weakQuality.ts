import type { LeakBy } from "../../findings/blame/leaks.ts";
import { isLeak } from "../../findings/blame/quality.ts";
import { qualityOf } from "../../findings/limits.ts";
import { cnDb, cniDb } from "../../signal/readout.ts";
import { numeral } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { becauseOf, culpritCure, culpritWords } from "../culpritWords.ts";
import { pictureOfPlace, tuned, whereOf } from "../explain/place.ts";
import { capital, plainName, programmes } from "../explain/plainWords.ts";
import { beside, countedCarriers, nameOfBand, partName, share } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";

type Here = Told<"low-carrier-to-noise">;

export const weakQuality: RuleWords<"low-carrier-to-noise"> = {
  title: "C/N or MER at a socket below what it should be",
  explain:
    "A carrier needs a C/N by its modulation to be received at all. Some decibels more keep it received in rain, " +
    "with ageing cables and neighbours' interference. Amplifying a noisy signal amplifies the noise with it.",
  source: "The limits chosen for the design",
  severities: ["warning"],
  message: (told) => {
    const { at, facts, value = 0, limit = 0 } = told.finding;
    const which = share(facts.failing, facts.of, countedCarriers(facts.worst, at.service));
    const figures = `${beside(value, round1Number(limit))} dB and should have ${numeral(limit)} dB`;
    const place = `At ${whereOf(told)}, ${which}`;
    const seen = plural(facts.failing, {
      one: `${place} has too little ${figureName(told)}: it has ${figures}.`,
      other: `${place} have too little ${figureName(told)}; the worst has ${figures}.`,
    });
    return `${reasonWords(told)} ${seen}`.trim();
  },
  cure: ({ finding: { facts } }) =>
    // Another part of less loss is rarely to be had: level before it keeps its loss from costing C/N.
    facts.culprit?.does === "loses"
      ? `Amplify before ${partName(facts.culprit.part)}.`
      : culpritCure(facts.culprit),
  customer: (told) => {
    const { at, facts } = told.finding;
    const { spoiler } = facts;
    const flaw =
      spoiler.by === "noise"
        ? "carries too much noise"
        : spoiler.by === "products"
          ? "is distorted"
          : isLeak(spoiler)
            ? FLAWS[spoiler.by]
            : "is disturbed by another one";
    const means =
      at.service === "fm"
        ? `So ${programmes(at.service, told.evaluation)} hiss, in stereo first.`
        : `In bad weather ${programmes(at.service, told.evaluation)} may break up.`;
    return `The signal at ${plainName(told, at.part)} ${flaw}${becauseOf(told)}. ${means}`;
  },
  trade: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const { worst, spoiler } = facts;
    const head =
      `At ${whereOf(told)}, ${tuned(worst)} has ${facts.figure === "MER" ? "an" : "a"} ${figureName(told)} of ${numeral(value)} dB, ${facts.figure === "C/N" ? "noise alone" : "interference counted in"}. Its level is ${numeral(worst.levelDbuv)} dBµV. ` +
      `The ${figureName(told)} is ${numeral(limit - value)} dB under the ${numeral(limit)} dB asked for. `;
    return `${reasonWords(told)} ${head}${LAWS[spoiler.by]}`.trim();
  },
  measure: (told) => {
    const { facts, value = 0 } = told.finding;
    const { spoiler } = facts;
    const isFm = told.finding.at.service === "fm";
    // FM has no MER; what is heard of it tells as much.
    const figure = isFm ? "C/N" : "MER";
    const head = `Meter at ${whereOf(told)} on ${tuned(facts.worst)}: ${figure} near ${numeral(value)} dB confirms it, if the level is sufficient. `;
    if (spoiler.by === "products")
      return `${head}Proof: with 6 dB of attenuation before the input of ${partName(spoiler.part)} the level falls, but the ${figure} rises.`;
    if (isLeak(spoiler)) return `${head}${PROOFS[spoiler.by](partName(spoiler.part))}`;
    if (spoiler.by === "foreign" && spoiler.signal)
      return `${head}Unplug ${nameOfBand(spoiler.signal)}, or the lead by which it comes in: the ${figure} must rise.`;
    return (
      `${head}Then measure at the aerial${told.finding.at.service === "satellite" ? " or behind the LNB" : ""}. If it is no better there, the source is too weak. ` +
      "If it is better, the way in between adds the noise."
    );
  },
  neighbours: ["level-limits", "shared-frequencies", "overload", "receiver-misses"],
  picture: (told) =>
    pictureOfPlace(
      told,
      { kind: "noisy", label: `${figureName(told)} under ${numeral(told.finding.limit ?? 0)} dB` },
      (band, i, limits) => {
        const { valueDb, limitDb } = qualityOf({ cnDb: cnDb(band, i), cniDb: cniDb(band, i) }, limits);
        return valueDb < limitDb;
      },
    ),
};

/** The trade says C/N whether interference counts or not. */
function figureName({ finding: { facts } }: Here): string {
  return facts.figure === "MER" ? "MER" : "C/N";
}

/** What spoils it and whose fault that is. */
function reasonWords({ finding: { facts } }: Here): string {
  const { spoiler, culprit } = facts;
  if (spoiler.by === "noise") return culprit ? culpritWords(culprit) : "";
  if (isLeak(spoiler)) return culprit ? culpritWords(culprit) : "";
  if (spoiler.by === "products") {
    const products = plural(spoiler.amplifiers, {
      one: `The products of ${partName(spoiler.part)} disturb most: it is overdriven.`,
      other: (n) =>
        `Products of ${n} amplifiers behind each other add up, most of them in ${partName(spoiler.part)}.`,
    });
    return culprit && culprit.part !== spoiler.part ? `${culpritWords(culprit)} ${products}` : products;
  }
  if (!spoiler.signal || spoiler.part === undefined)
    return "Another signal on the same frequencies disturbs most.";
  return capital(`${nameOfBand(spoiler.signal)} disturbs most, from ${partName(spoiler.part)} on.`);
}

const FLAWS: Readonly<Record<LeakBy, string>> = {
  "cross-polarisation": "is mixed with another one of the same satellite",
  crosstalk: "is mixed with another one in a switch",
  neighbours: "is mixed with that of a satellite next to ours",
  rain: "is mixed by the rain with another one of the same satellite",
};

const PROOFS: Readonly<Record<LeakBy, (name: string) => string>> = {
  "cross-polarisation": (name) => `Turn ${name} a little to either side: the MER must change.`,
  crosstalk: (name) => `Unplug the other inputs of ${name}: the MER must rise.`,
  neighbours: (name) =>
    `Swing ${name} a little away from the neighbour: the MER rises before the level falls.`,
  rain: () => "Measure again when it is dry.",
};

const LAWS = {
  "cross-polarisation":
    "A feed turned by δ keeps the other polarisation 20·log10(cot δ) dB down, and its own isolation adds to that.",
  crosstalk: "What leaks from another input counts as noise in every carrier that uses its frequencies.",
  neighbours:
    "A dish hears a neighbour weaker by its gain on the axis less that beside it: 29 − 25·log10(angle) dBi (ITU-R BO.1213).",
  rain: "Drops are flat and fall aslant, so rain turns a part of one polarisation into the other (ITU-R P.618).",

  noise:
    "Noise is set by the first stage and the loss before it (Friis: F = F1 + (F2 − 1)/G1 + …). Gain behind that raises signal and noise alike.",
  products:
    "Third-order products fall on the carriers; each decibel less before the amplifier makes them two decibels weaker.",
  foreign:
    "Interference counts as noise, C/(N+I) = −10·log10(10^(−C/N/10) + 10^(−C/I/10)); no gain behind the place where they meet helps.",
} as const;

function round1Number(x: number): number {
  return Math.round(x * 10) / 10;
}
