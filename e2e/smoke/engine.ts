/** What the smoke suite needs of a browser, whoever drives it. */

export type Point = { readonly x: number; readonly y: number };

/** One window of a profile of its own, driven as by a hand. */
export type Page = {
  readonly open: (address: string) => Promise<void>;
  /** Runs a function in the page and yields what it returns; it may use nothing from outside itself. */
  readonly ask: <T, A extends readonly unknown[]>(script: (...args: A) => T, ...args: A) => Promise<T>;
  readonly click: (at: Point) => Promise<void>;
  readonly drag: (from: Point, to: Point) => Promise<void>;
  readonly type: (text: string) => Promise<void>;
  readonly press: (key: "Enter" | "Delete" | "Tab") => Promise<void>;
  readonly resize: (width: number, height: number) => Promise<void>;
  readonly picture: (path: string) => Promise<void>;
  readonly close: () => Promise<void>;
};

export type Engine = {
  readonly name: "Chromium" | "Firefox" | "WebKit";
  /** What to install on Debian where it is missing. */
  readonly packages: string;
  readonly isHere: () => boolean;
  /** Starts the browser; every page is one of a new profile, without anything stored. */
  readonly start: () => Promise<{
    readonly newPage: () => Promise<Page>;
    readonly close: () => Promise<void>;
  }>;
};

export const WINDOW = { width: 1440, height: 900 };
