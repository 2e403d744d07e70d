/** Everything in one page that works from the disk: scripts, styles, workers and the icon go into it. */
import { readFileSync } from "node:fs";
import type { Plugin, PluginOption } from "vite";
import { viteSingleFile } from "vite-plugin-singlefile";
import { withPolicyInside } from "./policy.ts";

const ICON = new URL("../public/icon.svg", import.meta.url);

/** The plugins that make the file `fileName`, in the order they must stand. */
export function singleFile(fileName: string): PluginOption[] {
  return [workersInside(), headInside(), viteSingleFile(), finished(fileName)];
}

/** A page from the disk may load no worker from beside it, but may make one of a text that it holds. */
function workersInside(): Plugin {
  const TEXT = "\0text-as-address:";
  return {
    name: "downlead:workers-inside",
    enforce: "pre",
    async resolveId(source, importer) {
      if (source.endsWith("?worker")) return this.resolve(`${source}&inline`, importer, { skipSelf: true });
      if (!source.endsWith(".js?url")) return null;
      const file = await this.resolve(source.replace(/\?url$/, ""), importer, { skipSelf: true });
      return file && TEXT + file.id;
    },
    load(id) {
      if (!id.startsWith(TEXT)) return null;
      const file = JSON.stringify(`${id.slice(TEXT.length)}?raw`);
      return `import text from ${file};
export default URL.createObjectURL(new Blob([text], { type: "text/javascript" }));`;
    },
  };
}

/** The icon as a part of the page; what a home screen would want needs a server anyway. */
function headInside(): Plugin {
  return {
    name: "downlead:head-inside",
    transformIndexHtml: {
      order: "pre",
      handler: (page) => {
        const icon = encodeURIComponent(readFileSync(ICON, "utf8").trim());
        return page
          .replace(/<link rel="apple-touch-icon"[^>]*>\s*/, "")
          .replace("/icon.svg", () => `data:image/svg+xml,${icon}`);
      },
    },
  };
}

/** Gives the page its policy, which depends on every letter in it, and its name. */
function finished(fileName: string): Plugin {
  return {
    name: "downlead:single-file",
    enforce: "post",
    generateBundle: {
      order: "post",
      handler(_, bundle) {
        const page = bundle["index.html"];
        if (page?.type !== "asset") this.error("There is no page to make one file of.");
        const source = withPolicyInside(String(page.source));
        delete bundle["index.html"];
        this.emitFile({ type: "asset", fileName, source });
        const beside = Object.keys(bundle).filter((name) => name !== fileName);
        if (beside.length > 0) this.error(`Not inside the single file: ${beside.join(", ")}.`);
      },
    },
  };
}
