/** What keeps the supply of a head end from a unit that is fed over the trunks: searched upwards. */
import type { PartId } from "../../design/design.ts";
import type { Evaluation, PartRecord } from "../../evaluate/evaluation.ts";
import { type Setting, settingFor } from "./settings.ts";

export type HeadStop =
  /** A unit above has shut down, because more is drawn than it gives. */
  | {
      readonly why: "overloaded";
      readonly part: PartId;
      readonly milliamps: number;
      readonly limitMa: number;
    }
  | { readonly why: "mains off"; readonly part: PartId; readonly setting: Setting }
  /** `nearest`: what could feed it, with the setting with which it would; or, without one, what passes nothing down. */
  | {
      readonly why: "nothing above feeds";
      readonly part: PartId;
      readonly nearest?: PartId;
      readonly setting?: Setting;
    };

/** Ports of a unit at which it is fed from above; none for whatever is fed from below. */
export function portsFedFromAbove({ power, ports }: PartRecord): readonly string[] {
  const inputs = new Set(ports.filter(({ side }) => side === "in").map(({ id }) => id));
  return (power.load?.ports ?? []).filter((port) => inputs.has(port));
}

/** What a unit without supply lacks, by the first of its trunks on which anything is found. */
export function headStop(evaluation: Evaluation, record: PartRecord): HeadStop {
  const part = record.part.id;
  let nearest: PartId | undefined;
  for (const port of portsFedFromAbove(record)) {
    let here = record.joined[port];
    for (let guard = evaluation.records.length; here && guard > 0; guard--) {
      const above = evaluation.record(here[0]);
      const output = here[1];
      if (!above || above.looped) break;
      const own = stopAt(above, output, part);
      if (own) return own;
      const way = above.power.paths?.find((path) => path.from === output && path.dropVolts === undefined);
      if (!way) nearest ??= above.part.id;
      here = way && above.joined[way.to];
    }
  }
  return { why: "nothing above feeds", part, ...(nearest === undefined ? {} : { nearest }) };
}

/** A unit that feeds this output, or would by another setting. */
function stopAt(record: PartRecord, output: string, victim: PartId): HeadStop | undefined {
  const part = record.part.id;
  const { supplies = [], selfPowered } = record.power;
  const own = supplies.find(({ port, down }) => down && port === output);
  if (own && record.shutDown.includes(output)) {
    const sharing = supplies.filter(
      ({ shares, port }) => port === output || (shares !== undefined && shares === own.shares),
    );
    const milliamps = sharing.reduce((sum, { port }) => sum + (record.demands[port]?.milliamps ?? 0), 0);
    return { why: "overloaded", part, milliamps, limitMa: own.limitMa };
  }
  if (own) return undefined;
  const tried = settingFor(record, (power) =>
    (power.supplies ?? []).some(({ port, down }) => down && port === output),
  );
  if (!tried) return undefined;
  const setting = { option: tried.option, value: tried.value };
  if (selfPowered !== true && tried.power.selfPowered === true) return { why: "mains off", part, setting };
  return { why: "nothing above feeds", part: victim, nearest: part, setting };
}
