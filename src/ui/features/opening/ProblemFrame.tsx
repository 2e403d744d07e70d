import { TriangleAlert, Undo2 } from "lucide-react";
import { type ReactNode, useEffect, useId, useRef } from "react";
import { useApp } from "../../../store/app.ts";
import { useOpening } from "../../../store/opening.ts";
import { withoutAddressRequest } from "../../kit/addressRequest.ts";
import { DesignList } from "../documents/DesignList.tsx";

type Props = {
  readonly title: string;
  /** What happened and why, read out as the screen comes up. */
  readonly about: ReactNode;
  readonly children: ReactNode;
};

/** Says that something did not open, before anything else, with the ways on below it. */
export function ProblemFrame({ title, about, children }: Props) {
  const heading = useRef<HTMLHeadingElement>(null);
  const id = useId();
  const isBackOpen = useApp((s) => s.opened > 0 && s.design.parts.length > 0);
  const before = useApp((s) => s.design.title);
  useEffect(() => heading.current?.focus(), []);
  const back = () => {
    window.history.replaceState(null, "", withoutAddressRequest(window.location.href));
    useOpening.getState().leaveProblem();
  };
  return (
    <main
      className="gate"
      onKeyDown={(event) => {
        // A field or row below may have had its own use for it.
        if (event.key === "Escape" && isBackOpen && !event.defaultPrevented) back();
      }}
    >
      <div className="gate-sheet">
        <section
          className="gate-head"
          role="alertdialog"
          aria-labelledby={`${id}-title`}
          aria-describedby={`${id}-about`}
        >
          <h1 id={`${id}-title`} ref={heading} tabIndex={-1}>
            <TriangleAlert size={22} aria-hidden /> {title}
          </h1>
          <div id={`${id}-about`}>{about}</div>
          {children}
          {isBackOpen ? (
            <div className="button-row">
              <button type="button" className="button" onClick={back}>
                <Undo2 size={16} aria-hidden /> Back to “{before}”
              </button>
            </div>
          ) : null}
        </section>
        <section className="gate~storage" aria-label="Designs to open instead">
          <h2>Or open something else</h2>
          <DesignList onDone={back} />
        </section>
      </div>
    </main>
  );
}
