import { useOpening } from "../../../store/opening.ts";
import { FailedStart } from "./FailedStart.tsx";
import { Halted } from "./Halted.tsx";
import { PlainList } from "./PlainList.tsx";
import { Refused } from "./Refused.tsx";
import { WorkingView } from "./WorkingView.tsx";
import "./opening.css";

/** Stands in the place of the canvas while a design is worked out, and where none came up. */
export function OpeningScreen() {
  const working = useOpening((s) => s.working);
  const problem = useOpening((s) => s.problem);
  if (working?.isShown) return <WorkingView working={working} />;
  switch (problem?.type) {
    case "halted":
      return <Halted key={problem.design.title + problem.why} problem={problem} />;
    case "refused":
      return <Refused key={problem.reason} problem={problem} />;
    case "not up":
      return <FailedStart failed={problem} />;
    case "list":
      return <PlainList start={problem.design} before={problem.before} />;
    default:
      return null;
  }
}
