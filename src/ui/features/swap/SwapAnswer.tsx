import { Check, Search, X } from "lucide-react";
import { done } from "../../../design/edits/edit.ts";
import type { Swap } from "../../../remedies/compare.ts";
import { placeChangeSentence } from "../../../sentences/placeChange.ts";
import { useApp } from "../../../store/app.ts";
import { usePrices } from "../../../store/prices.ts";
import { plural } from "../../../words/plural.ts";
import { findCures } from "../../kit/asked/findCures.ts";
import { counted } from "../../kit/format.ts";
import { costWords } from "../../kit/told/costWords.ts";
import { FindingsTurned } from "../../kit/told/FindingsTurned.tsx";
import { PreviewChange } from "../../kit/told/PreviewChange.tsx";
import { inOrder } from "../../kit/told/sides.ts";
import { TurnMark } from "../../kit/told/TurnMark.tsx";
import styles from "./Swap.module.css";
import { askSwap, type SwapQuestion } from "./swapState.ts";

type Props = {
  readonly swap: Extract<Swap, { ok: true }>;
  readonly title: string;
  readonly question: SwapQuestion;
};

/** Who gains, who loses, what is found anew; and what can be done about it. */
export function SwapAnswer({ swap, title, question }: Props) {
  const currency = usePrices((s) => s.currency);
  const { places, caused, cost, notes, design } = swap;
  const turned = inOrder(places.filter((p) => p.change !== "same"));
  const same = places.length - turned.length;
  return (
    <>
      <p className={losers(swap) > 0 ? "state bad" : "state ok"}>{summary(swap)}</p>
      {notes.length > 0 ? <p className="small">{notes.join(" ")}</p> : null}
      <div className="button-row">
        <PreviewChange title={title} design={design} />
        <button
          type="button"
          className="button"
          onClick={() => {
            const { closePreview, change, notify } = useApp.getState();
            closePreview();
            if (change(done(design)))
              notify(`Swapped: ${title}. ${notes.join(" ")}`.trim(), "info", { undoable: true });
            askSwap(null);
          }}
        >
          <Check size={16} aria-hidden /> Swap
        </button>
        {caused.some((f) => f.severity !== "note") ? (
          <button
            type="button"
            className="button main"
            onClick={() => void findCures({ changed: { design, title, ...question } })}
          >
            <Search size={16} aria-hidden /> Find cures for it
          </button>
        ) : null}
        <button
          type="button"
          className="button bare"
          onClick={() => {
            useApp.getState().closePreview();
            askSwap(null);
          }}
        >
          <X size={16} aria-hidden /> Close
        </button>
      </div>
      {turned.length > 0 ? (
        <ul className={styles.places}>
          {turned.map((place) => (
            <li key={place.part}>
              <button
                type="button"
                className="link"
                onClick={() => useApp.getState().frame({ parts: [place.part] })}
              >
                {place.label}
              </button>{" "}
              <TurnMark change={place.change} />
              <span className={styles.sentence}>{placeChangeSentence(place)}</span>
            </li>
          ))}
        </ul>
      ) : null}
      {same > 0 ? (
        <p className="quiet small">
          {plural(same, {
            one: (n) => `${n} receiver or outlet stays as before.`,
            other: (n) => `${n} receivers and outlets stay as before.`,
          })}
        </p>
      ) : null}
      <details className="tried-more">
        <summary>
          {counted(caused.length, "finding")} new or graver, {swap.cured.length} gone
        </summary>
        <FindingsTurned comparison={swap} />
      </details>
      <p className="quiet small">{costWords(cost, currency)}, by your own prices and times.</p>
    </>
  );
}

function losers({ places }: Props["swap"]): number {
  return places.filter((p) => p.change === "lost" || p.change === "mixed" || (p.worked && !p.works)).length;
}

function summary(swap: Props["swap"]): string {
  const lost = losers(swap);
  const receivers = swap.places.filter((p) => p.role === "receiver" && p.worked && !p.works).length;
  const gained = swap.places.filter((p) => p.change === "gained").length;
  if (lost === 0)
    return plural(gained, {
      zero: "Nobody loses anything.",
      one: (n) => `Nobody loses anything; ${n} place gains.`,
      other: (n) => `Nobody loses anything; ${n} places gain.`,
    });
  const losing = plural(lost, {
    one: (n) => `${n} receiver or outlet loses something.`,
    other: (n) => `${n} receivers and outlets lose something.`,
  });
  const stopping = plural(receivers, {
    zero: "",
    one: (n) => ` ${n} receiver no longer works.`,
    other: (n) => ` ${n} receivers no longer work.`,
  });
  return losing + stopping;
}
