import { configDefaults, defineConfig } from "vitest/config";

/** Folders without state of their own: their files share one loaded copy of the modules, which is half of their time. */
const PURE = ["core", "drawing", "references"];
const REST = ["store", "server", "cli", "web", "scripts", "fuzz"];
const filesIn = (folders: readonly string[]) => [`{${folders.join(",")}}/**/*.test.{ts,tsx}`];

const conditions = ["source", "module", "import", "default"];

export default defineConfig({
  resolve: { conditions },
  ssr: { resolve: { conditions } },
  test: {
    exclude: [...configDefaults.exclude, "**/dist/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
    projects: [
      { extends: true, test: { name: "pure", include: filesIn(PURE), isolate: false } },
      { extends: true, test: { name: "rest", include: filesIn(REST) } },
      { extends: true, test: { name: "browser", include: ["e2e/**/*.test.{ts,tsx}"] } },
    ],
  },
});
