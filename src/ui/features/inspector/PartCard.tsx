import { Copy, Trash2 } from "lucide-react";
import { useRef } from "react";
import type { PartRecord } from "../../../evaluate/evaluation.ts";
import { CAUTIONS } from "../../../parts/cautions.ts";
import { FAMILY_NAMES } from "../../../parts/contract.ts";
import { circularMeta, type FieldMeta, fieldMeta } from "../../../parts/fields.ts";
import { takesCircular } from "../../../sentences/planes.ts";
import { useApp } from "../../../store/app.ts";
import { useFindingsFor, useVerdict } from "../../../store/hooks.ts";
import { PartOptionField } from "../../canvas/PartOptionField.tsx";
import { deleteSelection, duplicateSelection } from "../../canvas/selectionEdits.ts";
import { FailButton } from "../../kit/asked/FailButton.tsx";
import { WalkButtons } from "../../kit/asked/WalkButtons.tsx";
import { IconButton } from "../../kit/IconButton.tsx";
import { SwapPicker } from "../swap/SwapPicker.tsx";
import { SwapSection } from "../swap/SwapSection.tsx";
import { FindingItem } from "../verdict/FindingItem.tsx";
import { ServiceTable } from "../verdict/ServiceTable.tsx";
import { VerdictLine } from "../verdict/VerdictLine.tsx";
import { Jumps } from "./Jumps.tsx";
import { LabelField } from "./LabelField.tsx";
import { MoveButtons } from "./MoveButtons.tsx";
import { PartStateNote } from "./PartStateNote.tsx";
import { PortList } from "./PortList.tsx";
import { ReplacePicker } from "./ReplacePicker.tsx";
import { AerialSection } from "./sections/AerialSection.tsx";
import { DishSection } from "./sections/DishSection.tsx";
import { LoadSection } from "./sections/LoadSection.tsx";
import { SupplySection } from "./sections/SupplySection.tsx";
import { SwitchSection } from "./sections/SwitchSection.tsx";
import { TunerSection } from "./sections/TunerSection.tsx";

/** One part: its values, what arrives at it, and what is wrong with it. */
export function PartCard({ record }: { readonly record: PartRecord }) {
  const { part, kind } = record;
  const findings = useFindingsFor(part.id);
  const verdict = useVerdict(part.id);
  const card = useRef<HTMLDivElement>(null);
  const fields = Object.entries(kind.options.shape).flatMap(([key, schema]) => {
    const meta = fieldMeta(schema);
    return meta ? [{ key, meta }] : [];
  });
  // What a receiver asks for at this moment is tried out over and over, so it stands apart and first.
  const now = fields.filter((f) => kind.reception && f.meta.control === "choice" && !f.meta.advanced);
  const usual = fields.filter((f) => !f.meta.advanced && !now.includes(f));
  const advanced = fields.filter((f) => f.meta.advanced);
  return (
    <div className="inspector" ref={card}>
      <header className="inspector-head">
        <h2 className="kind-line quiet small">
          {FAMILY_NAMES[kind.family]} · {kind.name}
        </h2>
        <LabelField key={part.id} part={part} />
        <p className="quiet small">{kind.summary}</p>
        <PartStateNote record={record} />
        {verdict ? <VerdictLine verdict={verdict} /> : null}
        <div className="button-row">
          <ReplacePicker record={record} />
          <IconButton bordered icon={Copy} name="Duplicate this part" onPress={duplicateSelection} />
          <IconButton bordered icon={Trash2} name="Delete this part" onPress={deleteSelection} />
          <FailButton subject={{ type: "part", id: part.id }} />
          <SwapPicker part={part.id} />
        </div>
        <WalkButtons part={part.id} />
        <Jumps card={card} />
      </header>
      <SwapSection part={part.id} />
      {now.length > 0 ? (
        <section className="asks" aria-label="At this moment">
          <h3>At this moment</h3>
          <FieldGroup record={record} fields={now} />
        </section>
      ) : null}
      {usual.length > 0 ? <FieldGroup record={record} fields={usual} /> : null}
      {advanced.length > 0 ? (
        <details className="more-values">
          <summary>More values</summary>
          <FieldGroup record={record} fields={advanced} />
        </details>
      ) : null}
      {verdict && verdict.services.length > 0 ? (
        <section>
          <h3>What it gets</h3>
          <ServiceTable services={verdict.services} part={part.id} />
        </section>
      ) : null}
      <TunerSection record={record} />
      {findings.length > 0 ? (
        <section>
          <h3>Findings</h3>
          <ul className="finding-list">
            {findings.map((finding) => (
              <FindingItem key={finding.id} finding={finding} />
            ))}
          </ul>
        </section>
      ) : null}
      <DishSection record={record} />
      <AerialSection record={record} />
      <LoadSection record={record} />
      <SwitchSection record={record} />
      <SupplySection record={record} />
      <PortList record={record} />
      <MoveButtons />
      {kind.cautions?.map((caution) => (
        <details key={caution} className="caution">
          <summary>{CAUTIONS[caution].title}</summary>
          {CAUTIONS[caution].sentences.join(" ")}
        </details>
      ))}
    </div>
  );
}

function FieldGroup({
  record,
  fields,
}: {
  readonly record: PartRecord;
  readonly fields: readonly { readonly key: string; readonly meta: FieldMeta }[];
}) {
  const { id } = record.part;
  const isCircular = takesCircular(record);
  // A preview is looked at, not worked on.
  const isPreview = useApp((s) => s.preview !== null);
  return (
    <fieldset className="options" disabled={isPreview}>
      {fields.map(({ key, meta }) => (
        <PartOptionField
          key={`${id} ${key}`}
          part={id}
          option={key}
          meta={isCircular ? circularMeta(meta) : meta}
          value={record.options[key]}
        />
      ))}
    </fieldset>
  );
}
