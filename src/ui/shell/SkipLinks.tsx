import { afterLayout } from "../kit/afterLayout.ts";
import { showPane } from "../kit/panes.ts";
import { focusRegion } from "./regions.ts";
import styles from "./SkipLinks.module.css";

/**
 * The first stops of the page: past the bar to what one came for. Buttons, since a link would put its place into the
 * address, which may hold a design.
 */
export function SkipLinks() {
  return (
    <nav className={styles.links} aria-label="Skip">
      <button type="button" onClick={() => focusRegion("drawing")}>
        Skip to the drawing
      </button>
      <button type="button" onClick={skipToVerdict}>
        Skip to the verdict
      </button>
    </nav>
  );
}

function skipToVerdict(): void {
  showPane("verdict");
  afterLayout(() => focusRegion("side") || focusRegion("sheet"));
}
