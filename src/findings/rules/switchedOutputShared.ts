import type { Facts } from "../../sentences/explain/explanation.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../../sentences/explain/picture.ts";
import { plainNames } from "../../sentences/explain/plainWords.ts";
import { list, partName, round1 } from "../../sentences/phrases.ts";
import type { SwitchState } from "../../signal/control.ts";
import { isLive } from "../../signal/readout.ts";
import { plural } from "../../words/plural.ts";
import { type SpokenRule, wireAt } from "../rule.ts";

/** Two receivers on one switched output. */
export const switchedOutputShared: SpokenRule = {
  id: "switched-output-shared",
  title: "A switched output is shared by two receivers",
  explain:
    "A switched output delivers one of four quadrants at a time: the one that the highest voltage and any tone on the line ask for. " +
    "Two receivers on it fight, and each gets only what the other's request leaves: a quarter of the transponders.",
  source: "13/18 V and 22 kHz control after EN 61319-1; sharing: common practice, no source",
  check: ({ record }) =>
    Object.values(record.switches)
      .filter((s) => s.contested)
      .map((s) => {
        const speakers = [
          ...new Set(s.offers.filter((o) => !o.dormant && o.kind === "commands").map((o) => o.part)),
        ];
        const who = list(speakers.map(partName));
        const output = `the switched output ${portLabel(record.ports, s.port)} of ${partName(record.part.id)}`;
        return {
          severity: "error" as const,
          parts: [record.part.id, ...speakers],
          wires: wireAt(record, s.port),
          message: plural(speakers.length, {
            one: `The inputs of ${who} share ${output}: all of them see only what one asks for (${s.setting ?? "nothing"} now).`,
            other: `${who} share ${output}: all of them see only what one asks for (${s.setting ?? "nothing"} now).`,
          }),
          value: speakers.length,
          limit: 1,
          unit: "receivers",
          source: switchedOutputShared.source,
          port: s.port,
          cure: "Give each receiver an output of its own, or use a channel-stacking converter.",
        };
      }),
  explanation: {
    severities: ["error"],
    customer: (facts) =>
      plural(facts.finding.parts.length - 1, {
        one: `The inputs of ${plainNames(facts, facts.finding.parts.slice(1))} hang on one connection that can serve only one of them at a time, so one decides what the others can see.`,
        other: `${plainNames(facts, facts.finding.parts.slice(1))} hang on one connection that can serve only one of them at a time, so one decides what the others can see.`,
      }),
    trade: (facts) => {
      const state = switchOf(facts);
      const asks = (state?.offers ?? [])
        .filter((o) => !o.dormant && o.kind === "commands")
        .map(
          (o) =>
            `${partName(o.part)} asks for ${o.request?.polarisation ?? ""} ${o.request?.half ?? ""} (${plural(o.volts, { one: (n) => `${n} V arrives`, other: (n) => `${n} V arrive` })}${o.request?.half === "high" ? ", with tone" : ""})`,
        );
      return (
        `${list(asks)}. On a joined line the highest voltage decides the polarisation (above ${round1(state?.thresholdVolts ?? 0)} V is horizontal), and tone from anybody ` +
        `decides the high band: the output stands at ${state?.setting ?? "nothing"}. ${plural(
          facts.finding.value ?? 2,
          {
            one: "Each input reaches all four quadrants only while the others happen to ask for the same",
            other: (n) =>
              `The ${n} receivers each reach all four quadrants only while the others happen to ask for the same`,
          },
        )}; otherwise a quarter of the transponders.`
      );
    },
    measure: ({ finding }) =>
      plural(finding.parts.length - 1, {
        one: `Meter at an input of ${partName(finding.parts[1] ?? "")}: note volts, tone and one transponder of another quadrant (not there). Unplug its other inputs: if volts and tone change and that transponder comes, the line is shared.`,
        other: `Meter at the socket of ${partName(finding.parts[2] ?? "")}: note volts, tone and one transponder of another quadrant (not there). Unplug ${partName(finding.parts[1] ?? "")}: if volts and tone change and that transponder comes, the line is shared.`,
      }),
    neighbours: ["receiver-misses", "user-band-conflict", "too-many-tuners"],
    picture: (facts) => {
      const spot = spotOf(facts);
      if (!spot) return null;
      const marks = markCarriers(
        spectrumAt(facts, spot),
        (band, i) => band.origin.service === "satellite" && band.selected && isLive(band, i),
        { kind: "stretch", label: `now: ${switchOf(facts)?.setting ?? "nothing"}` },
      );
      return pictureOf(facts, spot, marks);
    },
  },
};

function switchOf({ finding, record }: Facts): SwitchState | undefined {
  return record?.switches[finding.at.port ?? ""];
}

function portLabel(ports: readonly { id: string; label: string }[], id: string): string {
  const label = ports.find((p) => p.id === id)?.label;
  return label ? `“${label}”` : "";
}
