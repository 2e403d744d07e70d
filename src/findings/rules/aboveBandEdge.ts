import { isLive } from "../../signal/readout.ts";
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
      return [
        {
          severity: "note" as const,
          parts: [record.part.id],
          wires: wireAt(record, port),
          message: `${partName(record.part.id)} lists ${carriers(above.length, "tv")} above ${BAND_EDGE_MHZ} MHz (${list(names.slice(0, 6))}${names.length > 6 ? " …" : ""}): no transmitter uses them now.`,
          value: above.length,
          limit: 0,
          unit: "channels",
          source: aboveBandEdge.source,
          cure: "Take them out of the aerial's plan, and consider a filter against phone masts.",
        },
      ];
    }),
};
