import { endWords } from "./endWords.ts";
import { Legend } from "./Legend.tsx";
import { LevelDiagram } from "./LevelDiagram.tsx";
import type { LevelOrigin } from "./levelOrigin.ts";
import { OriginPlace } from "./OriginPlace.tsx";
import { StepTable } from "./StepTable.tsx";
import "./origin.css";

/** How a level came about, as it is printed: diagram, sentences and every step. */
export function PaperOrigin({
  found,
  which,
}: {
  readonly found: LevelOrigin;
  readonly which: string | undefined;
}) {
  return (
    <section className="paper-origin">
      <h2>How this level came about</h2>
      <OriginPlace found={found} which={which} />
      {endWords(found).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      <LevelDiagram answer={found} width={680} height={200} />
      <Legend answer={found} />
      <StepTable answer={found} isOnPaper />
    </section>
  );
}
