// @vitest-environment happy-dom
/** Taking a new version: nothing that was drawn may go with the old page. */
import { beforeEach, expect, test, vi } from "vitest";
import { useApp } from "../../../../src/store/app.ts";
import { useDocuments } from "../../../../src/store/documents/documents.ts";
import {
  dismissNewVersion,
  registerOffline,
  takeNewVersion,
} from "../../../../src/ui/features/offline/newVersion.ts";
import { useOfflineState } from "../../../../src/ui/kit/told/offlineState.ts";

type Told = { readonly onNeedRefresh: () => void };

const { steps, told } = vi.hoisted(() => ({ steps: [] as string[], told: [] as Told[] }));
vi.mock("virtual:pwa-register", () => ({
  registerSW: (options: Told) => {
    told.push(options);
    return async () => void steps.push("activated");
  },
}));

beforeEach(() => {
  steps.length = 0;
  useApp.setState({ notices: [] });
  useDocuments.setState({ state: "saved", list: [], flush: async () => void steps.push("stored") });
  useOfflineState.setState({ newVersion: "none" });
  registerOffline();
});

const comesUp = () => told.at(-1)?.onNeedRefresh();

test("a new version is only offered when it comes up, and can be left for later", () => {
  comesUp();
  expect(useOfflineState.getState().newVersion).toBe("waits");
  expect(steps).toEqual([]);
  dismissNewVersion();
  expect(useOfflineState.getState().newVersion).toBe("none");
});

test("all is stored before the new version is taken", async () => {
  comesUp();
  await takeNewVersion();
  expect(steps).toEqual(["stored", "activated"]);
});

test("a field that is being typed in hands over what it holds before all is stored", async () => {
  const field = document.body.appendChild(document.createElement("input"));
  field.addEventListener("blur", () => steps.push("handed over"));
  field.focus();
  comesUp();
  await takeNewVersion();
  expect(steps).toEqual(["handed over", "stored", "activated"]);
});

test.each([
  ["nothing can be stored", { state: "unavailable" }],
  [
    "a design is in this window only",
    { list: [{ id: "a", title: "A", changed: 0, parts: 0, revision: 1, onlyHere: true }] },
  ],
] as const)("where %s, the old version stays and says why", async (_, storage) => {
  useDocuments.setState(storage);
  comesUp();
  await takeNewVersion();
  expect(steps).not.toContain("activated");
  expect(useApp.getState().notices).toEqual([expect.objectContaining({ tone: "error" })]);
});
