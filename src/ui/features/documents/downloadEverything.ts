/** Everything in this browser out to one file, and what such a file holds back in. */
import { create } from "zustand";
import { useApp } from "../../../store/app.ts";
import {
  ARCHIVE_LIMITS,
  type Archive,
  packArchive,
  unpackArchive,
} from "../../../store/documents/archive.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { pricesToAdd, usePrices } from "../../../store/prices.ts";
import { casesToAdd, useTraining } from "../../../store/training.ts";
import { download } from "../../kit/download.ts";
import { counted } from "../../kit/format.ts";
import { openDialog } from "../../kit/panes.ts";
import { pickFile } from "../../kit/pickFile.ts";
import { setTheme, useThemeChoice } from "../../kit/theme.ts";

/** A download that was read, and waits for the user to agree. */
export type PendingRestore = {
  readonly made: number;
  readonly archive: Archive;
  readonly keptOut: readonly string[];
};

export const usePendingRestore = create<{ readonly offer: PendingRestore | null }>(() => ({ offer: null }));

export async function downloadEverything(): Promise<void> {
  const { notify } = useApp.getState();
  await loadKept();
  const documents = await useDocuments
    .getState()
    .everything()
    .catch(() => null);
  if (!documents) {
    notify("The browser’s storage does not hand out the designs. Download the open one as a file.", "error");
    return;
  }
  const { prices, currency } = usePrices.getState();
  const { progress: practice } = useTraining.getState();
  const settings = { theme: useThemeChoice.getState().choice };
  const now = new Date();
  const text = packArchive({ documents, prices, currency, practice, settings }, now.getTime());
  const day = [now.getFullYear(), now.getMonth() + 1, now.getDate()].map((n) => `${n}`.padStart(2, "0"));
  download(text, `downlead-everything-${day.join("-")}.json`);
  notify(`Downloaded: ${counted(documents.length, "design")}, your prices, practice and settings.`);
}

/** Asks for a file and shows what adding it would bring. */
export async function chooseDownload(): Promise<void> {
  const file = await pickFile();
  if (!file) return;
  const { notify } = useApp.getState();
  // UTF-8 takes up to four bytes a character: beyond that, reading the file would be in vain.
  const text = file.size > ARCHIVE_LIMITS.textLength * 4 ? null : await file.text().catch(() => null);
  if (text === null) {
    notify(`“${file.name}” could not be read, or it is too large.`, "error");
    return;
  }
  const unpacked = await unpackArchive(text, breathing());
  if (!unpacked.ok) {
    notify(unpacked.problem, "error");
    return;
  }
  await loadKept();
  usePendingRestore.setState({ offer: unpacked });
  openDialog("restore");
}

/** What adding the download brings that is not here: in words, for the user to agree to. */
export function restoreGains({ archive }: PendingRestore): readonly string[] {
  const { documents, practice, settings } = archive;
  const revisions = documents.reduce((n, document) => n + document.revisions.length, 0);
  const prices = pricesToAdd(usePrices.getState(), archive).length;
  const cases = casesToAdd(useTraining.getState().progress, practice).length;
  return [
    ...(documents.length > 0 ? [counted(documents.length, "design")] : []),
    ...(revisions > 0 ? [counted(revisions, "revision")] : []),
    ...(prices > 0 ? [`prices of ${counted(prices, "kind of part")}`] : []),
    ...(cases > 0 ? [`practice in ${counted(cases, "case")}`] : []),
    ...(themeToTake(settings) ? ["the choice of light or dark"] : []),
  ];
}

export async function restorePending(): Promise<void> {
  const { offer } = usePendingRestore.getState();
  if (!offer) return;
  const { notify } = useApp.getState();
  const { archive } = offer;
  const words = restoreGains(offer);
  openDialog(null);
  usePendingRestore.setState({ offer: null });
  const problem = await useDocuments.getState().takeIn(archive.documents);
  usePrices.getState().takeIn(archive);
  useTraining.getState().takeIn(archive.practice);
  const theme = themeToTake(archive.settings);
  if (theme) setTheme(theme);
  if (problem !== null) {
    notify(`Not all designs could be added. ${problem}`, "error");
    return;
  }
  notify(`Added: ${inOneLine(words)}.`);
  openDialog("designs");
}

export function inOneLine(words: readonly string[]): string {
  return new Intl.ListFormat("en", { type: "conjunction" }).format(words);
}

/** A choice made here stays; only “as the system”, which nobody needs to have chosen, gives way. */
function themeToTake({ theme }: Archive["settings"]): "light" | "dark" | null {
  if (useThemeChoice.getState().choice !== "system") return null;
  return theme === "light" || theme === "dark" ? theme : null;
}

function loadKept(): Promise<unknown> {
  return Promise.all([usePrices.getState().load(), useTraining.getState().load()]);
}

/** Gives the page a turn now and then. */
function breathing(): () => Promise<void> {
  let last = performance.now();
  return async () => {
    if (performance.now() - last < 20) return;
    await new Promise((resolve) => setTimeout(resolve));
    last = performance.now();
  };
}
