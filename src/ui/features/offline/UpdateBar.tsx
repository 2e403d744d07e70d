import { RefreshCw } from "lucide-react";
import { useOfflineState } from "../../kit/told/offlineState.ts";
import { dismissNewVersion, takeNewVersion } from "./newVersion.ts";

/** Offers a new version; nothing happens until it is asked for. */
export function UpdateBar() {
  const newVersion = useOfflineState((s) => s.newVersion);
  return (
    <div role="status" aria-label="New version">
      {newVersion === "none" ? null : (
        <div className="message-bar calm">
          <span>
            {newVersion === "waits"
              ? "A new version is ready. What you have drawn stays."
              : "Another window has loaded a new version. Load it here too: this one will soon lack some of its parts."}
          </span>
          <button type="button" className="button" onClick={() => void takeNewVersion()}>
            <RefreshCw size={16} aria-hidden /> Load it now
          </button>
          <button type="button" className="button" onClick={dismissNewVersion}>
            Later
          </button>
        </div>
      )}
    </div>
  );
}
