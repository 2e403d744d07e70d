import type { LoadShare } from "../../findings/rules/overload.ts";
import type { DeratingRule } from "../../rf/intermod.ts";
import type { Service } from "../../signal/carrier.ts";
import { isLive } from "../../signal/readout.ts";
import { numeral, numeralAsSet } from "../../words/numbers.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { capital, plainName } from "../explain/plainWords.ts";
import { carriers, list, partName } from "../phrases.ts";
import type { RuleWords, Told } from "../ruleWords.ts";
import { screenCure, screenWords } from "../screenWords.ts";
import { outputShown } from "./outputShown.ts";

type Here = Told<"overload">;

/** Products as far below as this are no reproach: TV amplifiers are rated at 60 dB (EN 60728-3, from memory). */
const AMPLE_DB = 60;

export const overload: RuleWords<"overload"> = {
  title: "An amplifier is driven past its rated output",
  explain:
    "The rated output holds for two carriers. With more of them each must be lower, for their products fall on one another. " +
    "Every decibel too much makes the products two decibels worse against the carriers: more gain gives less reception. " +
    "Everything that comes in counts, phone masts too. Far above that the part only limits: beyond 20 dB nothing that comes out can be received.",
  source: `Rated output by two carriers (EN 60728-3, as quoted); derating ${numeral(7.5)}·log10(n − 1) for TV or 10·log10(n/2) for satellite IF, from trade appendices`,
  severities: ["error", "warning"],
  message: (told) => {
    const { facts, value = 0, limit = 0 } = told.finding;
    const name = partName(told.finding.at.part);
    const [level, beyond, below] = [value, value - limit, facts.ratioDb].map((x) => numeral(x));
    const driven = plural(Math.round(facts.carriers), {
      one: `It gives ${level} dBµV for one strong carrier, ${beyond} dB over its limit.`,
      other: (n) => `It gives ${level} dBµV for each of ${n} carriers, ${beyond} dB over its limit.`,
    });
    if (facts.ratioDb < 0)
      return `${name} is overdriven: ${reasonOf(told)}. ${driven} Nothing that comes out can be received.`;
    const which = list(facts.drowned.map((d) => carriers(d.count, d.service)));
    const toll = plural(
      facts.drowned.reduce((sum, d) => sum + d.count, 0),
      {
        zero: facts.ratioDb < AMPLE_DB ? `Its products lie only ${below} dB below the carriers.` : "",
        one: `Its products lie only ${below} dB below the carriers, and ${which} is lost in them.`,
        other: `Its products lie only ${below} dB below the carriers, and ${which} are lost in them.`,
      },
    );
    return `${name} is overdriven: ${reasonOf(told)}. ${driven}${toll === "" ? "" : ` ${toll}`}`;
  },
  cure: (told) => {
    const { facts, parts, at, value = 0, limit = 0 } = told.finding;
    const name = partName(at.part);
    const over = Math.ceil(value - limit);
    const screen =
      facts.because === "foreign" && parts[1] !== undefined
        ? screenCure(told.evaluation, parts[1])
        : undefined;
    if (screen !== undefined) return `${screen}. A filter before ${name} helps too.`;
    if (facts.because === "foreign")
      return facts.load[0]?.service === "mobile"
        ? `Put a filter against phone masts before ${name}.`
        : `Put a filter before ${name} that keeps out what is not wanted.`;
    if (told.record?.ports.some((p) => p.side === "in" && p.medium === "sky"))
      return `Replace ${name} with an LNB of ${numeralAsSet(over)} dB less gain.`;
    const loud = lopsidedBy(facts.load);
    if (facts.because === "gain" && loud)
      return `Put ${numeralAsSet(over)} dB of attenuation behind ${partName(loud.part)}, before the other signals join, or turn ${name} down.`;
    if (facts.because === "gain" && facts.gainDb < over)
      return `Take ${name} out, or put ${numeralAsSet(over)} dB of attenuation before it.`;
    if (facts.because === "gain")
      return `Turn ${name} down by ${numeralAsSet(over)} dB, or put ${numeralAsSet(over)} dB of attenuation before it.`;
    return parts[0] === at.part
      ? `Put ${numeralAsSet(over)} dB of attenuation before ${name}.`
      : `Turn ${partName(parts[0])} down by ${numeralAsSet(over)} dB, or put ${numeralAsSet(over)} dB of attenuation before ${name}.`;
  },
  customer: (told) =>
    `${capital(plainName(told, told.finding.at.part))} gets more signal than it can handle and distorts it, ` +
    `${told.finding.severity === "error" ? "which costs channels" : "which leaves less in reserve"} although there is plenty of signal.`,
  trade: (told) => {
    const { facts, at, value = 0, limit = 0 } = told.finding;
    const n = Math.round(facts.carriers);
    const name = partName(at.part);
    const [level, allowed, over] = [value, limit, value - limit].map((x) => numeral(x));
    const inAll = `${numeral(facts.totalDbuv)} dBµV in all`;
    const off = deratingWords(facts.rule, n);
    const puts = plural(n, {
      one: `${name} puts out one carrier of ${level} dBµV that outweighs the rest, ${inAll}. `,
      other: (count) => `${name} puts out ${count} carriers of ${level} dBµV, ${inAll}. `,
    });
    const rated =
      n > 2
        ? `Its rated output, less ${off} for that many carriers, allows ${allowed} dBµV each: ${over} dB too much. `
        : `Its rated output is meant for two carriers and allows ${allowed} dBµV each: ${over} dB too much. `;
    const makes = facts.load.slice(0, 3).map(shareWords);
    const load = makes.length > 0 ? `Of the load, ${list(makes)}. ` : "";
    if (facts.ratioDb < 0)
      return `${puts}${rated}${load}So far above it only limits, and products outweigh the carriers.`;
    return (
      puts +
      rated +
      load +
      `Third-order products fall on the carriers, now ${numeral(facts.ratioDb)} dB below them, and every further decibel costs two.`
    );
  },
  measure: ({ finding: { at, facts, value = 0 } }) =>
    `Level meter at the output of ${partName(at.part)}: about ${numeral(value)} dBµV on the strong carriers, and free channels between them lie only ` +
    `${numeral(Math.max(0, facts.ratioDb))} dB lower. Proof: put 6 dB of attenuation before the input. The level falls by 6 dB, but the MER rises.`,
  neighbours: ["level-limits", "low-carrier-to-noise", "receiver-misses"],
  picture: (told) => {
    const { at, limit } = told.finding;
    const port = outputShown(told.record, at.port);
    const spot = port === undefined ? null : spotOf(told, port);
    if (!spot) return null;
    const marks = markCarriers(
      spectrumAt(told, spot),
      (band, i) => isLive(band, i) && (band.level[i] ?? 0) > (limit ?? 0),
      {
        kind: "strong",
        label: `${numeral(limit ?? 0)} dBµV allowed`,
        ...(limit === undefined ? {} : { levelDbuv: limit }),
      },
    );
    return pictureOf(told, spot, marks);
  },
};

function deratingWords(rule: DeratingRule, n: number): string {
  switch (rule) {
    case "beats":
      return `${numeral(7.5)}·log10(${n} − 1)`;
    case "channels":
      return `10·log10(${n} − 1)`;
    case "power":
      return `10·log10(${n}/2)`;
  }
}

/** One service that makes nearly all of the load beside others, which a lower gain would only take down with it. */
function lopsidedBy(load: readonly LoadShare[]): LoadShare | undefined {
  const [first] = load;
  return first && first.share >= MOST_OF_IT && load.some((l) => l.service !== first.service)
    ? first
    : undefined;
}

/** A choice of this tool: the others lie 10 dB below in all. */
const MOST_OF_IT = 0.9;

/** Why: what makes up the load, or that it amplifies or gets too much. */
function reasonOf({ finding: { facts, parts, at }, evaluation }: Here): string {
  const [first] = facts.load;
  if (facts.because === "foreign" && first) {
    const foreign = facts.load.filter((l) => l.service === first.service);
    const load = `${SENDERS[first.service]} make ${percent(foreign.reduce((sum, l) => sum + l.share, 0))} of its load`;
    const [, sender] = parts;
    const screen = sender === undefined ? undefined : screenWords(evaluation, sender);
    return sender === undefined || screen === undefined
      ? load
      : `${load} and come in at ${partName(sender)}, ${screen}`;
  }
  const loud = lopsidedBy(facts.load);
  if (facts.because === "gain" && loud)
    return `${SENDERS[loud.service]} from ${partName(loud.part)} make ${percent(loud.share)} of its load`;
  if (facts.because === "gain") return `it amplifies by ${numeral(facts.gainDb)} dB, which is too much here`;
  const sender = parts.find((part) => part !== at.part);
  return sender === undefined ? "too much comes in" : `too much comes in from ${partName(sender)}`;
}

const SENDERS: Readonly<Record<Service, string>> = {
  tv: "TV channels",
  dab: "DAB blocks",
  fm: "FM stations",
  satellite: "satellite transponders",
  distant: "distant transmitters",
  mobile: "phone masts",
  cordless: "cordless phones",
};

function shareWords({ service, part, share }: LoadShare): string {
  return `${SENDERS[service]} from ${partName(part)} make ${percent(share)}`;
}

/** "99 %": a whole number, and 100 only where nothing else is there. */
function percent(share: number): string {
  const whole = Math.round(share * 100);
  return `${share < 1 ? Math.min(99, Math.max(1, whole)) : whole} %`;
}
