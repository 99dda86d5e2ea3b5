// Who may import whom: the table of DEVELOPERS.md. A type-only import counts as an import.
const rooms = {
  units: [],
  geometry: ["units"],
  model: ["units", "geometry"],
  trade: ["units", "geometry", "model"],
  pieces: ["units", "geometry", "model", "trade"],
  articles: ["units", "geometry", "model", "trade", "pieces"],
  order: ["units", "geometry", "model", "trade", "pieces", "articles"],
  checks: ["units", "geometry", "model", "trade"],
  layout: ["units", "geometry", "model", "trade"],
  die: ["units", "geometry", "model", "trade"],
  bench: ["units", "geometry", "model", "trade"],
  picture: ["units", "geometry", "model", "trade", "layout", "die", "bench"],
  output: ["units", "geometry", "model", "picture"],
  files: ["units", "geometry", "model", "trade", "layout", "die", "bench", "picture", "output"],
  answers: ["units", "geometry", "model", "trade", "articles", "checks", "order", "checks", "layout", "die", "bench", "picture", "output", "files"],
};

const boundaries = Object.entries(rooms).map(([room, allowed]) => ({
  name: `${room}-imports`,
  comment: `${room}/ may import ${allowed.length === 0 ? "nothing of ours" : allowed.map((r) => `${r}/`).join(", ")}`,
  severity: "error",
  from: { path: `^src/${room}/` },
  to: { path: "^src/", pathNot: [room, ...allowed].map((r) => `^src/${r}/`) },
}));

/** What builds the page runs on the maker's machine, never in the page. */
const BUILD = "^src/web/(build/|vite\\.config\\.ts$)";
const BUILD_OR_CLI = "^src/(cli/|web/(build/|vite\\.config\\.ts$))";

module.exports = {
  forbidden: [
    ...boundaries,
    { name: "cli-imports", comment: "cli/ imports job.ts alone", severity: "error", from: { path: "^src/cli/" }, to: { path: "^src/", pathNot: "^src/(cli/|job\\.ts$)" } },
    { name: "job-imports", comment: "job.ts is below cli/ and web/", severity: "error", from: { path: "^src/job\\.ts$" }, to: { path: "^src/(cli|web)/" } },
    { name: "web-imports", comment: "web/ imports job.ts alone, and model/sentence.ts, which imports nothing; the command line's rooms are not for a browser", severity: "error", from: { path: "^src/web/" }, to: { path: "^src/", pathNot: "^src/(web/|job\\.ts$|model/sentence\\.ts$)" } },
    { name: "page-is-small", comment: "the page itself takes only types from job.ts: the engine runs in the worker", severity: "error", from: { path: "^src/web/", pathNot: "^src/web/engine/(worker|engineWith|files)\\.ts$" }, to: { path: "^src/job\\.ts$", dependencyTypesNot: ["type-only"] } },
    { name: "engine-stays-in-the-worker", comment: "only the worker may hold the engine", severity: "error", from: { path: "^src/web/", pathNot: "^src/web/engine/(worker|engineWith)\\.ts$" }, to: { path: "^src/web/engine/(worker|engineWith|files)\\.ts$", dependencyTypesNot: ["type-only"] } },
    { name: "piece-to-piece", comment: "pieces never import pieces; only their own table", severity: "error", from: { path: "^src/pieces/([^/]+)\\.ts$" }, to: { path: "^src/pieces/", pathNot: "^src/pieces/$1Table\\.ts$" } },
    { name: "no-cycles", comment: "imports go round in a ring", severity: "error", from: { path: "^src/" }, to: { circular: true } },
    { name: "engine-knows-no-machine", comment: "only cli/ touches files, the clock or the terminal", severity: "error", from: { path: "^src/", pathNot: BUILD_OR_CLI }, to: { dependencyTypes: ["core"] } },
    { name: "one-kernel", comment: "paper and clipper stay inside geometry/", severity: "error", from: { path: "^src/", pathNot: "^src/geometry/" }, to: { path: "node_modules/(paper|clipper2-ts)/" } },
    { name: "no-orphan-room", comment: "a room that the table lacks", severity: "error", from: { path: "^src/(?!(units|geometry|model|trade|pieces|articles|order|checks|layout|die|bench|picture|output|files|answers|cli|web)/|job\\.ts$)" }, to: {} },
    { name: "not-to-dev-dependency", comment: "what is shipped needs no development package", severity: "error", from: { path: "^src/", pathNot: BUILD }, to: { dependencyTypes: ["npm-dev"] } },
  ],
  options: {
    doNotFollow: { path: "node_modules" },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: "tsconfig.json" },
    enhancedResolveOptions: { exportsFields: ["exports"], conditionNames: ["import", "require", "node", "default", "types"] },
  },
};
