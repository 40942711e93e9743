import react from "@vitejs/plugin-react";
import { defaultClientConditions, defineConfig, type Plugin } from "vite";
import { themeVariables } from "./src/theme/theme-variables.ts";

/** The theme's variables as a style sheet made at build time, so that no style is injected while the page runs. */
function themeSheet(): Plugin {
  const name = "./theme-variables.css";
  return {
    name: "causey-theme-sheet",
    resolveId: (id) => (id === name ? `\0${name}` : null),
    load: (id) => (id === `\0${name}` ? themeVariables() : null),
  };
}

export default defineConfig({
  root: import.meta.dirname,
  base: "./",
  plugins: [react(), themeSheet()],
  resolve: { conditions: ["source", ...defaultClientConditions] },
  worker: { format: "es" },
  // Our own packages only define things when they are loaded, so what a page does not use stays out of it.
  build: {
    rolldownOptions: {
      treeshake: {
        moduleSideEffects: [{ test: /packages\/(engine|data|io|papers|runtime)\/src\//, sideEffects: false }],
      },
    },
    outDir: "dist",
    emptyOutDir: true,
    target: "es2022",
    assetsInlineLimit: 0,
  },
});
