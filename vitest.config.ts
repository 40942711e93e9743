import { defineConfig } from "vitest/config";

export default defineConfig({
  resolve: { conditions: ["source"] },
  ssr: { resolve: { conditions: ["source", "node", "import", "default"] } },
  test: {
    setupFiles: ["test/setup-properties.ts"],
    include: ["packages/*/src/**/*.test.ts", "packages/*/test/**/*.test.ts", "test/**/*.test.ts"],
    exclude: ["test/browser/**", "**/node_modules/**", "**/dist/**"],
    testTimeout: 120_000,
    hookTimeout: 120_000,
  },
});
