import { TriangleAlert } from "lucide-react";
import { decimal } from "../../kit/format.ts";
import type { CarrierRow } from "./rows.ts";

/** Names shown before the rest is only counted. */
const NAMED = 12;

/** The carriers that another signal takes or touches, band by band. */
export function Collisions({
  rows,
  onCursor,
}: {
  readonly rows: readonly CarrierRow[];
  readonly onCursor: (key: string) => void;
}) {
  const hit = rows.filter((r) => r.state === "hit" || r.state === "touched");
  if (hit.length === 0) return null;
  const bands = [...new Set(hit.map((r) => r.band))];
  return (
    <section className="collisions" aria-label="Collisions">
      {bands.map((band, i) => {
        const own = hit.filter((r) => r.band === band);
        const lost = own.filter((r) => r.state === "hit").length;
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: the bands of a wire keep their order while it is drawn.
          <div key={i}>
            <p className={lost > 0 ? "state bad" : "state"}>
              <TriangleAlert size={16} aria-hidden />
              {own[0]?.bandName}: {hitWords(own.length, band.level.length, lost)}
            </p>
            <div className="chips">
              {own.slice(0, NAMED).map((r) => (
                <button key={r.key} type="button" className="chip" onClick={() => onCursor(r.key)}>
                  {r.name} <span className="quiet number">C/I {decimal(r.ciDb, 0)} dB</span>
                </button>
              ))}
              {own.length > NAMED ? (
                <span className="quiet small">and {own.length - NAMED} more in the table</span>
              ) : null}
            </div>
          </div>
        );
      })}
    </section>
  );
}

function hitWords(hit: number, of: number, lost: number): string {
  if (of === 1)
    return lost === 1 ? "its only carrier lost to another signal" : "its only carrier hit by another signal";
  const words = `${hit} of ${of} carriers hit by another signal`;
  return lost < hit ? `${words}, ${lost} of them lost` : words;
}
