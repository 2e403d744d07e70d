import "./ui/shell/newEnough.ts";
import "./ui/kit/numberLanguage.ts";
import "./parts/schemasWithoutEval.ts";
import "./ui/kit/typeface.css";
import "./ui/kit/theme.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { attachAnnouncer } from "./store/announcements.ts";
import { openHistory, useApp } from "./store/app.ts";
import { attachAutosave } from "./store/documents/autosave.ts";
import { Hatches } from "./ui/canvas/Hatches.tsx";
import { followAddress, openAtStart, openCasesBy } from "./ui/features/documents/actions.ts";
import { registerOffline } from "./ui/features/offline/newVersion.ts";
import { openBookFromAddress } from "./ui/kit/asked/book.ts";
import { keepFocus } from "./ui/kit/focusKeeper.ts";
import { applyTheme, followTheme } from "./ui/kit/theme.ts";
import { Announcer } from "./ui/shell/Announcer.tsx";
import { App } from "./ui/shell/App.tsx";
import { CrashScreen } from "./ui/shell/CrashScreen.tsx";
import { loadAfterwards, loadAtLeisure } from "./ui/shell/later.ts";

applyTheme();
followTheme();

attachAutosave({
  subscribe: (listener) =>
    useApp.subscribe((now, before) => {
      if (now.design !== before.design) listener(now.design);
    }),
  history: openHistory,
  follow: (history) => useApp.getState().follow(history),
});
attachAnnouncer();
keepFocus();
openCasesBy(async (fragment, isFit) => (await loadAfterwards()).openTraining(fragment, isFit));
followAddress();
openBookFromAddress();
void openAtStart().finally(loadAtLeisure);
registerOffline();

const root = document.getElementById("root");
if (root) {
  createRoot(root).render(
    <StrictMode>
      <CrashScreen>
        <App />
      </CrashScreen>
      <Announcer />
      <Hatches />
    </StrictMode>,
  );
}
