/** Whether the browser promises not to clear the storage by itself. */
import { readValue, updateValue } from "./database.ts";

export type Persisted = "granted" | "denied" | "unknown";

export type Persistence = {
  /** How things stand, without asking anybody. */
  readonly state: () => Promise<Persisted>;
  /** Asks the browser, which may ask the user. `isAnswer`: it was asked now and not before. */
  readonly ask: () => Promise<{ readonly persisted: Persisted; readonly isAnswer: boolean }>;
};

const ASKED = "asked-to-keep";

export function browserPersistence(): Persistence {
  const state = async (): Promise<Persisted> => ((await manager()?.persisted()) ? "granted" : "unknown");
  return {
    state,
    ask: async () => {
      // Some browsers ask the user each time: once is enough.
      if (await readValue(ASKED)) return { persisted: await state(), isAnswer: false };
      await updateValue(ASKED, () => true);
      const granted = await manager()?.persist();
      if (granted === undefined) return { persisted: "unknown", isAnswer: false };
      return { persisted: granted ? "granted" : "denied", isAnswer: true };
    },
  };
}

/** Pages served by plain http have none. */
function manager(): StorageManager | undefined {
  return globalThis.navigator?.storage;
}

/** What it means, for the user. */
export function persistenceWords(persisted: Persisted): string {
  switch (persisted) {
    case "granted":
      return "This browser keeps your designs until you delete them or clear its data.";
    case "denied":
      return "This browser may clear your designs by itself when the disk is nearly full. Download a file of what matters.";
    case "unknown":
      return "Your designs are kept in this browser. It has not promised to keep them when the disk is nearly full.";
  }
}
