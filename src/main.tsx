import "./ui/theme.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { retitle } from "./design/edits/parts.ts";
import { useApp } from "./store/app.ts";
import { attachAutosave } from "./store/documentAutosave.ts";
import { App } from "./ui/App.tsx";
import { followAddress, openAtStart } from "./ui/documents/actions.ts";
import { openBookFromAddress } from "./ui/rulebook/book.ts";
import { Fallen } from "./ui/shell/Fallen.tsx";
import { applyTheme, followTheme } from "./ui/theme.ts";

applyTheme();
followTheme();

attachAutosave({
  subscribe: (listener) =>
    useApp.subscribe((now, before) => {
      if (now.design !== before.design) listener(now.design);
    }),
  retitle: (title) => {
    const { design, change, closePreview } = useApp.getState();
    closePreview();
    change(retitle(design, title));
  },
});
followAddress();
openBookFromAddress();
void openAtStart();

const root = document.getElementById("root");
if (root) {
  createRoot(root).render(
    <StrictMode>
      <Fallen>
        <App />
      </Fallen>
    </StrictMode>,
  );
}
