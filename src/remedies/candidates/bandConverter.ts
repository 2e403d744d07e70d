/** An LNB for the band that the satellite sends in, in the place of one for another band or for a part of it. */
import { defaultOptions, kindOf } from "../../parts/catalogue.ts";
import { optionMeaning } from "../../parts/meanings.ts";
import type { SatelliteBand } from "../../parts/planSatellite.ts";
import { type Candidate, candidate, type Idea } from "../candidate.ts";
import { draft } from "../draft.ts";

const LNB_FOR: Readonly<Record<SatelliteBand, string>> = {
  C: "lnb-c-band",
  Ku: "lnb-universal",
  Ka: "lnb-ka-band",
};

/** Options of an LNB of one band that say what it takes of the sky. */
const RANGE = ["fromMHz", "toMHz", "loMHz"] as const;

export const bandConverter: Idea = (site, finding): readonly Candidate[] => {
  if (!("missing" in finding.facts)) return [];
  const { reason } = finding.facts.missing;
  if (reason.kind !== "outside its range") return [];
  const { part: id, band } = reason;
  const lnb = site.evaluation.record(id);
  const to = LNB_FOR[band];
  const kind = kindOf(to);
  const key = kind && optionMeaning(kind, "outputs");
  if (!lnb || !kind || key === undefined) return [];
  const now = optionMeaning(lnb.kind, "outputs");
  const outputs = now === undefined ? "1" : String(Math.min(4, Number(lnb.options[now])));
  const turns = Object.values(lnb.inputs).some(({ bands }) => bands.some((b) => b.origin.circular));
  const usual = defaultOptions(kind);
  const range = Object.fromEntries(RANGE.flatMap((each) => (each in usual ? [[each, usual[each]]] : [])));
  const isWider = lnb.kind.kind === to;
  const { fromMHz, toMHz } = range;
  const wider =
    isWider && typeof fromMHz === "number" && typeof toMHz === "number" ? { range: { fromMHz, toMHz } } : {};
  return [
    candidate("band-converter", [id], { band, outputs: Number(outputs), ...wider }, (design) => {
      const d = draft(design);
      if (isWider) d.set(id, range);
      else d.swap(id, to, { [key]: outputs, ...range, feedType: turns ? "circular" : "linear" });
      return d.result();
    }),
  ];
};
