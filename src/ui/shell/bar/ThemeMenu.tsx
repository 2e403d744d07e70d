import { Moon, Sun } from "lucide-react";
import { DropdownMenu } from "radix-ui";
import { MenuChoice } from "../../kit/MenuChoice.tsx";
import { setTheme, type ThemeChoice, useTheme, useThemeChoice } from "../../kit/theme.ts";

const CHOICES: readonly { readonly value: ThemeChoice; readonly name: string }[] = [
  { value: "system", name: "As the system" },
  { value: "light", name: "Light" },
  { value: "dark", name: "Dark" },
];

export function ThemeMenu() {
  const theme = useTheme();
  const Icon = theme === "dark" ? Moon : Sun;
  return (
    <DropdownMenu.Root>
      <DropdownMenu.Trigger asChild>
        <button type="button" className="button icon bare" aria-label="Theme" title="Theme">
          <Icon size={18} aria-hidden />
        </button>
      </DropdownMenu.Trigger>
      <DropdownMenu.Portal>
        <DropdownMenu.Content className="menu" align="end" sideOffset={4} collisionPadding={8}>
          <ThemeChoices />
        </DropdownMenu.Content>
      </DropdownMenu.Portal>
    </DropdownMenu.Root>
  );
}

/** The choices, for this menu and for the one that takes its place in a narrow bar. */
export function ThemeChoices() {
  const choice = useThemeChoice((s) => s.choice);
  return (
    <DropdownMenu.RadioGroup value={choice}>
      {CHOICES.map(({ value, name }) => (
        <MenuChoice key={value} value={value} onSelect={() => setTheme(value)}>
          {name}
        </MenuChoice>
      ))}
    </DropdownMenu.RadioGroup>
  );
}
