/** The position that a receiver asks its switch for. */
import type { PartRecord } from "../../evaluate/evaluation.ts";
import { optionsMeaning } from "../../parts/meanings.ts";
import type { Meaning } from "../../parts/optionTrade.ts";
import { type PositionCommand, positionAsked } from "../../signal/control.ts";
import type { Idea } from "../candidate.ts";
import { set } from "./mend.ts";
import { missingTrunks } from "./trunks.ts";

/** Sets it in the receiver's menu, to a position where something is connected; the first one first. */
export const askedPosition: Idea = (site, finding) => {
  const receivers =
    finding.rule === "command-lost" && "positions" in finding.facts
      ? [finding.facts.receiver]
      : finding.rule === "not-connected" && finding.facts.kind === "missed"
        ? finding.facts.receivers
        : [];
  const unit = site.evaluation.record(finding.at.part);
  // Several that stand at one empty position miss a lead there.
  const receiver = receivers.length === 1 ? site.evaluation.record(receivers[0] ?? "") : undefined;
  if (!unit || !receiver) return [];
  // An LNB that nothing hangs on was put up to be watched: its leads are missing, and the receiver is set right.
  if (finding.rule === "not-connected" && missingTrunks(site, finding).length > 0) return [];
  const offer = Object.values(unit.switches)
    .flatMap((state) => state.offers)
    .find((o) => o.part === receiver.part.id && [undefined, `${o.part}.${o.port}`].includes(finding.at.band));
  const [{ heeds = "committed" } = {}] = (unit.power.switches ?? []).filter((s) => s.by !== "stack");
  const option = optionsMeaning(receiver.kind, MEANINGS[heeds]).find((key) =>
    asksBy(receiver, key, { port: offer?.port, heeds }),
  );
  if (option === undefined) return [];
  const from = receiver.options[option];
  const value = (position: number) => (heeds === "burst" ? (position === 1 ? "A" : "B") : String(position));
  return inUse(unit).map((to) => set("mend", receiver, { option, from, to: value(to) }));
};

/** Motor commands switched on in the receiver's menu. */
export const motorCommands: Idea = (site, finding) => {
  if (finding.rule !== "motor-line" || finding.facts.kind !== "no commands") return [];
  const receiver = site.evaluation.record(finding.facts.receiver);
  if (!receiver) return [];
  return optionsMeaning(receiver.kind, "motor commands").map((option) =>
    set("mend", receiver, { option, from: receiver.options[option], to: true }),
  );
};

const MEANINGS: Readonly<Record<PositionCommand, Meaning>> = {
  committed: "asked position",
  uncommitted: "asked uncommitted input",
  burst: "asked burst",
};

/** Whether an option decides the position that an input asks for. */
function asksBy(
  { kind, options, power }: PartRecord,
  option: string,
  { port, heeds }: { readonly port: string | undefined; readonly heeds: PositionCommand },
): boolean {
  const asked = (supplies: PartRecord["power"]["supplies"]) =>
    positionAsked(supplies?.find((s) => s.port === port)?.request, heeds);
  return (heeds === "burst" ? ["A", "B"] : ["1", "2"]).some(
    (value) => asked(kind.power({ ...options, [option]: value }).supplies) !== asked(power.supplies),
  );
}

/** Positions of a switch with a lead on them. */
function inUse({ ports, joined }: PartRecord): readonly number[] {
  const inputs = ports.filter((p) => p.side === "in" && p.role !== "terrestrial");
  const positions = inputs.flatMap(({ id, plane }, n) => (joined[id] ? [plane?.position ?? n + 1] : []));
  return [...new Set(positions)];
}
