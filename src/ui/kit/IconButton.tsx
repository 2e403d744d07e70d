import type { ComponentType } from "react";
import { Hint } from "./Hint.tsx";

export type IconType = ComponentType<{ size?: number; "aria-hidden"?: boolean }>;

type Props = {
  readonly icon: IconType;
  /** Accessible name, and the hint. */
  readonly name: string;
  /** What the hint says beside the name, where that is more. */
  readonly hint?: string | undefined;
  /** Shortcut shown in the hint. */
  readonly keys?: string | undefined;
  readonly onPress: () => void;
  readonly disabled?: boolean;
  readonly pressed?: boolean;
  readonly bordered?: boolean;
};

/** A button that shows only an icon. */
export function IconButton({ icon: Icon, name, hint, keys, onPress, disabled, pressed, bordered }: Props) {
  const words = hint ?? name;
  return (
    <Hint text={keys ? `${words} (${keys})` : words}>
      <button
        type="button"
        className={bordered ? "button icon" : "button icon bare"}
        aria-label={name}
        aria-pressed={pressed}
        disabled={disabled}
        onClick={onPress}
      >
        <Icon size={18} aria-hidden />
      </button>
    </Hint>
  );
}
