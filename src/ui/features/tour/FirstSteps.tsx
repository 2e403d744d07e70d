/** Where nothing is drawn yet: the tour, the examples by what they teach, and how to begin by hand. */
import { Play } from "lucide-react";
import { EXAMPLE_GROUPS } from "../../../design/examples.ts";
import { startTour } from "../../kit/asked/tour.ts";
import styles from "./FirstSteps.module.css";

export function FirstSteps({ openExample }: { readonly openExample: (key: string) => Promise<boolean> }) {
  return (
    <div className={styles.steps}>
      <h2>Nothing here yet</h2>
      <p>
        Drag a dish or an aerial from the parts onto this canvas, or press one to add it. Then connect ports:
        drag from one to the other, or tap both. Every wire shows at once what is on it.
      </p>
      <button type="button" className="button main" onClick={startTour}>
        <Play size={16} aria-hidden /> Take the tour (one minute)
      </button>
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
