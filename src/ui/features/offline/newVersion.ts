/** The page as the browser keeps it: whether it opens without network, and new versions, which wait until they are taken. */
import { registerSW } from "virtual:pwa-register";
import { useApp } from "../../../store/app.ts";
import { useDocuments } from "../../../store/documents/documents.ts";
import { useOfflineState } from "../../kit/told/offlineState.ts";

/** How often an open page asks for a new version, at most [ms]. */
const ASK_EVERY_MS = 3_600_000;

let activate: () => Promise<void> = async () => undefined;
let isAccepted = false;

/** Has the browser keep the page; call once. Does nothing where there is no service worker, as in a single file. */
export function registerOffline(): void {
  const stored = () => useOfflineState.setState({ kept: "stored" });
  activate = registerSW({
    onOfflineReady: stored,
    onNeedRefresh: () => useOfflineState.setState({ kept: "stored", newVersion: "waits" }),
    // When to load anew is decided below, for all windows.
    onNeedReload: () => undefined,
    onRegisteredSW: (_, registration) => {
      if (registration?.active) stored();
      if (registration) askAgain(registration);
    },
  });
  // Not there where the page came by plain http.
  navigator.serviceWorker?.addEventListener("controllerchange", () => {
    if (isAccepted) window.location.reload();
    else if (useOfflineState.getState().newVersion === "waits")
      useOfflineState.setState({ newVersion: "taken elsewhere" });
  });
}

/** Looks for a new version when the page is turned to after a while, and every hour. */
function askAgain(registration: ServiceWorkerRegistration): void {
  let askedAt = Date.now();
  const ask = () => {
    if (document.hidden || !navigator.onLine || Date.now() - askedAt < ASK_EVERY_MS) return;
    askedAt = Date.now();
    // Without an answer the next hour will do.
    registration.update().catch(() => undefined);
  };
  document.addEventListener("visibilitychange", ask);
  setInterval(ask, ASK_EVERY_MS);
}

/** Stores all that is not yet stored, then loads the new version; where storing fails, says so and stays. */
export async function takeNewVersion(): Promise<void> {
  // A field being typed in hands over what it holds when it loses the focus.
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  await useDocuments.getState().flush();
  const { state, list } = useDocuments.getState();
  if (state !== "saved" || list.some((head) => head.onlyHere)) {
    useApp
      .getState()
      .notify(
        "Your last changes could not be stored, so the new version was not loaded. Download the file to keep them.",
        "error",
      );
    return;
  }
  isAccepted = true;
  if (useOfflineState.getState().newVersion === "taken elsewhere") window.location.reload();
  else await activate();
}

/** Until the page is opened the next time. */
export function dismissNewVersion(): void {
  useOfflineState.setState({ newVersion: "none" });
}
