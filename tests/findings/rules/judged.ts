/** A design judged by other limits than the usual ones. */
import type { Design } from "../../../src/design/design.ts";
import { SETTINGS } from "../../../src/design/settings.ts";

export function judgedBy(limits: "en60728" | "rd346" | "practice", design: Design): Design {
  return { ...design, settings: SETTINGS.parse({ limits }) };
}
