import type { ReactNode } from "react";
import { fillOf } from "../../canvas/textures.ts";
import styles from "./Help.module.css";

/** The marks of a strip, drawn with the very classes that strips use. */
export function StripLegend() {
  return (
    <ul className={styles.legend}>
      <Mark words="There now: its colour, texture and word name the service, its height is the level.">
        <path className="strip-live" d="M4 24V8H36V24z" fill={fillOf("tv")} />
      </Mark>
      <Mark words="Dashed outline: removed by a filter, outlet, amplifier or splitter.">
        <path className="strip-cut" d="M4 24V8H36V24z" stroke="var(--service-tv)" />
      </Mark>
      <Mark words="Thin outline: there only in another switch position.">
        <path className="strip-idle" d="M4 24V8H36V24z" stroke="var(--service-sat-hl)" />
      </Mark>
      <Mark words="Red and hatched: another signal is on the same frequencies, and the carrier is lost, or nearly so.">
        <path className="strip-hit" d="M4 24V8H36V24z" />
      </Mark>
      <Mark words="Amber hatching: another signal costs margin.">
        <path className="strip-live" d="M4 24V8H36V24z" fill={fillOf("tv")} />
        <path className="strip-touched" d="M4 24V8H36V24z" />
      </Mark>
    </ul>
  );
}

function Mark({ words, children }: { readonly words: string; readonly children: ReactNode }) {
  return (
    <li>
      <svg width={40} height={28} aria-hidden="true">
        <path className="strip-ground" d="M0 24H40" />
        {children}
      </svg>
      <span>{words}</span>
    </li>
  );
}
