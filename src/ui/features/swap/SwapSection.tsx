import { useEffect, useRef, useState } from "react";
import type { Design } from "../../../design/design.ts";
import { partById } from "../../../design/lookup.ts";
import { kindOf } from "../../../parts/catalogue.ts";
import { type Swap, whatBreaks } from "../../../remedies/compare.ts";
import { useApp } from "../../../store/app.ts";
import { usePrices } from "../../../store/prices.ts";
import { useIsPreviewed } from "../../kit/told/PreviewChange.tsx";
import styles from "./Swap.module.css";
import { SwapAnswer } from "./SwapAnswer.tsx";
import { askSwap, type SwapQuestion, useSwapAsked } from "./swapState.ts";

/** On the part itself: what becomes of everybody if it were of another kind. */
export function SwapSection({ part }: { readonly part: string }) {
  const question = useSwapAsked((s) => s.question);
  const design = useApp((s) => s.design);
  const isDone = question !== null && partById(design, part)?.kind === question.kind;
  if (question?.part !== part || isDone) return null;
  // Not a section of the card itself, so that it is not among the jumps to these.
  return (
    <div>
      <Asked key={question.kind} question={question} design={design} />
    </div>
  );
}

function Asked({ question, design }: { readonly question: SwapQuestion; readonly design: Design }) {
  const swap = useSwap(question, design);
  const isShown = useIsPreviewed(swap?.ok ? swap.design : undefined);
  const heading = useRef<HTMLHeadingElement>(null);
  const old = kindOf(partById(design, question.part)?.kind ?? "")?.name ?? "";
  const title = `${old} → ${kindOf(question.kind)?.name ?? question.kind}`;
  // The button that asked has scrolled away or lies behind its list by now.
  useEffect(() => {
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: "nearest" });
  }, []);
  return (
    <section className={isShown ? "tried shown" : "tried"} aria-label={`What breaks: ${title}`}>
      <h3 className={styles.heading} ref={heading} tabIndex={-1}>
        If swapped: {title}
      </h3>
      {swap === null ? <p role="status">Calculating…</p> : null}
      {swap && !swap.ok ? <p className="field-problem">{swap.reason}</p> : null}
      {swap?.ok ? (
        <SwapAnswer swap={swap} title={title} question={question} />
      ) : (
        <button type="button" className="button" onClick={() => askSwap(null)}>
          Close
        </button>
      )}
    </section>
  );
}

/** Worked out after the question is on the screen: in a large design it takes a moment. */
function useSwap({ part, kind }: SwapQuestion, design: Design): Swap | null {
  const prices = usePrices((s) => s.prices);
  const [swap, setSwap] = useState<Swap | null>(null);
  useEffect(() => {
    const timer = setTimeout(() => {
      const { preview, evaluation, report } = useApp.getState();
      setSwap(
        whatBreaks(design, part, kind, prices, { design, ...(preview?.document ?? { evaluation, report }) }),
      );
    }, 0);
    return () => clearTimeout(timer);
  }, [design, part, kind, prices]);
  return swap;
}
