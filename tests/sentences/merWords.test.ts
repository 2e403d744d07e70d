/**
 * What a meter shows as MER. On air 28 to 35 dB are usual however clean the field is, a good meter ends at about 40 dB,
 * and FM is not digital, so that it has none: from memory.
 */
import { expect, test } from "vitest";
import { evaluate } from "../../src/evaluate/evaluate.ts";
import { merShown } from "../../src/sentences/merWords.ts";
import type { Service } from "../../src/signal/carrier.ts";
import { draw } from "../draw.ts";

const EVALUATION = evaluate(
  draw(
    {
      aerial: ["aerial-uhf"],
      fm: ["aerial-fm"],
      dish: ["dish"],
      network: ["cable-entry"],
      mod: ["modulator"],
    },
    "",
  ),
);

test.each<{ part: string; service: Service; cniDb: number; shown: string }>([
  { part: "aerial", service: "tv", cniDb: 22, shown: "about" },
  { part: "aerial", service: "tv", cniDb: 36, shown: "lower" },
  { part: "aerial", service: "tv", cniDb: 48, shown: "lower" },
  { part: "network", service: "tv", cniDb: 36, shown: "about" },
  { part: "mod", service: "tv", cniDb: 35, shown: "about" },
  { part: "mod", service: "tv", cniDb: 45, shown: "beyond" },
  { part: "dish", service: "satellite", cniDb: 15, shown: "about" },
  { part: "fm", service: "fm", cniDb: 50, shown: "none" },
])("beside $cniDb dB of $service from $part the MER is: $shown", ({ part, service, cniDb, shown }) => {
  expect(merShown(EVALUATION, { part, service }, cniDb)).toBe(shown);
});
