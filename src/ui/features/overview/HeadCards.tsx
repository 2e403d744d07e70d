import { X } from "lucide-react";
import { memo } from "react";
import { wireId } from "../../../design/design.ts";
import { metresOf } from "../../../parts/meanings.ts";
import { CAUSE_HERE } from "../../../sentences/placeWords.ts";
import { useCulpritOf, useRecord } from "../../../store/hooks.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import { openPart } from "../../canvas/reveal.ts";
import { WireStrip } from "../../canvas/WireStrip.tsx";
import { firstWireOf } from "./firstWire.ts";
import styles from "./Overview.module.css";

const HEAD_STRIP = { width: 96, height: 36 } as const;

/** Parts of the head end, each a small card; cables among them are left out. */
export function HeadCards({ parts }: { readonly parts: readonly string[] }) {
  if (parts.length === 0) return null;
  return (
    <ul className={styles.headCards} aria-label="Head end">
      {parts.map((part) => (
        <HeadCard key={part} part={part} />
      ))}
    </ul>
  );
}

const HeadCard = memo(function HeadCard({ part }: { readonly part: string }) {
  const record = useRecord(part);
  const isCulprit = useCulpritOf(part) === "error";
  if (!record || metresOf(record.kind, record.options) !== undefined) return null;
  const wire = firstWireOf(record);
  return (
    <li className={styles.headCard} data-culprit={isCulprit}>
      <button type="button" className={styles.headPress} onClick={() => openPart(part)}>
        <PartSymbol name={record.kind.symbol(record.options)} />
        <span className={styles.headName}>{record.part.label || record.kind.name}</span>
        {isCulprit ? (
          <span className={styles.headMark}>
            <X size={14} strokeWidth={3} aria-hidden />
            <span className="unseen">, {CAUSE_HERE}</span>
          </span>
        ) : null}
      </button>
      {wire ? <WireStrip wire={wireId(wire)} detail="line" {...HEAD_STRIP} /> : null}
    </li>
  );
});
