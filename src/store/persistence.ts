/** Whether the browser promises not to clear the storage by itself. */
import { readValue, updateValue } from "./database.ts";

export type Persisted = "granted" | "denied" | "unknown";

export type Persistence = {
  /** How things stand, without asking anybody. */
  readonly state: () => Promise<Persisted>;
  /** Asks the browser, which may ask the user. */
  readonly ask: () => Promise<Persisted>;
};

const ASKED = "asked-to-keep";

export function browserPersistence(): Persistence {
  const state = async () => ((await manager()?.persisted()) ? "granted" : "unknown");
  return {
    state,
    ask: async () => {
      // Some browsers ask the user each time: once is enough.
      if (await readValue(ASKED)) return await state();
      await updateValue(ASKED, () => true);
      const granted = await manager()?.persist();
      if (granted === undefined) return "unknown";
      return granted ? "granted" : "denied";
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
