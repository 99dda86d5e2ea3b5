// Everything that is checked without running the program: types, lint and format, import boundaries,
// and that the commands in the documents run and print what they say.
import { spawnSync } from "node:child_process";
import { join } from "node:path";

const binary = (name, file) => join("node_modules", name, file);

const tsc = binary("typescript", "bin/tsc");

const steps = [
  ["types", tsc, ["-p", "tsconfig.json"]],
  ["the page's types", tsc, ["-p", join("src", "web")]],
  ["the service worker's types", tsc, ["-p", join("src", "web", "offline")]],
  ["the page's tests' types", tsc, ["-p", join("test", "page")]],
  ["lint and format", binary("@biomejs/biome", "bin/biome"), ["check", "--error-on-warnings", "."]],
  [
    "import boundaries",
    binary("dependency-cruiser", "bin/dependency-cruise.mjs"),
    ["src", "--config", ".dependency-cruiser.cjs"],
  ],
  ["the documents' commands", join("test", "tools", "documents.mjs"), []],
];

let failed = 0;
for (const [name, file, args] of steps) {
  const { status } = spawnSync(process.execPath, [file, ...args], { stdio: "inherit" });
  console.log(`${status === 0 ? "ok     " : "FAILED "} ${name}`);
  if (status !== 0) failed++;
}
process.exit(failed === 0 ? 0 : 1);
