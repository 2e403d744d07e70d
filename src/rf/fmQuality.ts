/** How an FM station sounds: FM gets worse by degrees, where a digital signal is there or gone. */

/** "heard": through clear hiss; "good": hiss in quiet passages; "clean": none that an ear finds. */
export type FmStep = "heard" | "good" | "clean";

/** From the poorest to the best. */
export const FM_STEPS: readonly FmStep[] = ["heard", "good", "clean"];

/**
 * Least C/N of each step in 200 kHz [dB]. Heard: the threshold of FM, 10 to 12 dB, from memory. Stereo needs about 20 dB
 * more than mono for the same hiss, from memory. Good in stereo: Spanish Royal Decree 346/2011, Annex I 4.5. Clean:
 * EN 60728-1, from memory.
 */
export const FM_CN_DB: Readonly<Record<"mono" | "stereo", Readonly<Record<FmStep, number>>>> = {
  mono: { heard: 12, good: 18, clean: 38 },
  stereo: { heard: 12, good: 38, clean: 48 },
};

/**
 * The best step that a station reaches; undefined below the threshold. `isClear`: no neighbour is heard in it, else it
 * is no better than heard.
 */
export function fmStep(o: { cnDb: number; stereo: boolean; isClear: boolean }): FmStep | undefined {
  const least = FM_CN_DB[o.stereo ? "stereo" : "mono"];
  if (o.cnDb < least.heard) return undefined;
  if (!o.isClear || o.cnDb < least.good) return "heard";
  return o.cnDb < least.clean ? "good" : "clean";
}
