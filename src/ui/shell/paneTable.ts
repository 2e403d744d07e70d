/** Every pane, in one table: tabs, bottom sheet, rail and the keys between regions read it. */
import {
  Activity,
  LayoutGrid,
  ListTree,
  type LucideIcon,
  SlidersHorizontal,
  Stamp,
  Unplug,
  Wrench,
} from "lucide-react";
import type { ComponentType } from "react";
import { ChainPane } from "../features/chain/ChainPane.tsx";
import { Inspector } from "../features/inspector/Inspector.tsx";
import { Tray } from "../features/tray/Tray.tsx";
import { VerdictPane } from "../features/verdict/VerdictPane.tsx";
import type { SheetPane, SidePane } from "../kit/panes.ts";
import { LaterCures, LaterFaults } from "./LaterPanes.tsx";
import { LowerPane } from "./LowerPane.tsx";

export type Pane<Id extends SheetPane = SheetPane> = {
  readonly id: Id;
  readonly name: string;
  readonly icon: LucideIcon;
  /** Where it stands at a desk; on a narrow screen every pane stands in the sheet. */
  readonly place: "rail" | "side" | "below";
  readonly component: ComponentType;
};

export const SIDE_PANES: readonly Pane<SidePane>[] = [
  { id: "verdict", name: "Verdict", icon: Stamp, place: "side", component: VerdictPane },
  { id: "part", name: "Part", icon: SlidersHorizontal, place: "side", component: Inspector },
  { id: "chain", name: "Chain", icon: ListTree, place: "side", component: ChainPane },
  { id: "cures", name: "Cures", icon: Wrench, place: "side", component: LaterCures },
  { id: "faults", name: "Faults", icon: Unplug, place: "side", component: LaterFaults },
];

export const PANES: readonly Pane[] = [
  { id: "tray", name: "Parts", icon: LayoutGrid, place: "rail", component: Tray },
  ...SIDE_PANES,
  { id: "spectrum", name: "Spectrum", icon: Activity, place: "below", component: LowerPane },
];
