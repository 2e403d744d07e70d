import { X } from "lucide-react";
import { useEffect, useRef } from "react";
import { DEADLINE_MS, type OpeningProgress, useOpening } from "../../../store/opening.ts";
import { numeralAsSet } from "../../../words/numbers.ts";

const STAGES: Readonly<Record<OpeningProgress["stage"], string>> = {
  signals: "Calculating the signals",
  findings: "Judging what arrives",
};

/** How far a design is that takes long, with the way out. */
export function WorkingView({ working }: { readonly working: OpeningProgress }) {
  const { title, parts, stage, done, total, canStop } = working;
  const button = useRef<HTMLButtonElement>(null);
  useEffect(() => button.current?.focus(), []);
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => event.key === "Escape" && useOpening.getState().stop();
    window.addEventListener("keydown", onKey);
    return () => window.removeEventListener("keydown", onKey);
  }, []);
  const reached = Math.min(parts, Math.floor((done / Math.max(1, total)) * parts));
  return (
    <main className="gate">
      <div className="gate-sheet gate-working">
        <h1>Opening “{title}”</h1>
        <p role="status">{STAGES[stage]}</p>
        <progress
          max={Math.max(1, parts)}
          value={reached}
          aria-label={STAGES[stage]}
          aria-valuetext={`${reached} of ${parts} parts`}
        />
        <p className="quiet number" aria-hidden>
          {reached} of {parts} parts
        </p>
        {canStop ? (
          <>
            <div className="button-row">
              <button
                type="button"
                ref={button}
                className="button"
                onClick={() => useOpening.getState().stop()}
              >
                <X size={16} aria-hidden /> Stop
              </button>
            </div>
            <p className="quiet small">
              It stops by itself after {numeralAsSet(DEADLINE_MS / 1000)} seconds.
            </p>
          </>
        ) : null}
      </div>
    </main>
  );
}
