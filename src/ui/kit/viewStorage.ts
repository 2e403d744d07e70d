/** Where view settings are kept on this device: local storage, or nowhere in a browser that denies it. */
import { createJSONStorage, type PersistStorage, type StateStorage } from "zustand/middleware";

export const keptTexts: StateStorage = {
  getItem: (key) => {
    try {
      return localStorage.getItem(key);
    } catch {
      return null;
    }
  },
  setItem: (key, value) => {
    try {
      localStorage.setItem(key, value);
    } catch {
      // Not remembered, but in force until the page closes.
    }
  },
  removeItem: (key) => {
    try {
      localStorage.removeItem(key);
    } catch {
      // Nothing was kept there.
    }
  },
};

/** For the `storage` of a persisted store that keeps a `T`. */
export function viewStorage<T>(): PersistStorage<T> | undefined {
  return createJSONStorage<T>(() => keptTexts);
}
