// The arrows of the house: core ← job ← {papers, store} ← apps. Run by scripts/architecture.mjs.

const anyPackage = "^(packages|apps)/([^/]+)/";
const test = "\\.test\\.ts$";
const source = (/** @type {string} */ name) => `^packages/${name}/src/`;

/** @param {string} name @param {string[]} allowed paths that it may import besides its own @param {string} comment */
const mayOnlyImport = (name, allowed, comment) => ({
  name: `${name}-imports`,
  comment,
  severity: /** @type {const} */ ("error"),
  from: { path: source(name), pathNot: [test, "/testing/"] },
  to: { pathNot: [source(name), ...allowed] },
});

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    mayOnlyImport(
      "core",
      ["node_modules/(earcut|robust-predicates)/"],
      "core is pure mathematics: no package but tiny numeric ones, no Node, no sibling",
    ),
    mayOnlyImport(
      "job",
      [source("core"), "node_modules/(earcut|robust-predicates|fraction\\.js|jsonc-parser|zod)/"],
      "job knows core and its own few packages: no Node, no face",
    ),
    mayOnlyImport(
      "papers",
      [
        "^packages/(core|job)/src/index\\.ts$",
        "node_modules/(pdfkit|@tarikjabiri/dxf)/",
        "node_modules/(earcut|robust-predicates|fraction\\.js|jsonc-parser|zod)/",
      ],
      "papers turns jobs into bytes: no Node, no DOM, files come in as bytes",
    ),
    mayOnlyImport(
      "store",
      ["^packages/job/src/index\\.ts$", "node_modules/(yjs|fflate)/"],
      "store keeps jobs: no Node, no face; the browser's own parts stand in its entry indexeddb",
    ),
    {
      name: "job-stands-below-faces",
      comment: "papers and store are built on job, not on each other nor on an app",
      severity: "error",
      from: { path: "^packages/(papers|store)/" },
      to: { path: "^(packages/(papers|store)|apps)/", pathNot: "^packages/$1/" },
    },
    {
      name: "nothing-imports-an-app",
      comment: "an app is a composition root; what two of them share belongs in a package",
      severity: "error",
      from: { path: anyPackage },
      to: { path: "^apps/", pathNot: "^$1/$2/" },
    },
    {
      name: "through-the-index",
      comment: "another package is imported by its name, which leads to its index",
      severity: "error",
      from: { path: anyPackage },
      to: { path: "^packages/", pathNot: ["^$1/$2/", "^packages/[^/]+/src/(indexeddb/)?index\\.ts$"] },
    },
    {
      name: "no-way-round-the-name",
      comment: "a relative path must stay inside its package",
      severity: "error",
      from: { path: anyPackage },
      to: { path: "^packages/", pathNot: "^$1/$2/", dependencyTypes: ["local"] },
    },
    {
      name: "no-circular",
      comment: "two files that need each other are one concept, or lack a third",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "no-test-in-source",
      comment: "shipped code does not import a test",
      severity: "error",
      from: { pathNot: test },
      to: { path: test },
    },
    {
      name: "resolvable",
      comment: "an import that leads nowhere",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.base.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "types", "default"] },
  },
};
