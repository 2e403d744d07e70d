/**
 * `test` and `expect` for every specification: a test also fails when its page asks another origin for anything,
 * breaks the page's own content policy, throws, or complains in the console.
 */
import { type BrowserContext, test as base, expect, type Page } from "@playwright/test";

export { expect };

export const test = base.extend<{ watched: undefined }>({
  watched: [
    async ({ context, baseURL }, use) => {
      const complaints = await watch(context, baseURL);
      await use(undefined);
      expect(complaints, "what the page did or said that it may not").toEqual([]);
    },
    { auto: true },
  ],
});

/** Collects what pages and workers of a context do amiss; for a second browser within a test, before it opens a page. */
export async function watch(context: BrowserContext, home = ""): Promise<readonly string[]> {
  const complaints: string[] = [];
  context.on("request", (request) => {
    if (isForeign(request.url(), home)) complaints.push(`asked for ${request.url()}`);
  });
  context.on("weberror", (error) => complaints.push(`threw ${error.error().message}`));
  context.on("console", (message) => {
    if (message.type() !== "error" && message.type() !== "warning") return;
    if (message.text() !== BLOCKED) complaints.push(message.text());
  });
  context.on("page", (page) => page.on("worker", (worker) => void watchPolicyIn(worker)));
  await context.addInitScript(tellOfPolicy);
  return complaints;
}

/** What the driver itself says where it keeps a service worker away. */
const BLOCKED = "Service Worker registration blocked by Playwright";

/** Data and blobs are made by the page itself; a file has no host to ask. */
function isForeign(address: string, home: string): boolean {
  const url = new URL(address);
  if (["data:", "blob:", "about:"].includes(url.protocol)) return false;
  if (url.protocol === "file:") return home.startsWith("http");
  return home === "" || url.origin !== new URL(home).origin;
}

/** Runs in the page, before its own scripts. */
function tellOfPolicy(): void {
  globalThis.addEventListener("securitypolicyviolation", (event) => {
    // biome-ignore lint/suspicious/noConsole: the console is the way out of a page and of a worker alike.
    console.error(`broke the policy: ${event.effectiveDirective} ${event.blockedURI} ${event.sample}`);
  });
}

async function watchPolicyIn(worker: ReturnType<Page["workers"]>[number]): Promise<void> {
  // A worker that has ended already has nothing more to tell.
  await worker.evaluate(tellOfPolicy).catch(() => undefined);
}
