import { isLive } from "../../signal/readout.ts";
import { plural } from "../../words/plural.ts";
import { markCarriers, pictureOf, spectrumAt, spotOf } from "../explain/picture.ts";
import { plainName } from "../explain/plainWords.ts";
import { type Rule, wireAt } from "../rule.ts";
import { carriers, list, partName } from "../words.ts";

/** Upper edge of terrestrial TV in Europe since the 700 MHz band went to phones [MHz]. */
const BAND_EDGE_MHZ = 694;

/** Channels that no transmitter of today uses. */
export const aboveBandEdge: Rule = {
  id: "above-band-edge",
  title: "Channels above the present band edge",
  explain:
    "TV above 694 MHz (channel 48) was cleared for phones. A plan that still lists such channels is out of date, and phone masts transmit there now.",
  source: "470 to 694 MHz: Decision (EU) 2017/899, from memory",
  check: ({ record }) =>
    Object.entries(record.outputs).flatMap(([port, spectrum]) => {
      const own = spectrum.bands.find((b) => b.origin.part === record.part.id && b.origin.service === "tv");
      if (!own || record.kind.family !== "receive") return [];
      const above = Array.from(own.grid.centre.keys()).filter(
        (i) => isLive(own, i) && (own.grid.centre[i] ?? 0) > BAND_EDGE_MHZ,
      );
      if (above.length === 0) return [];
      const names = above.map((i) => own.grid.plan[own.grid.index[i] ?? 0]?.name ?? "");
      const some = names.length > 6 ? `${names.slice(0, 6).join(", ")} …` : list(names);
      const which = `${partName(record.part.id)} lists ${carriers(above.length, "tv")} above ${BAND_EDGE_MHZ} MHz (${some})`;
      return [
        {
          severity: "note" as const,
          parts: [record.part.id],
          wires: wireAt(record, port),
          message: plural(above.length, {
            one: `${which}: no transmitter uses it now.`,
            other: `${which}: no transmitter uses them now.`,
          }),
          value: above.length,
          limit: 0,
          unit: "channels",
          source: aboveBandEdge.source,
          port,
          service: "tv" as const,
          cure: plural(above.length, {
            one: "Take it out of the aerial's plan, and consider a filter against phone masts.",
            other: "Take them out of the aerial's plan, and consider a filter against phone masts.",
          }),
        },
      ];
    }),
  explanation: {
    severities: ["note"],
    customer: (facts) =>
      plural(facts.finding.value ?? 0, {
        one: `The list of channels of ${plainName(facts, facts.finding.parts[0])} is out of date, since one of them is used by mobile phones today.`,
        other: `The list of channels of ${plainName(facts, facts.finding.parts[0])} is out of date, since some of them are used by mobile phones today.`,
      }),
    trade: ({ finding }) =>
      `The plan of ${partName(finding.parts[0] ?? "")} holds ${carriers(finding.value ?? 0, "tv")} above ${BAND_EDGE_MHZ} MHz, the upper edge of channel 48. Since the bands at 700 and 800 MHz were cleared, phones transmit at 703 to 733 and 832 to 862 MHz and masts at 758 to 821 MHz: ` +
      "with a wideband aerial that is power without use, which drives amplifiers. A new plan and a filter that ends at 694 MHz are the remedy.",
    measure: ({ finding }) =>
      `Spectrum meter at ${partName(finding.parts[0] ?? "")}, from 694 to 862 MHz: no multiplex locks there. Blocks of 10 MHz that come and go are phone masts; if they are as strong as TV, put the filter before the first amplifier.`,
    neighbours: ["overload", "shared-frequencies"],
    picture: (facts) => {
      const spot = spotOf(facts);
      if (!spot) return null;
      const marks = markCarriers(
        spectrumAt(facts, spot),
        (band, i) =>
          band.origin.service === "tv" && isLive(band, i) && (band.grid.centre[i] ?? 0) > BAND_EDGE_MHZ,
        { kind: "wrong", label: "cleared" },
      );
      return pictureOf(facts, spot, marks);
    },
  },
};
