import { LoaderCircle, RotateCcw, Search, Square } from "lucide-react";
import { useMemo, useState } from "react";
import { detailedSymptoms, type Observation, type Symptom } from "../../../remedies/faults/symptoms.ts";
import { useApp } from "../../../store/app.ts";
import { type Seen, useFinder } from "../../../store/faultFinder.ts";
import { plural } from "../../../words/plural.ts";
import styles from "./Faults.module.css";
import { FoundFaults } from "./FoundFaults.tsx";
import { PlaneTable } from "./PlaneTable.tsx";
import { SeenTable } from "./SeenTable.tsx";
import { useDocumentState } from "./useDocumentState.ts";

/** From what works and what does not to what is suspected, and from there to the next measurement. */
export function Finder() {
  const sound = useDocumentState();
  const symptoms = useMemo(() => detailedSymptoms(sound, sound), [sound]);
  const seen = useFinder((s) => s.seen);
  // Folded away once it is searched for, so that what is found comes into view.
  const [isOpen, setOpen] = useState(seen.size === 0 || useFinder.getState().status === "idle");
  const isRow = (s: Symptom) => s.plane === undefined;
  const receivers = symptoms.filter((s) => s.role === "receiver" && isRow(s));
  const outlets = symptoms.filter((s) => s.role === "outlet" && isRow(s));
  if (symptoms.length === 0)
    return (
      <p className="quiet">
        The design has no receiver and no outlet, so nobody could tell that something fails.
      </p>
    );
  const fails = [...seen.values()].some((o) => o.works !== true);
  return (
    <>
      <p>
        Mark what you see on site. The search then looks for single faults in this design that would explain
        it.
      </p>
      <details
        className="fault-more"
        open={isOpen}
        onToggle={(event) => {
          if (event.target === event.currentTarget) setOpen(event.currentTarget.open);
        }}
      >
        <summary>{seenWords([...seen.values()])}</summary>
        <div className={styles.seenBody}>
          {receivers.length > 0 ? <SeenTable title="Receivers" symptoms={receivers} /> : null}
          {outlets.length > 0 ? (
            <details className="fault-more" open={receivers.length === 0}>
              <summary>Outlets, measured at the wall</summary>
              <SeenTable title="Outlets" symptoms={outlets} />
            </details>
          ) : null}
          <PlaneTable symptoms={symptoms} />
          <div className="button-row">
            {receivers.length > 0 ? (
              <button
                type="button"
                className="button"
                disabled={!fails}
                onClick={() => useFinder.getState().restWorks(receivers.filter((s) => s.tuner === undefined))}
              >
                All other receivers work
              </button>
            ) : null}
            <button
              type="button"
              className="button"
              disabled={seen.size === 0}
              onClick={() => useFinder.getState().clear()}
            >
              <RotateCcw size={15} aria-hidden /> Start again
            </button>
          </div>
        </div>
      </details>
      <SearchLine canSearch={fails} onStart={() => setOpen(false)} />
      <Results />
    </>
  );
}

/** "What is seen: 1 fails, 6 work" */
function seenWords(seen: readonly Observation[]): string {
  const count = (works: Seen) => seen.filter((o) => o.works === works).length;
  const words = [
    plural(count(false), { zero: "", one: (n) => `${n} fails`, other: (n) => `${n} fail` }),
    plural(count("partial"), { zero: "", one: (n) => `${n} in part`, other: (n) => `${n} in part` }),
    plural(count(true), { zero: "", one: (n) => `${n} works`, other: (n) => `${n} work` }),
  ].filter((phrase) => phrase !== "");
  return words.length === 0 ? "What is seen" : `What is seen: ${words.join(", ")}`;
}

type SearchProps = { readonly canSearch: boolean; readonly onStart: () => void };

function SearchLine({ canSearch, onStart }: SearchProps) {
  const { status, progress, problem } = useFinder();
  const percent = progress ? Math.round((100 * progress.done) / Math.max(1, progress.of)) : 0;
  return (
    <div className={styles.searchLine}>
      {status === "running" ? (
        <button type="button" className="button" onClick={() => useFinder.getState().stop()}>
          <Square size={14} aria-hidden /> Stop
        </button>
      ) : (
        <button
          type="button"
          className="button main"
          disabled={!canSearch}
          onClick={() => {
            onStart();
            useFinder.getState().start();
          }}
        >
          <Search size={16} aria-hidden /> Find the fault
        </button>
      )}
      <p role="status">
        {status === "running" ? (
          <>
            <LoaderCircle className="turning" size={15} aria-hidden />
            {STAGES[progress?.stage ?? "faults"]}
            <span aria-hidden>{percent} %</span>
          </>
        ) : null}
        {status === "stopped" ? "Stopped." : null}
        {status === "failed" ? `The search stopped: ${problem}` : null}
        {status === "idle" && !canSearch ? "Mark at least one service that fails." : null}
      </p>
    </div>
  );
}

const STAGES = {
  faults: "Trying single faults",
  readings: "Comparing with what was read",
  measurement: "Looking for the best measurement",
} as const;

/** What was found holds for the very document that was searched. */
function Results() {
  const document = useFinder((s) => s.document);
  const progress = useFinder((s) => s.progress);
  const isOutdated = useApp((s) => document !== null && s.design !== document);
  if (isOutdated) return <p className="quiet">The design has changed since: look again.</p>;
  return progress?.left ? <FoundFaults left={progress.left} measurement={progress.measurement} /> : null;
}
