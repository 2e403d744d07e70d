import type { Finding } from "../../../findings/finding.ts";
import { explainFinding } from "../../../sentences/finding.ts";
import { useApp } from "../../../store/app.ts";

/** So many measurements show that it worked. */
const MOST = 3;

/** What to measure when the work is done: once for each rule that had something to say. */
export function Afterwards({ cured }: { readonly cured: readonly Finding[] }) {
  const evaluation = useApp((s) => s.evaluation);
  const told = cured
    .filter((f, i) => f.severity !== "note" && cured.findIndex((g) => g.rule === f.rule) === i)
    .slice(0, MOST);
  if (told.length === 0) return null;
  return (
    <>
      <h4>Measure afterwards</h4>
      <ul>
        {told.map((finding) => (
          <li key={finding.id}>{explainFinding(finding, evaluation).measure}</li>
        ))}
      </ul>
    </>
  );
}
