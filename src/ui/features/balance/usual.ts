import type { Evaluation } from "../../../evaluate/evaluation.ts";
import type { Profile } from "../../../findings/limits.ts";
import { levelsOf } from "../../../remedies/balance/aim.ts";
import { WANTED_SERVICES } from "../../../signal/carrier.ts";

type Service = (typeof WANTED_SERVICES)[number];

/** Services that some outlet, or without outlets some receiver, gets. */
export function servicesDelivered(evaluation: Evaluation): readonly Service[] {
  // Levels need no report: the site is asked for its design and its records only.
  const site = { design: evaluation.design, evaluation, report: { causes: [], findings: [], verdicts: [] } };
  return WANTED_SERVICES.filter((service) => levelsOf(site, service).length > 0);
}

/** Usual aim where the limits say nothing of a service [dBµV]; common practice, no source. */
const WITHOUT_LIMITS_DBUV = 60;

/** Half-way between the limits [dBµV], where the margin is the same either way. */
export function middleOf(profile: Profile, service: Service): number {
  const rows = profile.rows.filter((row) => row.service === service);
  if (rows.length === 0) return WITHOUT_LIMITS_DBUV;
  const least = Math.max(...rows.map((r) => r.minDbuv));
  const most = Math.min(...rows.map((r) => r.maxDbuv));
  return Math.round((least + most) / 2);
}
