import { SILENCE } from "../../signal/band.ts";
import { type Rule, wireAt } from "../rule.ts";
import { bandName, partName } from "../words.ts";

/** A multiswitch input that is not fed with the quadrant it is meant for. */
export const wrongQuadrant: Rule = {
  id: "wrong-quadrant",
  title: "A multiswitch input gets the wrong quadrant",
  explain:
    "Each satellite input of a multiswitch stands for one quadrant and must be fed by that output of a quattro converter. " +
    "Swapped cables, or a converter with switched outputs in its place, put other transponders where the receivers look.",
  source: "common practice, no source",
  check: ({ record }) => {
    const paths = record.kind.signal(record.options, { id: record.part.id, powered: true }).paths ?? [];
    const expected = new Map<string, string>();
    for (const path of paths) {
      const quadrant = /(?:^|:)([VH][LH])$/.exec(path.condition?.setting ?? "")?.[1];
      // A path that converts or picks for itself is no connector meant for one quadrant.
      if (quadrant && !path.loMHz && !path.from.startsWith("#")) expected.set(path.from, quadrant);
    }
    return [...expected].flatMap(([port, quadrant]) => {
      const bands = (record.inputs[port] ?? SILENCE).bands.filter((b) => b.origin.service === "satellite");
      const wrong = bands.find(
        (b) =>
          b.conditions.length > 0 ||
          `${b.origin.polarisation}${b.half?.[0]?.toUpperCase() ?? ""}` !== quadrant,
      );
      if (!wrong) return [];
      const label = record.ports.find((p) => p.id === port)?.label ?? port;
      const what = wrong.conditions.length > 0 ? "a switched output" : bandName(wrong);
      return [
        {
          severity: "error" as const,
          parts: [record.part.id, wrong.origin.part],
          wires: wireAt(record, port),
          message: `Input ${label} of ${partName(record.part.id)} expects ${QUADRANT_WORDS[quadrant] ?? quadrant}, but gets ${what}.`,
          source: wrongQuadrant.source,
          cure: "Join each input to the output of a quattro converter that bears the same name.",
        },
      ];
    });
  },
};

const QUADRANT_WORDS: Readonly<Record<string, string>> = {
  VL: "vertical low",
  VH: "vertical high",
  HL: "horizontal low",
  HH: "horizontal high",
};
