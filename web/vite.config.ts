import { fileURLToPath } from "node:url";
import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";
import { buildServiceWorker } from "./offline/build-service-worker.js";

/** The page is bundled from the sources of core and drawing, so it needs nothing built beforehand. */
export default defineConfig({
  root: fileURLToPath(new URL(".", import.meta.url)),
  base: "/",
  plugins: [react(), buildServiceWorker()],
  resolve: { conditions: ["source", "module", "browser", "import", "default"] },
  build: {
    outDir: "dist/site",
    emptyOutDir: true,
    target: "es2023",
    // No script and no font inside another file: the server allows only what it serves itself.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    // One file from the own machine; a second one would only be a second round trip.
    chunkSizeWarningLimit: 2500,
  },
});
