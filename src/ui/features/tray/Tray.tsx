/** All kinds of parts, by family, with a search. Drag one onto the canvas or a wire, or press it. */
import { DndContext, DragOverlay, type DragStartEvent } from "@dnd-kit/core";
import { Search, X } from "lucide-react";
import { useState } from "react";
import { CATALOGUE } from "../../../parts/catalogue.ts";
import { FAMILY_NAMES, type Family, type PartKind } from "../../../parts/contract.ts";
import { addKind } from "../../canvas/adding.ts";
import type { Point } from "../../canvas/layout.ts";
import { dropAt, hoverAt } from "./dropping.ts";
import { FAMILIES } from "./families.ts";
import { foundKinds } from "./search.ts";
import styles from "./Tray.module.css";
import { KindFace, TrayItem } from "./TrayItem.tsx";
import { usePointer, useTraySensors } from "./traySensors.ts";

type Props = {
  /** Only the parts of one family; all of them otherwise, with a search. */
  readonly family?: Family | null;
  /** Told while a part is dragged out. */
  readonly onDragging?: (isDragging: boolean) => void;
  /** Told where a part was let go [px in the window]. */
  readonly onDropped?: (at: Point) => void;
};

export function Tray({ family = null, onDragging, onDropped }: Props) {
  const [query, setQuery] = useState("");
  const [dragged, setDragged] = useState<PartKind | null>(null);
  const sensors = useTraySensors();
  const pointer = usePointer();
  const found = foundKinds(query);
  const drag = (kind: PartKind | null) => {
    setDragged(kind);
    onDragging?.(kind !== null);
  };
  return (
    <div className={styles.tray} data-tray>
      {family ? null : (
        <SearchField query={query} onChange={setQuery} onEnter={() => found[0] && addKind(found[0].kind)} />
      )}
      <DndContext
        sensors={sensors}
        onDragStart={(event: DragStartEvent) =>
          drag(CATALOGUE.find((kind) => kind.kind === event.active.id) ?? null)
        }
        onDragMove={() => dragged && hoverAt(dragged, pointer())}
        onDragEnd={() => {
          const at = pointer();
          if (dragged) dropAt(dragged, at);
          if (dragged && at) onDropped?.(at);
          drag(null);
        }}
        onDragCancel={() => {
          hoverAt(null, null);
          drag(null);
        }}
      >
        {family ? (
          <Items kinds={CATALOGUE.filter((k) => k.family === family)} label={FAMILY_NAMES[family]} />
        ) : (
          <Families kinds={found} isSearch={query.trim() !== ""} />
        )}
        <DragOverlay dropAnimation={null} className={styles.ghostLayer ?? ""}>
          {dragged && (
            <div className={styles.ghost}>
              <KindFace kind={dragged} />
            </div>
          )}
        </DragOverlay>
      </DndContext>
    </div>
  );
}

function SearchField(props: {
  readonly query: string;
  readonly onChange: (query: string) => void;
  readonly onEnter: () => void;
}) {
  return (
    <div className={styles.search}>
      <Search size={16} aria-hidden="true" />
      <input
        id="tray-search"
        className="field-input"
        type="search"
        aria-label="Search the parts"
        placeholder="Search the parts"
        value={props.query}
        onChange={(event) => props.onChange(event.target.value)}
        onKeyDown={(event) => {
          if (event.key === "Enter" && props.query.trim() !== "") props.onEnter();
        }}
      />
      {props.query !== "" && (
        <button
          type="button"
          className="button bare icon"
          aria-label="Clear the search"
          onClick={() => props.onChange("")}
        >
          <X size={16} aria-hidden="true" />
        </button>
      )}
    </div>
  );
}

function Families({ kinds, isSearch }: { readonly kinds: readonly PartKind[]; readonly isSearch: boolean }) {
  if (kinds.length === 0) return <p className={`${styles.none} quiet`}>No part matches.</p>;
  // What was searched for comes best match first; otherwise by family, along the way of the signal.
  if (isSearch) return <Items kinds={kinds} label="Parts found" />;
  return FAMILIES.map((family) => (
    <section key={family} className={styles.family} data-family={family}>
      <h3>{FAMILY_NAMES[family]}</h3>
      <Items kinds={kinds.filter((k) => k.family === family)} label={FAMILY_NAMES[family]} />
    </section>
  ));
}

function Items({ kinds, label }: { readonly kinds: readonly PartKind[]; readonly label: string }) {
  return (
    <ul className={styles.items} aria-label={label}>
      {kinds.map((kind) => (
        <li key={kind.kind}>
          <TrayItem kind={kind} />
        </li>
      ))}
    </ul>
  );
}
