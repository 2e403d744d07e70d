/** What a satellite receiver's menu must say of the LNB or unit that feeds it. */
import { optionsMeaning } from "../../parts/meanings.ts";
import type { Candidate, Idea } from "../candidate.ts";
import { set } from "./mend.ts";

/** The oscillator that the LNB really has, in the receiver's menu or at the unit that is set to another. */
export const menuOscillator: Idea = (site, finding) => {
  if (!("missing" in finding.facts)) return [];
  const { reason } = finding.facts.missing;
  if (reason.kind !== "other oscillator") return [];
  const record = site.evaluation.record(reason.unit ?? finding.at.part);
  if (!record) return [];
  const meaning = reason.unit === undefined ? "menu oscillator" : "unit oscillator";
  return optionsMeaning(record.kind, meaning).flatMap((option): Candidate[] => {
    const from = record.options[option];
    if (Number(from) !== reason.menuMHz) return [];
    // A menu that only knows some values may find the oscillator out by itself.
    return typeof from === "number"
      ? [set("mend", record, { option, from, to: reason.realMHz })]
      : [String(reason.realMHz), "found"].map((to) => set("mend", record, { option, from, to }));
  });
};

/** Messages that the unit obeys. */
export const ownMessages: Idea = (site, finding) => {
  const record = site.evaluation.record(finding.at.part);
  if (!record || !("missing" in finding.facts)) return [];
  const { reason } = finding.facts.missing;
  if (reason.kind !== "other messages") return [];
  const to = reason.knows === "EN 50494" ? "EN 50494" : "EN 50607";
  return optionsMeaning(record.kind, "receiver messages").map((option) =>
    set("mend", record, { option, from: record.options[option], to }),
  );
};
