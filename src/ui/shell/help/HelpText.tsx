import { KNOWN_LIMITS } from "../../../findings/knownLimits.ts";
import { ESTIMATE_NOTICE } from "../../../parts/cautions.ts";
import { numeral } from "../../../words/numbers.ts";
import { openRuleBook } from "../../kit/asked/book.ts";
import { openGlossary } from "../../kit/asked/glossary.ts";
import { startTour } from "../../kit/asked/tour.ts";
import { openDialog } from "../../kit/panes.ts";
import { OfflineWords } from "../../kit/told/OfflineWords.tsx";
import styles from "./Help.module.css";
import { ShortcutTable } from "./ShortcutTable.tsx";
import { StorageHelp } from "./StorageHelp.tsx";
import { StripLegend } from "./StripLegend.tsx";

/** How to read what is on the screen, and what it can't say. */
export function HelpText() {
  return (
    <div className={styles.help}>
      <section>
        <h3>What it is</h3>
        <p>
          You draw a reception system as it is or as it should be: dishes, aerials, LNBs, splitters, cables,
          outlets, receivers. Downlead calculates for every wire which frequencies are occupied, by what, how
          strong and how clean. It also shows who powers and who commands what, and what each receiver can
          really get. {ESTIMATE_NOTICE}
        </p>
        <p>
          <button
            type="button"
            className="button"
            onClick={() => {
              openDialog(null);
              startTour();
            }}
          >
            Take the tour (one minute)
          </button>
        </p>
      </section>
      <section>
        <h3>How to read a strip</h3>
        <ul>
          <li>
            A strip shows what is on a wire. It lies on the card where the wire begins; behind a cable it
            opens when you point at the wire or select it.
          </li>
          <li>
            Frequency runs from left to right, on the same scale for all cables: FM, DAB, UHF television,
            satellite IF. The wire from a dish has a scale of its own, {numeral(10.7)} to {numeral(12.75, 2)}{" "}
            GHz.
          </li>
          <li>Red wires lead to every receiver that fails, from the part that makes it fail.</li>
          <li>
            Numbered blocks are the user bands of a single-cable feed. Each holds one transponder on request.
          </li>
        </ul>
        <StripLegend />
        <p>Select a wire to see its full spectrum, and a receiver to see what it gets and why not.</p>
      </section>
      <section>
        <h3>Working on it</h3>
        <ul>
          <li>Drag a part from the tray onto the canvas. Drop it on a wire to put it into that wire.</li>
          <li>Connect two ports by dragging from one to the other, or by tapping one and then the other.</li>
          <li>Pull a wire from a port onto empty canvas to choose from the parts that fit there.</li>
          <li>“Overview” shows the whole house by rooms or flats, “Drawing” every part and wire.</li>
          <li>Everything can be undone.</li>
          <li>A changed value takes effect at once, on every wire behind it.</li>
          <li>Press a figure with dots under it to see how it came about, step by step from the source.</li>
        </ul>
      </section>
      <section>
        <h3>How a finding is explained</h3>
        <ul>
          <li>“Why?” under a finding explains it: for the customer, for the trade, and for the meter.</li>
          <li>The rule book lists every rule with an example that triggers it and one that does not.</li>
        </ul>
        <p>
          <button type="button" className="button" onClick={() => openRuleBook()}>
            Open the rule book
          </button>
        </p>
      </section>
      <section>
        <h3>Words of the trade</h3>
        <p>The glossary says in a sentence or two what each term means, from attenuator to user band.</p>
        <p>
          <button type="button" className="button" onClick={() => openGlossary()}>
            Open the glossary
          </button>
        </p>
      </section>
      <StorageHelp />
      <section>
        <h3>Without network</h3>
        <p>
          The page works by itself: nothing that you draw is sent anywhere, and it asks no other server for
          anything.
        </p>
        <OfflineWords />
      </section>
      <section>
        <h3>Keys</h3>
        <ShortcutTable />
      </section>
      <section>
        <h3>Known limits of the model</h3>
        <dl className={styles.limits}>
          {KNOWN_LIMITS.map(({ title, text }) => (
            <div key={title}>
              <dt>{title}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section>
        <h3>Safety</h3>
        <p>
          Mains wiring, equipotential bonding, lightning protection and work on roofs and ladders can kill.
          Follow local codes, and leave to licensed people what is theirs. No result here replaces their
          judgement or a measurement.
        </p>
      </section>
      <section>
        <h3>Made with</h3>
        <p>
          Downlead uses free software of others, each under its own licence. The drawing stands on{" "}
          <a href="https://reactflow.dev" target="_blank" rel="noopener noreferrer">
            React Flow
          </a>
          .
        </p>
        <p>
          <button type="button" className="button" onClick={() => openDialog("licences")}>
            Licences of others
          </button>
        </p>
      </section>
    </div>
  );
}
