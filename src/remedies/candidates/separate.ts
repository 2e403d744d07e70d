/** Cables and plates of their own for the two polarisations of a wideband LNB. */
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import type { DesignDraft } from "../draft.ts";
import { draft } from "../draft.ts";
import { lengthM, type SatelliteInput } from "../site.ts";
import { lnbsOf, takes } from "./converters.ts";
import { type RoomLine, roomLines } from "./stack.ts";

const POLARISATIONS = ["v", "h"] as const;

/** What hangs on the shared cables now goes onto two new ones for each receiver; the old ones keep the aerials. */
export const separateCables: Idea = (site, finding) =>
  lnbsOf(site, finding.parts)
    .filter((lnb) => lnb.kind.trade.gives === "wideband")
    .flatMap((lnb): Candidate[] => {
      const lines = roomLines(site, lnb);
      const receivers = receiversOf(lines);
      if (lines.length === 0 || lines.some((l) => !l.joiner) || receivers.length > 8) return [];
      const { id } = lnb.part;
      return [
        candidate("separate-cables", [id], {}, (design) => {
          const d = draft(design);
          for (const line of lines) freed(d, id, line);
          const outputs = POLARISATIONS.map((p) => sharedOut(d, id, p, receivers.length));
          receivers.forEach((input, i) => {
            lead(
              d,
              input,
              outputs.map((out) => out(i)),
            );
          });
          return d.result();
        }),
      ];
    });

function receiversOf(lines: readonly RoomLine[]): readonly SatelliteInput[] {
  const inputs = lines.flatMap((l) => l.inputs);
  return inputs.filter((a, i) => inputs.findIndex((b) => b.receiver.part.id === a.receiver.part.id) === i);
}

/** The old cable keeps the aerial only, and its receivers let go of it. */
function freed(d: DesignDraft, lnb: string, line: RoomLine): void {
  if (!line.joiner) return;
  d.unjoin([lnb, line.port]);
  d.remove(line.joiner.id);
  d.join(line.joiner.terrestrial, line.start);
  for (const { receiver } of line.inputs)
    for (const port of receiver.ports) d.unjoin([receiver.part.id, port.id]);
}

/** The output itself for one receiver, legs of a splitter for more. */
function sharedOut(
  d: DesignDraft,
  lnb: string,
  port: "v" | "h",
  count: number,
): (i: number) => readonly [string, string] {
  if (count === 1) return () => [lnb, port];
  const [x = 0, y = 0] = d.part(lnb)?.at ?? [];
  const split = d.put("splitter", { ways: count }, [x + 376, y]);
  d.join([lnb, port], [split, "in"]);
  return (i) => [split, `out${i + 1}`];
}

function lead(d: DesignDraft, input: SatelliteInput, from: readonly (readonly [string, string])[]): void {
  const { id, at, label } = input.receiver.part;
  const [x, y] = at;
  if (takes(d.part(id)) !== "wideband") d.swap(id, "receiver-hybrid");
  const plate = d.put(
    "outlet-sat-twin",
    {},
    [x - 376, y],
    `Satellite outlet for ${label || id}`.slice(0, 200),
  );
  const metres = Math.max(1, lengthM(input.feeding.between));
  POLARISATIONS.forEach((p, i) => {
    const out = from[i];
    const cable = d.put("cable", { lengthM: Math.min(500, metres) }, [x - 752, y + i * 96]);
    if (out) d.join(out, [cable, "in"]);
    d.join([cable, "out"], [plate, i === 0 ? "in" : "in2"]);
    d.join([plate, i === 0 ? "sat" : "sat2"], [id, p]);
  });
}

/** The polarisation that a wideband receiver lacks, by a second cable from the other output. */
export const secondCable: Idea = (site, finding) =>
  lnbsOf(site, finding.parts)
    .filter((lnb) => lnb.kind.trade.gives === "wideband")
    .flatMap((lnb) =>
      [...roomLines(site, lnb)].flatMap((line): Candidate[] => {
        const [input] = line.inputs;
        const missing = line.port === "v" ? "h" : "v";
        if (input?.receiver.kind.trade.takes !== "wideband" || input.receiver.joined[missing]) return [];
        const { id, at } = input.receiver.part;
        return [
          candidate("second-cable", [lnb.part.id, id], { receiver: id }, (design) => {
            const d = draft(design);
            const metres = Math.max(1, lengthM(input.feeding.between));
            const cable = d.put("cable", { lengthM: Math.min(500, metres) }, [at[0] - 376, at[1]]);
            const taken = d.other([lnb.part.id, missing]);
            if (taken) {
              d.unjoin([lnb.part.id, missing]);
              const split = d.put("splitter", {}, [at[0] - 752, at[1]]);
              d.join([lnb.part.id, missing], [split, "in"]);
              d.join([split, "out1"], taken);
              d.join([split, "out2"], [cable, "in"]);
            } else d.join([lnb.part.id, missing], [cable, "in"]);
            d.join([cable, "out"], [id, missing]);
            return d.result();
          }),
        ];
      }),
    );
