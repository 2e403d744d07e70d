/**
 * Which cards are drawn. After the plan, cards come back a few in each frame, nearest to the middle first,
 * so that zooming into a crowd never stops the picture; until all in view are there the plan stays below.
 */
import { useEffect, useRef, useState } from "react";
import type { Design } from "../../design/design.ts";
import { boxOf } from "./boxes.ts";
import type { Box } from "./layout.ts";
import { useCanvas } from "./state.ts";
import { partsInView } from "./viewMath.ts";

const CARDS_PER_FRAME = 32;

export type Reveal = "all" | ReadonlySet<string>;
const NONE: ReadonlySet<string> = new Set();

/** @param inView what of the canvas is seen, asked at the moment the cards come back */
export function useReveal(design: Design, inView: () => Box): Reveal {
  const isPlan = useCanvas((s) => s.detail === "plan");
  const [shown, setShown] = useState<Reveal>(isPlan ? NONE : "all");
  const wasPlan = useRef(isPlan);

  // The design and the view are read at the start of a reveal only: what changes meanwhile comes with "all".
  // biome-ignore lint/correctness/useExhaustiveDependencies: a reveal runs once for each way out of the plan
  useEffect(() => {
    if (isPlan) {
      wasPlan.current = true;
      setShown(NONE);
      return;
    }
    if (!wasPlan.current) return;
    wasPlan.current = false;
    const order = nearestFirst(design, inView());
    let count = 0;
    let frame = 0;
    const next = () => {
      count += CARDS_PER_FRAME;
      if (count >= order.length) {
        setShown("all");
        return;
      }
      setShown(new Set(order.slice(0, count)));
      frame = requestAnimationFrame(next);
    };
    next();
    return () => cancelAnimationFrame(frame);
  }, [isPlan]);
  return isPlan ? NONE : shown;
}

function nearestFirst(design: Design, area: Box): string[] {
  const seen = partsInView(design, area);
  const x = area.x + area.width / 2;
  const y = area.y + area.height / 2;
  const distance = (b: Box) => Math.abs(b.x + b.width / 2 - x) + Math.abs(b.y + b.height / 2 - y);
  return design.parts
    .filter((p) => seen.has(p.id))
    .sort((a, b) => distance(boxOf(design, a)) - distance(boxOf(design, b)))
    .map((p) => p.id);
}
