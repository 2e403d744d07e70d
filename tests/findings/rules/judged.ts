/** A design judged by other limits than the usual ones. */
import type { Design } from "../../../src/design/design.ts";
import { SETTINGS, type Settings } from "../../../src/design/settings.ts";

export function judgedBy(limits: Settings["limits"], design: Design, more: Partial<Settings> = {}): Design {
  return { ...design, settings: SETTINGS.parse({ limits, ...more }) };
}
