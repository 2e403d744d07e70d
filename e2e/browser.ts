/** Which browser the end-to-end tests drive, and how one is had where there is none. */
import { spawnSync } from "node:child_process";
import { existsSync, statSync } from "node:fs";
import { delimiter, join } from "node:path";
import { chromium } from "@playwright/test";

/** A person's own choice comes first: the path of any Chromium-like browser. */
const CHOSEN = "DOWNLEAD_BROWSER";

const NAMES = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"];

/** Outside the search path, where installers put it on other systems. */
const USUAL_PLACES = [
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
  "C:\\Program Files (x86)\\Google\\Chrome\\Application\\chrome.exe",
];

/** Path of a browser that is on this machine: chosen, installed on the system, or downloaded by Playwright. */
export function findBrowser(): string | undefined {
  const chosen = process.env[CHOSEN];
  if (chosen) return chosen;
  const folders = ["/usr/bin", ...(process.env.PATH ?? "").split(delimiter)];
  const onPath = folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
  return [...onPath, ...USUAL_PLACES, chromium.executablePath()].find(isFile);
}

/** As above, and installs one where there is none. Says what it does; throws with advice when nothing helps. */
export function ensureBrowser(say: (line: string) => void): string {
  const found = findBrowser();
  if (found !== undefined) {
    const trouble = whyNotStarting(found);
    if (trouble === undefined) return found;
    // Its owner chose it: going on with another one would hide the mistake.
    if (process.env[CHOSEN]) throw new Error(`${CHOSEN} names ${found}, which does not start: ${trouble}`);
    say(`${found} does not start: ${trouble}`);
  }

  for (const { command, args, possible } of INSTALLERS) {
    if (!possible()) continue;
    say(`No browser yet; trying: ${command} ${args.join(" ")}`);
    spawnSync(command, args, {
      stdio: ["ignore", "inherit", "inherit"],
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
      timeout: 300_000,
    });
    const installed = findBrowser();
    if (installed !== undefined && whyNotStarting(installed) === undefined) return installed;
  }
  throw new Error(
    `The end-to-end tests need a Chromium browser and none could be installed. Install the package "chromium" ` +
      `(or run "npx playwright install --with-deps chromium"), or set ${CHOSEN} to the path of one.`,
  );
}

const isRootWithApt = (): boolean => process.getuid?.() === 0 && existsSync("/usr/bin/apt-get");

const INSTALLERS = [
  { command: "npx", args: ["playwright", "install", "chromium"], possible: () => true },
  { command: "apt-get", args: ["update"], possible: isRootWithApt },
  { command: "apt-get", args: ["install", "-y", "chromium", "fonts-liberation"], possible: isRootWithApt },
];

function isFile(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isFile() ?? false;
}

/** A downloaded browser may lack system libraries, and a package may be an empty shell: ask for its version. */
function whyNotStarting(path: string): string | undefined {
  // On Windows the question opens a window instead of answering.
  if (process.platform === "win32") return undefined;
  const answer = spawnSync(path, ["--version"], { encoding: "utf8", timeout: 30_000 });
  if (answer.status === 0) return undefined;
  return answer.error?.message ?? answer.stderr.trim().split("\n")[0] ?? `it ended with ${answer.status}`;
}
