import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { pagePolicy } from "./page-policy.ts";

/** The built page carries its own policy, so that any static server is safe; the dev server needs inline scripts. */
const policyInPage: Plugin = {
  name: "policy-in-page",
  apply: "build",
  transformIndexHtml: () => [
    {
      tag: "meta",
      attrs: { "http-equiv": "Content-Security-Policy", content: pagePolicy },
      injectTo: "head-prepend",
    },
  ],
};

export default defineConfig({
  plugins: [react(), policyInPage],
  worker: { format: "es" },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    // An inlined file would be a data: address, which the policy refuses.
    assetsInlineLimit: 0,
    target: "es2022",
  },
});
