/**
 * Which way may imports run? One way only: cli, web, server -> drawing, store -> core, and inside core from the rooms
 * that compose down to quantity. See docs/decisions/0001-workspaces-and-borders.md. scripts/borders.test.ts feeds these
 * rules bad imports and sees each of them found.
 */
const TESTS = "\\.test\\.tsx?$|/test-[a-z-]+\\.ts$";
const NODE = [
  "^node:",
  "^(fs|path|os|url|http|https|net|child_process|crypto|worker_threads|module|util|stream|zlib)(/|$)",
];

/** Inside core a room may import rooms of its own line and of the lines above it in this list. */
const LEVELS = [
  ["quantity", "data", "texts"],
  ["numeric", "sheet"],
  ["geometry", "survey", "position"],
  ["mechanics", "drive", "ride", "handling"],
  ["fit", "search", "safety"],
  ["plan"],
];
const any = (names) => `^core/(${names.join("|")})/`;

const upward = LEVELS.slice(0, -1).map((rooms, level) => ({
  name: `core-level-${level}-stays-below`,
  comment: `${rooms.join(", ")} may not import a room that stands on them.`,
  severity: "error",
  from: { path: any(rooms), pathNot: TESTS },
  to: { path: any(LEVELS.slice(level + 1).flat()), dependencyTypesNot: ["type-only"] },
}));

const edge = (name, from, to) => ({
  name,
  comment: `${from} may not import ${to.join(", ")}.`,
  severity: "error",
  from: { path: `^${from}/` },
  to: { path: `^(${to.join("|")})/` },
});

module.exports = {
  forbidden: [
    {
      name: "resolves",
      comment: "An import that cannot be followed would slip past every other rule.",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: "no-cycles",
      comment: "Two files that need each other are one file, or hide a third.",
      severity: "error",
      from: { pathNot: TESTS },
      to: { circular: true, viaOnly: { dependencyTypesNot: ["type-only"] } },
    },
    {
      name: "core-is-pure",
      comment: "core imports core, papaparse, yaml and zod; no files, network, clock or screen.",
      severity: "error",
      from: { path: "^core/", pathNot: TESTS },
      to: { pathNot: ["^core/", "(^|/)node_modules/(papaparse|yaml|zod)/"] },
    },
    edge("core-is-below-all", "core", ["drawing", "store", "server", "web", "cli"]),
    edge("drawing-on-core-only", "drawing", ["store", "server", "web", "cli"]),
    edge("store-on-core-only", "store", ["drawing", "server", "web", "cli"]),
    edge("server-is-an-edge", "server", ["web", "cli"]),
    edge("cli-is-an-edge", "cli", ["web"]),
    edge("web-needs-no-machine", "web", ["store", "server", "cli"]),
    {
      name: "web-reaches-no-node",
      comment: "The page runs in a browser: nothing it imports, however far down, may need Node.",
      severity: "error",
      from: { path: "^web/", pathNot: `${TESTS}|^web/(vite\\.config|offline/build-service-worker)\\.ts$` },
      to: { path: [...NODE, "node_modules/@myriaddreamin/"], reachable: true },
    },
    {
      name: "quantity-stands-alone",
      comment: "quantity imports nothing else of core but its words and the types of core/data.",
      severity: "error",
      from: { path: "^core/quantity/", pathNot: TESTS },
      to: { path: "^core/", pathNot: ["^core/quantity/", "^core/texts/", "^core/data/"] },
    },
    {
      name: "sheet-on-quantity-only",
      comment: "sheet imports quantity and nothing else of core.",
      severity: "error",
      from: { path: "^core/sheet/", pathNot: TESTS },
      to: { path: "^core/", pathNot: ["^core/sheet/", "^core/texts/", "^core/quantity/"] },
    },
    {
      name: "rooms-do-not-ask",
      comment: "Questions compose the rooms; no room may import a question.",
      severity: "error",
      from: { path: any(LEVELS.flat()), pathNot: TESTS },
      to: { path: "^core/(questions|index\\.ts)" },
    },
    ...upward,
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    exclude: { path: "^(core|drawing|store|server|web|cli)/dist/" },
    // Imports of types alone count too: a border is a border.
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.check.json" },
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["source", "import", "module", "node", "default", "types"],
      mainFields: ["module", "main", "types"],
      extensions: [".ts", ".tsx", ".mjs", ".js", ".cjs", ".json"],
    },
  },
};
