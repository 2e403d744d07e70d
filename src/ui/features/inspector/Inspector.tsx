import { useApp } from "../../../store/app.ts";
import { useRecord } from "../../../store/hooks.ts";
import { useEscapeToCanvas } from "../../canvas/focusValues.ts";
import { ManyCard } from "./ManyCard.tsx";
import { PartCard } from "./PartCard.tsx";
import { WireCard } from "./WireCard.tsx";
import "./inspector.css";

/** Values and state of whatever is selected: a part, a wire, or several. */
export function Inspector() {
  const { parts, wires } = useApp((s) => s.selection);
  const [part] = parts;
  const [wire] = wires;
  useEscapeToCanvas();
  if (parts.length + wires.length > 1) return <ManyCard parts={parts} wires={wires} />;
  if (part !== undefined) return <OnePart key={part} id={part} />;
  if (wire !== undefined) return <WireCard key={wire} id={wire} />;
  return (
    <div className="empty">
      <h3>Nothing selected</h3>
      <p>Select a part or a wire on the canvas or in the chain to see and change its values.</p>
    </div>
  );
}

function OnePart({ id }: { readonly id: string }) {
  const record = useRecord(id);
  return record ? <PartCard record={record} /> : null;
}
