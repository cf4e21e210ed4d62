/// <reference types="vite/client" />
/** Where does the page begin? Styles, light, and the one root. */
import "./parts/no-eval.js";
import "./styles/tokens.css";
import "./styles/look.css";
import "./styles/app.css";
import { createRoot } from "react-dom/client";
import { keepThePage } from "./offline/keep-the-page.js";
import { App } from "./pages/app.js";
import { Fault } from "./parts/fault.js";
import { keepFocus } from "./parts/keep-focus.js";
import { followInside } from "./state/route.js";
import { showLight, useSettings } from "./state/settings.js";
import { useWorkshop } from "./state/workshop.js";

showLight(useSettings.getState().light);
document.addEventListener("click", followInside);
useWorkshop.getState().start();
keepThePage();
keepFocus();
const place = document.getElementById("page");
if (place === null) throw new Error("the page has no place to stand in");
createRoot(place).render(
  <Fault>
    <App />
  </Fault>,
);
