/** Where nothing is drawn yet: the tour, the examples by what they teach, and how to begin by hand. */
import { Play } from "lucide-react";
import { EXAMPLE_GROUPS } from "../../../design/examples.ts";
import { startTour } from "../../kit/asked/tour.ts";
import { showPane } from "../../kit/panes.ts";
import styles from "./FirstSteps.module.css";

export function FirstSteps({ openExample }: { readonly openExample: (key: string) => Promise<boolean> }) {
  return (
    <div className={styles.steps}>
      <h2>Nothing here yet</h2>
      <p>
        Press a dish or an aerial among the parts to add it, or drag it onto the drawing. Then connect ports:
        drag from one to the other, or tap both. Every wire shows at once what is on it.
      </p>
      <div className={styles.begin}>
        <button type="button" className="button main" onClick={startTour}>
          <Play size={16} aria-hidden /> Take the tour (one minute)
        </button>
        <button type="button" className="button" onClick={() => showPane("tray")}>
          Show parts
        </button>
      </div>
      <h3>Or open an example</h3>
      <dl className={styles.lessons}>
        {EXAMPLE_GROUPS.map(({ teaches, examples }) => (
          <div key={teaches}>
            <dt>{teaches}</dt>
            {examples.map(({ key, title }) => (
              <dd key={key}>
                <button type="button" className="link" onClick={() => void openExample(key)}>
                  {title}
                </button>
              </dd>
            ))}
          </div>
        ))}
      </dl>
    </div>
  );
}
