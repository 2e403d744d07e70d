import { useOpening } from "../../store/opening.ts";
import { Halted } from "./Halted.tsx";
import { NotUp } from "./NotUp.tsx";
import { PlainList } from "./PlainList.tsx";
import { Refused } from "./Refused.tsx";
import { WorkingView } from "./WorkingView.tsx";
import "./opening.css";

/** Stands in the place of the canvas while a design is worked out, and where none came up. */
export function OpeningScreen() {
  const working = useOpening((s) => s.working);
  const gate = useOpening((s) => s.gate);
  if (working?.isShown) return <WorkingView working={working} />;
  switch (gate?.type) {
    case "halted":
      return <Halted key={gate.design.title + gate.why} gate={gate} />;
    case "refused":
      return <Refused key={gate.problem} gate={gate} />;
    case "not up":
      return <NotUp gate={gate} />;
    case "list":
      return <PlainList start={gate.design} before={gate.before} />;
    default:
      return null;
  }
}
