import { PlugZap, RefreshCcwDot, ZapOff } from "lucide-react";
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import { takesCircular } from "../../../sentences/planes.ts";
import { plural } from "../../../words/plural.ts";
import { settingWords } from "../../canvas/bands.ts";

/** Whether it is powered, on a loop, and how its switched outputs stand. */
export function PartStateNote({ record }: { readonly record: PartRecord }) {
  const isCircular = takesCircular(record);
  const needsPower = record.power.load !== undefined;
  const switches = Object.values(record.switches);
  return (
    <>
      {record.looped ? (
        <p className="state bad">
          <RefreshCcwDot size={16} aria-hidden /> On a loop: the signal would feed back, so this part is not
          calculated.
        </p>
      ) : null}
      {needsPower ? (
        <p className={record.powered ? "state ok" : "state bad"}>
          {record.powered ? <PlugZap size={16} aria-hidden /> : <ZapOff size={16} aria-hidden />}
          {record.powered ? "Powered" : "Without power"}
        </p>
      ) : null}
      {switches.map((at) => (
        <p key={at.id} className={at.contested ? "state bad" : "state"}>
          {portLabel(record, at.port)}:{" "}
          {at.setting === null ? "not set by any receiver" : `set to ${settingWords(at.setting, isCircular)}`}
          {at.contested
            ? plural(new Set(at.offers.map((o) => o.part)).size, {
                one: ", contested by the inputs of one receiver",
                other: (n) => `, contested by ${n} receivers`,
              })
            : ""}
        </p>
      ))}
    </>
  );
}

function portLabel(record: PartRecord, id: string): string {
  const label = record.ports.find((p) => p.id === id)?.label ?? id;
  return label.startsWith("out") ? label : `output ${label}`;
}
