import { BookOpen } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { EXAMPLES } from "../../../design/examples.ts";
import { openExample } from "../../features/documents/actions.ts";

/** The examples, each with the one line that it teaches. */
export function ExampleMenu() {
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className="button">
          <BookOpen size={16} aria-hidden /> Examples
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu" align="end" sideOffset={4} collisionPadding={8}>
          {EXAMPLES.map((example) => (
            <DropdownMenu.Item
              key={example.key}
              className="menu-item"
              onSelect={() => void openExample(example.key)}
            >
              <span>
                {example.title}
                <span className="lesson">{example.lesson}</span>
              </span>
            </DropdownMenu.Item>
          ))}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}
