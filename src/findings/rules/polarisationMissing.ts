import { type Rule, wireAt } from "../rule.ts";
import { count, partName, share } from "../words.ts";

/** One polarisation does not arrive at all. */
export const polarisationMissing: Rule = {
  id: "polarisation-missing",
  title: "One polarisation does not arrive",
  explain:
    "A wideband converter gives vertical and horizontal on two outputs. A receiver that has only one of the two cables, " +
    "or a converter that is not told to switch, gets half of the transponders.",
  source: "common practice, no source",
  check: ({ record, reception }) =>
    (reception?.services ?? []).flatMap(({ service, wanted, got, missing }) =>
      missing
        .filter(
          (m) => m.why === "absent" && /^are (horizontal|vertical) and/.test(m.text) && m.count < wanted,
        )
        .map((m) => ({
          severity: "error" as const,
          parts: [record.part.id],
          wires: record.ports.flatMap((p) => wireAt(record, p.id)),
          message: `${partName(record.part.id)} gets ${share(got, wanted, service)}: ${count(m.count, m.text)}.`,
          value: got,
          limit: wanted,
          unit: "transponders",
          source: polarisationMissing.source,
          cure: "Bring the other polarisation to the receiver as well, by a second cable or through a channel-stacking converter.",
        })),
    ),
};
