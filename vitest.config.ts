import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { conditions: ["source", "module", "import", "default"] },
  ssr: { resolve: { conditions: ["source", "module", "import", "default"] } },
  test: {
    include: ["{core,drawing,store,server,cli,web,scripts,references,e2e,fuzz}/**/*.test.{ts,tsx}"],
    exclude: ["**/node_modules/**", "**/dist/**"],
    testTimeout: 60_000,
    hookTimeout: 120_000,
  },
});
