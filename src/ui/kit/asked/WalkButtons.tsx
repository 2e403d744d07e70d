import { Footprints, Zap } from "lucide-react";
import { useApp } from "../../../store/app.ts";
import { supplySource, walkPlacesOf } from "./places.ts";
import { startWalk } from "./walking.ts";

/** At a receiver or an outlet: the ways of its signal and of its supply. */
export function WalkButtons({ part }: { readonly part: string }) {
  const evaluation = useApp((s) => s.evaluation);
  const record = evaluation.record(part);
  const places = record ? walkPlacesOf(record) : [];
  const [first] = places;
  if (!first) return null;
  const supplied = places.find((p) => supplySource(evaluation, p) !== null);
  return (
    <div className="button-row">
      <button type="button" className="button" onClick={() => startWalk(first)}>
        <Footprints size={16} aria-hidden /> Walk the signal
      </button>
      {supplied ? (
        <button type="button" className="button" onClick={() => startWalk(supplied, { view: "supply" })}>
          <Zap size={16} aria-hidden /> Walk the supply
        </button>
      ) : null}
    </div>
  );
}
