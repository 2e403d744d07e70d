/** The usual cautions, in general words. They defer to local codes and to licensed practice. */
import type { Caution } from "./contract.ts";

export type CautionText = { readonly title: string; readonly sentences: readonly string[] };

export const CAUTIONS: Readonly<Record<Caution, CautionText>> = {
  mains: {
    title: "Mains",
    sentences: [
      "Only a competent electrician works on mains wiring.",
      "Isolate before opening a unit; a unit of protection class I needs its earth.",
      "Place mains units where they stay dry and cool.",
    ],
  },
  height: {
    title: "Work at height and lightning",
    sentences: [
      "Roofs and ladders are for trained people with fall protection, never in wind or near overhead lines.",
      "A mast outside the protected zone of a building needs its own lightning earthing conductor by the shortest way.",
      "Leave the roof when a thunderstorm comes near.",
    ],
  },
  bonding: {
    title: "Equipotential bonding",
    sentences: [
      "Screens of all cables, mast and equipment are connected by a bonding conductor to the main earthing terminal.",
      "The bonding must hold when any one unit is taken out, so use an earth bar.",
      "Leakage currents of many receivers add up on the screen: bond before you touch both sides of an open joint.",
    ],
  },
};

/** Stands wherever results are shown or printed. */
export const ESTIMATE_NOTICE =
  "This is an estimate, not a measurement and not an approval. Local codes and licensed practice decide.";
