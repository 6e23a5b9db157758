import react from "@vitejs/plugin-react";
import { defineConfig, type Plugin } from "vite";
import { VitePWA } from "vite-plugin-pwa";
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

/** What the first drawing needs and later parts share. Estimating as-built pins and tabs come when they are opened. */
const neededAtFirst =
  /node_modules\/(react|react-dom|scheduler|yjs|lib0|fflate|zod|fraction\.js|jsonc-parser|comlink|workbox-window)\/|packages\/(store|job)\/src\/|packages\/core\/src\/(linkage|clearance|leaf|ram|placement|swing)\/|apps\/web\/src\/(strings|worker\/use|drawing\/(projection|marks|gate-shapes|map-cell)|jobs\/(change|typed|place|use|job-files|demo|device)|stages\/placement\/(shown|bench|gate|take|value|leaf-values|question))/;

export default defineConfig({
  plugins: [
    react(),
    policyInPage,
    VitePWA({
      registerType: "prompt",
      injectRegister: null,
      manifest: {
        name: "Pintle",
        short_name: "Pintle",
        description: "Place the two pins of a gate ram by eye and by number before a hole is drilled.",
        display: "standalone",
        start_url: "./",
        background_color: "#faf9f4",
        theme_color: "#faf9f4",
        icons: [
          { src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" },
          { src: "icon-192.png", sizes: "192x192", type: "image/png" },
          { src: "icon-512.png", sizes: "512x512", type: "image/png", purpose: "any maskable" },
        ],
      },
      workbox: {
        globPatterns: ["**/*.{html,js,css,svg,png,ttf}", "assets/ibm-plex-sans-latin*.woff2"],
        maximumFileSizeToCacheInBytes: 4_000_000,
        cleanupOutdatedCaches: true,
        sourcemap: false,
      },
    }),
  ],
  worker: { format: "es" },
  build: {
    outDir: "../../dist/web",
    emptyOutDir: true,
    // An inlined file would be a data: address, which the policy refuses.
    assetsInlineLimit: 0,
    target: "es2022",
    rolldownOptions: {
      output: {
        // Shared pieces of a kilobyte each would cost a round trip each; the first drawing needs nearly all of them.
        codeSplitting: { groups: [{ name: "base", test: neededAtFirst }] },
      },
    },
  },
});
