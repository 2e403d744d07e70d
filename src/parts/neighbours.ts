/**
 * What usually hangs on what, likeliest first: the order in which a port offers parts. Common practice, no source.
 * A kind that differs from others of its job says so itself (`leadsTo` of its trade).
 */
import type { PartKind, Port, PortRole } from "./contract.ts";
import type { Job } from "./trade.ts";

const AFTER: Readonly<Record<Job, readonly Job[]>> = {
  aerial: ["amplifier", "cable", "mast amplifier", "combiner", "filter", "switch unit", "splitter"],
  dish: ["converter"],
  "signal source": ["amplifier", "cable", "splitter", "combiner", "filter"],
  "unwanted signal": ["combiner", "cable", "amplifier"],
  converter: ["cable", "combiner", "switch unit", "position switch", "receiver", "plate", "amplifier"],
  "switch unit": ["cable", "plate", "receiver", "combiner"],
  "position switch": ["cable", "receiver", "switch unit", "plate"],
  motor: ["cable", "receiver", "plate"],
  splitter: ["cable", "plate", "receiver", "amplifier", "combiner", "load"],
  tap: ["cable", "plate", "receiver", "tap", "load"],
  combiner: ["cable", "plate", "amplifier", "splitter", "receiver", "switch unit"],
  separator: ["receiver", "cable", "plate", "amplifier"],
  filter: ["amplifier", "cable", "combiner", "plate", "receiver"],
  "mast amplifier": ["cable", "supply", "combiner", "splitter"],
  amplifier: ["cable", "combiner", "splitter", "switch unit", "plate", "tap", "receiver"],
  pad: ["amplifier", "cable", "combiner", "plate", "receiver"],
  equaliser: ["amplifier", "cable", "splitter", "plate"],
  supply: ["cable", "splitter", "amplifier", "plate", "receiver"],
  block: ["cable", "plate", "receiver", "splitter"],
  load: [],
  cable: [
    "plate",
    "splitter",
    "receiver",
    "riser plate",
    "tap",
    "amplifier",
    "switch unit",
    "combiner",
    "separator",
    "position switch",
    "supply",
  ],
  joint: ["cable", "plate", "receiver"],
  plate: ["receiver", "separator", "splitter", "cable"],
  "riser plate": ["receiver", "separator", "cable"],
  receiver: [],
  meter: ["cable", "plate", "receiver"],
};

const AFTER_ROLE: Readonly<Partial<Record<PortRole, readonly Job[]>>> = {
  socket: ["receiver", "separator", "splitter", "cable", "load"],
  trunk: ["cable", "riser plate", "tap", "switch unit", "load", "amplifier"],
};

/** Jobs of the parts that usually hang on an output, likeliest first. */
export function usuallyAfter(kind: PartKind, output: Port): readonly Job[] {
  return AFTER_ROLE[output.role] ?? kind.trade.leadsTo ?? AFTER[kind.trade.job];
}
