/** Where the two builds lie that the tests drive, and at which port the first is served. */
import { fileURLToPath } from "node:url";

/** Another port lets two runs on one machine keep out of each other's way; each has its own builds. */
export const PORT = Number(process.env.DOWNLEAD_E2E_PORT ?? 4174);

const place = (name: string) => fileURLToPath(new URL(`../.cache/e2e-${PORT}/${name}`, import.meta.url));

/** For a web server. */
export const HOSTED = place("hosted");
/** The folder of the single file. */
export const SINGLE = place("single");
