import type { Design } from "../../../design/design.ts";
import type { Work } from "../../../remedies/work.ts";
import { namesIn } from "../../../sentences/cures/told.ts";
import { workEffort, workWords } from "../../../sentences/cures/work.ts";

/** What is to be done, part by part and wire by wire, with the place and the time. */
export function WorkList({
  work,
  before,
  after,
}: {
  readonly work: readonly Work[];
  readonly before: Design;
  readonly after: Design;
}) {
  const names = namesIn(before, after);
  return (
    <ol className="work-list">
      {work.map((task) => {
        const words = workWords(task, names);
        return (
          <li key={words}>
            {words} <span className="quiet small">{workEffort(task)}</span>
          </li>
        );
      })}
    </ol>
  );
}
