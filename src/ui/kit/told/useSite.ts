import { useEffect, useState } from "react";
import type { Design } from "../../../design/design.ts";
import { type Site, siteOf } from "../../../remedies/site.ts";

const sites = new WeakMap<Design["parts"], { readonly wires: Design["wires"]; readonly site: Site }>();

/** What a design comes to. Worked out once, and after the screen has been drawn; undefined until then. */
export function useSite(design: Design | undefined): Site | undefined {
  const [site, setSite] = useState<Site | undefined>(() => design && knownSite(design));
  useEffect(() => {
    const known = design && knownSite(design);
    setSite(known);
    if (!design || known) return;
    const timer = setTimeout(() => setSite(currentSite(design)), 0);
    return () => clearTimeout(timer);
  }, [design]);
  return site;
}

/** The same, at once. */
export function currentSite(design: Design): Site {
  const known = knownSite(design);
  if (known) return known;
  const site = siteOf(design);
  sites.set(design.parts, { wires: design.wires, site });
  return site;
}

/** Title and the names of variants don't matter; parts, wires and settings do. */
function knownSite(design: Design): Site | undefined {
  const known = sites.get(design.parts);
  const isSame = known?.wires === design.wires && known.site.design.settings === design.settings;
  return isSame ? known.site : undefined;
}
