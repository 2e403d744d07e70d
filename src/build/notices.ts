/**
 * The licences of all that is not ours and goes into what is shipped. Vite lists the packages in the bundle with their
 * texts; what it cannot know is added, and all is put into the page's own list (src/ui/features/licences/packages.ts).
 */
import type { Plugin } from "vite";
import { type Installed, installed, type LicenceNotice, noticeOf } from "./licenceTexts.ts";

/** The file that Vite is asked to write (`build.license`); it goes into the page and is not shipped beside it. */
export const LISTED = "licences.json";

/** Tools that leave some lines of their own in what they build. */
const TOOLS = ["vite", "rolldown"];
/** Files that a style sheet asks for are no modules of the bundle. */
const TYPEFACES = ["@fontsource-variable/inter"];
/** What the service worker consists of, which is built apart from the page. */
const SERVICE_WORKER = [
  "vite-plugin-pwa",
  "workbox-core",
  "workbox-precaching",
  "workbox-routing",
  "workbox-strategies",
];

/** The text that stands in the page's list until the packages are known, with its quotes. */
const PLACE = /(["'`])\[\{\\?"name\\?":\\?"Listed in the built page only[^\]]*\]\1/;

/** `hasServiceWorker`: whether one is built for this page. */
export function notices({ hasServiceWorker }: { readonly hasServiceWorker: boolean }): Plugin {
  return {
    name: "downlead:notices",
    apply: "build",
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const file = bundle[LISTED];
        if (file?.type !== "asset") return this.error("Vite has not listed the licences.");
        const listed: readonly Installed[] = JSON.parse(String(file.source));
        const apart = [...TOOLS, ...TYPEFACES, ...(hasServiceWorker ? SERVICE_WORKER : [])].map(installed);
        const text = JSON.stringify([...listed, ...apart].map(noticeOf).sort(byName));
        delete bundle[LISTED];
        const chunks = Object.values(bundle).filter((output) => output.type === "chunk");
        const holder = chunks.find((chunk) => PLACE.test(chunk.code));
        if (!holder) return this.error("There is no list to put the licences into.");
        holder.code = holder.code.replace(PLACE, () => JSON.stringify(text));
      },
    },
  };
}

function byName(a: LicenceNotice, b: LicenceNotice): number {
  return a.name < b.name ? -1 : Number(a.name > b.name);
}
