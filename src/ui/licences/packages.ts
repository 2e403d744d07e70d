/** The packages of others in what is shipped; fetched only when someone asks for them. */
import type { Notice } from "../../build/licenceTexts.ts";

export type { Notice };

/** The build puts its list in the place of this one (src/build/notices.ts). */
const LIST = '[{"name":"Listed in the built page only","version":"","identifier":"","text":""}]';

export function packagesOfOthers(): readonly Notice[] {
  return JSON.parse(LIST);
}
