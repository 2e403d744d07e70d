/** Walks the steps in one browser. */
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, inject, test } from "vitest";
import type { Engine, Page } from "./engine.ts";
import { type Server, serve } from "./server.ts";
import { STEPS } from "./steps.ts";

/** Where a browser is missing its steps are skipped; on a machine that decides over a change, that is a failure. */
export function smoke(engine: Engine): void {
  describe.skipIf(!engine.isHere() && process.env.CI === undefined)(engine.name, () => {
    let server: Server;
    let browser: Awaited<ReturnType<Engine["start"]>>;
    let page: Page;
    beforeAll(async () => {
      server = await serve(inject("app"));
      browser = await engine.start();
    });
    afterAll(async () => {
      await browser?.close();
      server?.close();
    });
    beforeEach(async () => {
      page = await browser.newPage();
    });
    afterEach(() => page.close());

    for (const { name, walk, complaint } of STEPS)
      test(name, async () => {
        await walk({ page, app: server.address, newPage: browser.newPage });
        const complaints = server.complaints();
        // Where a complaint is due, it also shows that complaints of this browser are heard.
        if (complaint) expect(complaints.join("\n"), "what the page complained of").toMatch(complaint);
        else expect(complaints, "what the page complained of").toEqual([]);
      });
  });
}
