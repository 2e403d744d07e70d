import type { LevelOrigin } from "./levelOrigin.ts";
import { rippleWords } from "./rippleWords.ts";

/** Less than this is no band that could be seen [dB]. */
const WORTH_A_WORD_DB = 0.1;

/** The lines of the level diagram, and its band in words: paper has no pointer to ask it with. */
export function Legend({ answer }: { readonly answer: LevelOrigin }) {
  return (
    <p className="origin-legend small" aria-hidden="true">
      <span className="key level">level</span>
      <span className="key noise">noise</span>
      {answer.steps.some((step) => Number.isFinite(step.ciDb)) ? (
        <span className="key interference">interference</span>
      ) : null}
      {(answer.steps.at(-1)?.ripple?.downDb ?? 0) >= WORTH_A_WORD_DB ? (
        <span>{rippleWords(answer)}</span>
      ) : null}
    </p>
  );
}
