import "@fontsource-variable/ibm-plex-sans/wght.css";
import "./theme/theme.css";
import "./theme/drawing.css";
import "./theme/layout.css";
import "./theme/panel.css";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { App } from "./app.tsx";
import { openDevice } from "./jobs/device.ts";
import { applyTheme, keptTheme } from "./theme/theme.ts";

applyTheme(keptTheme());
const root = document.getElementById("root");
if (root === null) throw new Error("main found no #root in the page");
const device = await openDevice();
createRoot(root).render(
  <StrictMode>
    <App device={device} />
  </StrictMode>,
);
