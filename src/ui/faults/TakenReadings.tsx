import { X } from "lucide-react";
import { useFinder } from "../../store/faultFinder.ts";
import { IconButton } from "../kit/IconButton.tsx";

/** What was read so far; each can be taken back. */
export function TakenReadings() {
  const taken = useFinder((s) => s.taken);
  if (taken.length === 0) return null;
  return (
    <section className="fault-group">
      <h3>Read so far</h3>
      <ul className="taken">
        {taken.map(({ question, answer }, i) => (
          <li key={question}>
            <span>
              {question} <strong>{answer}</strong>
            </span>
            <IconButton
              icon={X}
              name={`Take back: ${answer}`}
              onPress={() => useFinder.getState().takeBack(i)}
            />
          </li>
        ))}
      </ul>
    </section>
  );
}
