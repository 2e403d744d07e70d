/** The position that a receiver asks its switch for. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { optionsMeaning } from "../../parts/meanings.ts";
import type { Idea } from "../candidate.ts";
import { set } from "./mend.ts";

/** Sets it in the receiver's menu, to a position where something is connected; the first one first. */
export const askedPosition: Idea = (site, finding) => {
  if (finding.rule !== "command-lost" || !("positions" in finding.facts)) return [];
  const unit = site.evaluation.record(finding.at.part);
  const receiver = site.evaluation.record(finding.facts.receiver);
  if (!unit || !receiver) return [];
  const offer = Object.values(unit.switches)
    .flatMap((state) => state.offers)
    .find((o) => `${o.part}.${o.port}` === finding.at.band);
  const option = optionsMeaning(receiver.kind, "asked position").find((key) =>
    asksBy(receiver, key, offer?.port),
  );
  if (option === undefined) return [];
  const from = receiver.options[option];
  return inUse(unit).map((to) => set("mend", receiver, { option, from, to: String(to) }));
};

/** Whether an option decides the position that an input asks for. */
function asksBy({ kind, options, power }: PartRecord, option: string, port: string | undefined): boolean {
  const asked = (supplies: PartRecord["power"]["supplies"]) =>
    supplies?.find((s) => s.port === port)?.request?.position;
  return ["1", "2"].some(
    (value) => asked(kind.power({ ...options, [option]: value }).supplies) !== asked(power.supplies),
  );
}

/** Positions of a switch with a lead on them. */
function inUse({ ports, joined }: PartRecord): readonly number[] {
  const inputs = ports.filter((p) => p.side === "in" && p.role !== "terrestrial");
  const positions = inputs.flatMap(({ id, plane }, n) => (joined[id] ? [plane?.position ?? n + 1] : []));
  return [...new Set(positions)];
}
