import type { Meeting } from "../../evaluate/evaluation.ts";
import type { Facts } from "../../sentences/explain/explanation.ts";
import { pictureOf, spotOf } from "../../sentences/explain/picture.ts";
import { plainName } from "../../sentences/explain/plainWords.ts";
import { bandName, list, partName } from "../../sentences/phrases.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** One signal that arrives twice. */
export const echo: SpokenRule = {
  id: "same-signal-twice",
  title: "The same signal by two ways",
  explain:
    "When one signal is split and joined again, the two copies arrive at different times. They cancel at some " +
    "frequencies and add at others; how badly depends on the lengths of cable, which the tool does not work out.",
  source: "common practice, no source",
  check: ({ record }) => {
    const twice = record.meetings.filter((m) => m.echo);
    const first = twice[0];
    if (!first) return [];
    return [
      {
        severity: "warning",
        parts: [record.part.id, first.victim.origin.part],
        wires: first.port.startsWith("#") ? [] : wireAt(record, first.port),
        message: `${bandName(first.victim)} comes into ${partName(record.part.id)} by two ways and meets itself.`,
        source: echo.source,
        port: first.port,
        service: first.victim.origin.service,
        cure: "Take one of the two ways away, or stop it with a filter.",
      },
    ];
  },
  explanation: {
    severities: ["warning"],
    customer: (facts) =>
      `The same signal reaches ${plainName(facts, facts.finding.parts[0])} by two cables and gets in its own way, which can blot out some channels.`,
    trade: (facts) => {
      const { finding } = facts;
      const bands = [...new Set(twiceHere(facts).map((m) => bandName(m.victim)))];
      const here = partName(finding.parts[0] ?? "");
      return (
        `${plural(bands.length, {
          one: `${list(bands)} comes into ${here} by two ways.`,
          other: `${list(bands)} come into ${here} by two ways each.`,
        })} Of two copies d metres of cable apart, one is late by about d/0.25 ns; they cancel every 250/d MHz ` +
        "(velocity 0.83 of light in foam), so 10 m put a notch into the band every 25 MHz. Copies of like level cancel wholly, one 10 dB below makes ripple of about 6 dB. Depth and place depend on lengths and are not computed here."
      );
    },
    measure: ({ finding }) =>
      `Spectrum meter behind ${partName(finding.parts[0] ?? "")}: the level over the band goes up and down like a comb. Unplug one of the two inputs: if the comb turns into a smooth line, the second way is proved.`,
    neighbours: ["loop", "shared-frequencies", "open-end"],
    picture: (facts) => {
      const twice = twiceHere(facts);
      const out = facts.record?.ports.find((p) => p.side === "out" && facts.record?.joined[p.id])?.id;
      const port = facts.finding.at.port?.startsWith("#") ? out : facts.finding.at.port;
      const spot = port === undefined ? null : spotOf(facts, port);
      const marks = twice.map((m) => ({
        kind: "clash" as const,
        fromMHz: m.fromMHz,
        toMHz: m.toMHz,
        label: "twice",
      }));
      return pictureOf(facts, spot, marks.slice(0, 1));
    },
  },
};

function twiceHere({ record }: Facts): readonly Meeting[] {
  return (record?.meetings ?? []).filter((m) => m.echo);
}
