/** The packages of others in what is shipped; fetched only when someone asks for them. */
import type { LicenceNotice } from "../../../build/licenceTexts.ts";

/** The build puts its list in the place of this one (src/build/notices.ts). */
const LIST = '[{"name":"Listed in the built page only","version":"","identifier":"","text":""}]';

export function packagesOfOthers(): readonly LicenceNotice[] {
  return JSON.parse(LIST);
}
