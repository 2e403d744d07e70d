/** A web server for one folder that a test can stop, and let serve a newer version. */
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import { extname, join } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  ".html": "text/html",
  ".js": "text/javascript",
  ".css": "text/css",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

export type Served = {
  /** Of the page: in a folder of the server, not at its root. */
  readonly address: string;
  /** From now on serves one file as changed. */
  readonly change: (name: string, how: (text: string) => string) => Promise<void>;
  /** Nobody answers at the address any more. */
  readonly stop: () => Promise<void>;
};

export async function serve(folder: string): Promise<Served> {
  const changed = new Map<string, string>();
  const under = "/tools/drawing/";
  const server = createServer(async (request, response) => {
    const { pathname } = new URL(request.url ?? "/", "http://localhost");
    const name = pathname.slice(under.length) || "index.html";
    const content = changed.get(name) ?? (await readFile(join(folder, name)).catch(() => null));
    if (!pathname.startsWith(under) || content === null) return response.writeHead(404).end();
    return response.writeHead(200, { "content-type": TYPES[extname(name)] ?? "text/plain" }).end(content);
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const at = server.address();
  if (at === null || typeof at === "string") throw new Error("The server has no port.");
  return {
    address: `http://127.0.0.1:${at.port}${under}`,
    change: async (name, how) => {
      changed.set(name, how(changed.get(name) ?? (await readFile(join(folder, name), "utf8"))));
    },
    stop: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
