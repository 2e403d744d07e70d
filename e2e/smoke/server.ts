/**
 * Serves the built app, and hears what the page complains of: the same way for every browser. Under /older/ the browser
 * lacks what one before the supported ones lacks, under /broken/ no script of the app can be had.
 */
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join, normalize } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".txt": "text/plain; charset=utf-8",
};

/** Put before everything else of the page: errors, refused promises, violations, and what goes to the console. */
function listen(): void {
  // As a picture: the page's policy allows no other way out.
  const tell = (what: string) => {
    new Image().src = `/complaints?${encodeURIComponent(what.slice(0, 1000))}`;
  };
  let isLeaving = false;
  addEventListener("beforeunload", () => {
    isLeaving = true;
  });
  addEventListener(
    "error",
    (event) => {
      // A page that is left breaks off what it still loads at leisure; some browsers call that an error (not of a script).
      if (isLeaving && !(event instanceof ErrorEvent)) return;
      const missing = event.target instanceof Element ? event.target.outerHTML.slice(0, 200) : null;
      // Said by browsers where a size changes twice within a frame: nothing is lost.
      if (!/ResizeObserver loop/.test(event.message))
        tell(missing ? `not loaded: ${missing}` : `error: ${event.message}`);
    },
    true,
  );
  addEventListener("unhandledrejection", (event) => tell(`refused: ${event.reason}`));
  addEventListener("securitypolicyviolation", (event) =>
    tell(`policy: ${event.violatedDirective} ${event.blockedURI}`),
  );
  for (const grade of ["error", "warn"] as const) {
    console[grade] = (...words: unknown[]) => tell(`console: ${words.map(String).join(" ")}`);
  }
}

export type Server = {
  readonly address: string;
  /** What was complained of since it was last asked. */
  readonly complaints: () => readonly string[];
  readonly close: () => void;
};

export async function serve(folder: string): Promise<Server> {
  let complaints: string[] = [];
  const server = createServer(async (request, response) => {
    const { pathname, search } = new URL(request.url ?? "/", "http://localhost");
    if (SCRIPTS[pathname]) {
      response.writeHead(200, { "content-type": "text/javascript" }).end(`(${SCRIPTS[pathname]})();`);
      return;
    }
    if (pathname === "/complaints") {
      complaints.push(decodeURIComponent(search.slice(1)));
      response.writeHead(204).end();
      return;
    }
    const [, ill, rest = pathname] = /^\/(older|broken)(\/.*)/.exec(pathname) ?? [];
    const name = rest.endsWith("/") ? `${rest}index.html` : rest;
    try {
      if (ill === "broken" && name.endsWith(".js")) throw new Error("not to be had");
      const content = await readFile(join(folder, normalize(name)));
      response.writeHead(200, { "content-type": TYPES[extname(name)] ?? "application/octet-stream" });
      response.end(name.endsWith(".html") ? withScript(content.toString(), ill === "older") : content);
    } catch {
      response.writeHead(404).end();
    }
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const place = server.address();
  return {
    address: `http://127.0.0.1:${typeof place === "object" && place ? place.port : 0}/`,
    complaints: () => {
      const since = complaints;
      complaints = [];
      return since;
    },
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}

const SCRIPTS: Readonly<Record<string, () => void>> = {
  "/listen.js": listen,
  /** As Safari before 16.4 is. */
  "/older.js": () => Reflect.deleteProperty(globalThis, "CompressionStream"),
};

function withScript(html: string, isOlder: boolean): string {
  const older = isOlder ? '<script src="/older.js"></script>' : "";
  return html.replace("<head>", `<head><script src="/listen.js"></script>${older}`);
}
