/// <reference types="vite/client" />
/** Where does the page begin? Styles, light, and the one root. */
import "./styles/tokens.css";
import "./styles/look.css";
import "./styles/app.css";
import { createRoot } from "react-dom/client";
import { App } from "./pages/app.js";
import { Fault } from "./parts/fault.js";
import { followInside } from "./state/route.js";
import { showLight, useSettings } from "./state/settings.js";

showLight(useSettings.getState().light);
document.addEventListener("click", followInside);
const place = document.getElementById("page");
if (place === null) throw new Error("the page has no place to stand in");
createRoot(place).render(
  <Fault>
    <App />
  </Fault>,
);
