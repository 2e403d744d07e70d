import type { LevelOrigin } from "./levelOrigin.ts";

/** The lines of the level diagram. */
export function Legend({ answer }: { readonly answer: LevelOrigin }) {
  return (
    <p className="origin-legend small" aria-hidden="true">
      <span className="key level">level</span>
      <span className="key noise">noise</span>
      {answer.steps.some((step) => Number.isFinite(step.ciDb)) ? (
        <span className="key interference">interference</span>
      ) : null}
    </p>
  );
}
