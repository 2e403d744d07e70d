/** A strip that opens its spectrum, reached by the arrow keys as everything in an overview. */
import type { ComponentProps } from "react";
import { WireStrip } from "../WireStrip.tsx";
import { useStop } from "./ItemButton.tsx";
import { stripItem } from "./skeleton.ts";

type Props = Omit<ComponentProps<typeof WireStrip>, "stop"> & {
  /** The thing that it belongs to. */
  readonly id: string;
};

export function StopStrip({ id, ...strip }: Props) {
  return <WireStrip {...strip} stop={useStop(stripItem(id))} />;
}
