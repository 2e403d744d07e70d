import { Download, RotateCw, Trash2, Undo2 } from "lucide-react";
import { useEffect, useMemo, useRef, useState } from "react";
import type { Design, PartId } from "../../../design/design.ts";
import { removeParts } from "../../../design/edits/remove.ts";
import { type OpeningProblem, useOpening } from "../../../store/opening.ts";
import { counted } from "../../kit/format.ts";
import { downloadDesign, openRest } from "../documents/actions.ts";
import { PlainRow } from "./PlainRow.tsx";
import { plainParts } from "./partWords.ts";

/** So many rows are drawn at first, and more when asked for: thousands at once would hold the page up. */
const PAGE = 100;

const NONE: ReadonlySet<PartId> = new Set();

type Props = { readonly start: Design; readonly before: OpeningProblem };

/** A design without its canvas and without anything worked out: to read, and to be made smaller. */
export function PlainList({ start, before }: Props) {
  // Each deletion lays a smaller design on top; undo takes it off again.
  const [states, setStates] = useState<readonly Design[]>([start]);
  const [chosen, setChosen] = useState<ReadonlySet<PartId>>(NONE);
  const [wish, setWish] = useState("");
  const [count, setCount] = useState(PAGE);
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);

  const design = states.at(-1) ?? start;
  const parts = useMemo(() => plainParts(design), [design]);
  const words = wish.trim().toLowerCase();
  const matching =
    words === "" ? parts : parts.filter((p) => `${p.label} ${p.kind}`.toLowerCase().includes(words));
  const isAllChosen = matching.length > 0 && matching.every((p) => chosen.has(p.id));

  const toggle = (ids: readonly PartId[], isOn: boolean) => {
    const next = new Set(chosen);
    for (const id of ids) isOn ? next.add(id) : next.delete(id);
    setChosen(next);
  };
  const remove = () => {
    const edit = removeParts(design, chosen, NONE);
    if (!edit.ok) return;
    setStates([...states, edit.design]);
    setChosen(NONE);
  };

  return (
    <main className="gate">
      <div className="gate-sheet">
        <h1 ref={heading} tabIndex={-1}>
          “{design.title}” as a list
        </h1>
        <p>
          {counted(design.parts.length, "part")}, {counted(design.wires.length, "wire")}. Nothing is
          calculated here. Delete what you can do without and try again; the stored design stays as it is.
        </p>
        <div className="button-row">
          <button type="button" className="button main" onClick={() => void openRest(design)}>
            <RotateCw size={16} aria-hidden /> Try again
          </button>
          <button type="button" className="button" onClick={() => downloadDesign(design)}>
            <Download size={16} aria-hidden /> Download the file
          </button>
          <button type="button" className="button" onClick={() => useOpening.getState().showProblem(before)}>
            Close the list
          </button>
        </div>
        <div className="plain-tools">
          <label>
            <span className="unseen">Show only parts named</span>
            <input
              className="field-input"
              type="search"
              placeholder="Filter by name or kind"
              value={wish}
              onChange={(event) => {
                setWish(event.target.value);
                setCount(PAGE);
              }}
            />
          </label>
          <label className="plain-check">
            <input
              type="checkbox"
              checked={isAllChosen}
              onChange={() =>
                toggle(
                  matching.map((p) => p.id),
                  !isAllChosen,
                )
              }
            />
            Select all {matching.length}
          </label>
          <button type="button" className="button danger" disabled={chosen.size === 0} onClick={remove}>
            <Trash2 size={16} aria-hidden />{" "}
            {chosen.size === 0 ? "Delete selected" : `Delete ${counted(chosen.size, "part")}`}
          </button>
          <button
            type="button"
            className="button"
            disabled={states.length === 1}
            onClick={() => setStates(states.slice(0, -1))}
          >
            <Undo2 size={16} aria-hidden /> Undo
          </button>
        </div>
        <p className="unseen" role="status">
          {counted(matching.length, "part")} listed, {chosen.size} selected
        </p>
        <ul className="plain-list">
          {matching.slice(0, count).map((part) => (
            <PlainRow
              key={part.id}
              part={part}
              isChosen={chosen.has(part.id)}
              onChoose={(isOn) => toggle([part.id], isOn)}
            />
          ))}
        </ul>
        {matching.length === 0 ? <p className="quiet">No part matches.</p> : null}
        {matching.length > count ? (
          <button type="button" className="button" onClick={() => setCount(count + PAGE)}>
            Show {Math.min(PAGE, matching.length - count)} more of {matching.length}
          </button>
        ) : null}
      </div>
    </main>
  );
}
