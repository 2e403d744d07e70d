import { BookOpen } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { EXAMPLE_GROUPS } from "../../../design/examples.ts";
import { openExample } from "../../features/documents/actions.ts";

/** The examples by what they teach, each with its lesson in one line. */
export function ExampleMenu() {
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className="button">
          <BookOpen size={16} aria-hidden /> Examples
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu wide" align="end" sideOffset={4} collisionPadding={8}>
          {EXAMPLE_GROUPS.map(({ teaches, examples }) => (
            <DropdownMenu.Group key={teaches} aria-label={teaches}>
              <DropdownMenu.Label className="menu-heading">{teaches}</DropdownMenu.Label>
              {examples.map(({ key, title, lesson }) => (
                <DropdownMenu.Item key={key} className="menu-item" onSelect={() => void openExample(key)}>
                  <span>
                    {title}
                    <span className="lesson">{lesson}</span>
                  </span>
                </DropdownMenu.Item>
              ))}
            </DropdownMenu.Group>
          ))}
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}
