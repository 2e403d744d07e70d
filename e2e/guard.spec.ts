/** The guard of all other tests: it sees what a page may not do, and the built page's policy forbids it. */
import { expect, test, watch } from "./test.ts";

test("a request to elsewhere, by the page or a worker, an error and a complaint are seen", async ({
  browser,
  baseURL,
}) => {
  const context = await browser.newContext();
  const seen = await watch(context, baseURL);
  await context.route(/\.invalid\//, (route) =>
    route.fulfill({ headers: { "access-control-allow-origin": "*" } }),
  );
  const page = await context.newPage();
  // An empty page has no policy of its own.
  await page.goto("about:blank");
  await page.evaluate(() => fetch("http://page.invalid/"));
  await page.evaluate(() => {
    const work = new Blob(['fetch("http://worker.invalid/")'], { type: "text/javascript" });
    new Worker(URL.createObjectURL(work));
    setTimeout(() => {
      throw new Error("thrown on purpose");
    });
  });
  await expect
    .poll(() => seen)
    .toEqual(
      expect.arrayContaining([
        "asked for http://page.invalid/",
        "asked for http://worker.invalid/",
        "threw thrown on purpose",
      ]),
    );
  await context.close();
});

test("the policy of the page lets nothing out, and no code or style in", async ({ browser, baseURL }) => {
  const context = await browser.newContext();
  const seen = await watch(context, baseURL);
  const page = await context.newPage();
  await page.goto("/?example=house-universal");
  await expect(page.getByText(/^All \d+ receivers work/).first()).toBeVisible();
  expect(seen).toEqual([]);
  const broken = async (directive: string, attempt: () => unknown) => {
    await page.evaluate(attempt).catch(() => undefined);
    await expect.poll(() => seen.join("\n"), directive).toContain(`broke the policy: ${directive} `);
  };
  await broken("connect-src", () => fetch("/icon.svg"));
  // Later, for what the driver itself runs is exempt.
  // biome-ignore lint/security/noGlobalEval: what must be refused.
  await broken("script-src", () => setTimeout(() => globalThis.eval("1")));
  await broken("script-src-elem", () =>
    document.body.append(Object.assign(document.createElement("script"), { text: "1" })),
  );
  await broken("style-src-elem", () =>
    document.head.append(Object.assign(document.createElement("style"), { textContent: "p {}" })),
  );
  await broken("style-src-attr", () => document.body.setAttribute("style", "color: red"));
  await broken("img-src", () => Object.assign(new Image(), { src: "https://elsewhere.invalid/x.png" }));
  await broken("worker-src", () => new Worker("data:text/javascript,1"));
  await broken("frame-src", () =>
    document.body.append(
      Object.assign(document.createElement("iframe"), { src: "https://elsewhere.invalid/" }),
    ),
  );
  await broken("form-action", () =>
    document.body
      .appendChild(Object.assign(document.createElement("form"), { action: "https://elsewhere.invalid/" }))
      .submit(),
  );
  await broken("base-uri", () =>
    document.head.append(
      Object.assign(document.createElement("base"), { href: "https://elsewhere.invalid/" }),
    ),
  );
  await context.close();
});

test("the canvas library's name stands in the lower right corner and leads to a tab of its own", async ({
  page,
}) => {
  await page.goto("/?example=house-universal");
  const link = page.getByRole("link", { name: "React Flow attribution" });
  await expect(link).toHaveAttribute("target", "_blank");
  await expect(link).toHaveAttribute("rel", "noopener noreferrer");
  // No stop for the keyboard between drawing and tools (HTML: a negative tabindex).
  await expect(link).toHaveAttribute("tabindex", "-1");
  const [name, canvas] = [await link.boundingBox(), await page.locator(".react-flow").boundingBox()];
  const right = (box: typeof name) => (box ? box.x + box.width : Number.NaN);
  const bottom = (box: typeof name) => (box ? box.y + box.height : Number.NaN);
  expect(Math.abs(right(name) - right(canvas))).toBeLessThan(10);
  expect(Math.abs(bottom(name) - bottom(canvas))).toBeLessThan(10);
  expect(name?.height).toBeLessThan(20);
  await page.getByRole("button", { name: "Help", exact: true }).click();
  await expect(page.getByRole("dialog").getByRole("link", { name: "React Flow" })).toBeAttached();
});
