/** A kept value in memory, which several windows share, as they do in a browser. */
import type { SharedValuePlace } from "../../../src/store/documents/sharedValue.ts";

export type MemoryStorage = {
  kept: unknown;
  /** One more window on the same storage. */
  readonly window: () => SharedValuePlace;
};

export function memoryStorage(start?: unknown): MemoryStorage {
  const windows = new Set<{ heard: () => void }>();
  const storage: MemoryStorage = {
    kept: start,
    window: () => {
      const own = { heard: () => {} };
      windows.add(own);
      return {
        read: async () => structuredClone(storage.kept),
        update: async (step) => {
          // The storage answers later; what it does then, it does in one go.
          await Promise.resolve();
          storage.kept = structuredClone(step(structuredClone(storage.kept)));
          for (const other of windows) if (other !== own) other.heard();
          return structuredClone(storage.kept);
        },
        listen: (heard) => {
          own.heard = heard;
        },
      };
    },
  };
  return storage;
}

export const deniedPlace: SharedValuePlace = {
  read: () => Promise.reject(new DOMException("no", "SecurityError")),
  update: () => Promise.reject(new DOMException("no", "SecurityError")),
  listen: () => {},
};

export const settled = () => new Promise((resolve) => setTimeout(resolve, 0));
