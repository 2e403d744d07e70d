import { useDraggable } from "@dnd-kit/core";
import { defaultOptions } from "../../../parts/catalogue.ts";
import type { PartKind } from "../../../parts/contract.ts";
import { addKind } from "../../canvas/adding.ts";
import { PartSymbol } from "../../canvas/PartSymbol.tsx";
import styles from "./Tray.module.css";

/** One kind: a button that adds it, and a thing to drag. */
export function TrayItem({ kind }: { readonly kind: PartKind }) {
  const { setNodeRef, listeners, isDragging } = useDraggable({ id: kind.kind });
  return (
    <button
      ref={setNodeRef}
      type="button"
      className={styles.item}
      data-family={kind.family}
      data-dragging={isDragging}
      title={kind.summary}
      {...listeners}
      onClick={() => addKind(kind.kind)}
    >
      <KindFace kind={kind} />
    </button>
  );
}

export function KindFace({ kind }: { readonly kind: PartKind }) {
  return (
    <>
      <PartSymbol name={kind.symbol(defaultOptions(kind))} />
      <span className={styles.name}>{kind.name}</span>
    </>
  );
}
