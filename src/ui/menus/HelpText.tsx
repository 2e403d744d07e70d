import { ESTIMATE_NOTICE } from "../../parts/cautions.ts";
import { ShortcutTable } from "./ShortcutTable.tsx";
import { StripLegend } from "./StripLegend.tsx";
import "./help.css";

/** How to read what is on the screen, and what it can't say. */
export function HelpText() {
  return (
    <div className="help">
      <section>
        <h3>What it is</h3>
        <p>
          You draw a reception system as it is or as it should be: dishes, aerials, converters, splitters,
          cables, outlets, receivers. For every wire it works out which frequencies are occupied, by what, how
          strong and how clean; who powers and who commands what; and what each receiver can really get.{" "}
          {ESTIMATE_NOTICE}
        </p>
      </section>
      <section>
        <h3>How to read a strip</h3>
        <ul>
          <li>
            Every wire carries a strip. From left to right it is frequency, on the same scale for all cables:
            FM, DAB, UHF television, satellite IF. The wire from a dish has a scale of its own, 10.7 to 12.75
            GHz.
          </li>
          <li>
            Numbered blocks are the user bands of a channel-stacked feed; each holds one transponder on
            request.
          </li>
        </ul>
        <StripLegend />
        <p>Select a wire to see its full spectrum, and a receiver to see what it gets and why not.</p>
      </section>
      <section>
        <h3>Working on it</h3>
        <ul>
          <li>Drag a part from the tray onto the canvas; let it go over a wire to put it into that wire.</li>
          <li>Join two ports by dragging from one to the other, or by tapping one and then the other.</li>
          <li>Everything can be undone. Designs are kept in this browser as you work.</li>
          <li>Tried values show at once, on every wire that they reach.</li>
        </ul>
      </section>
      <section>
        <h3>Keys</h3>
        <ShortcutTable />
      </section>
      <section>
        <h3>Where it can be wrong</h3>
        <ul>
          <li>
            Levels are typical values until you put in measured ones. A real installation scatters by some
            decibels.
          </li>
          <li>
            Reflections from bad terminations are not worked out: ripple and echoes can be worse than shown.
          </li>
          <li>
            Screening and pick-up along a cable are not worked out; put in a pick-up part where you suspect
            it.
          </li>
          <li>Which channels carry what programme is not known to it; it counts carriers.</li>
          <li>A receiver may be better or worse than the figure its modulation needs.</li>
        </ul>
      </section>
      <section>
        <h3>Safety</h3>
        <p>
          Mains wiring, equipotential bonding, lightning protection and work on roofs and ladders can kill.
          Follow the codes of the place, and leave to licensed people what is theirs. No result here replaces
          their judgement or a measurement.
        </p>
      </section>
    </div>
  );
}
