import type { PartRecord } from "../../evaluate/evaluation.ts";

/** The output at which a picture is taken; behind an inner stage the first output that is connected. */
export function outputShown(record: PartRecord | undefined, port: string | undefined): string | undefined {
  if (!port?.startsWith("#")) return port;
  return record?.ports.find((p) => p.side === "out" && record.joined[p.id])?.id;
}
