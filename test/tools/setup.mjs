// What the tests need beyond npm: a second PDF renderer, a PDF checker and a DXF reader that are not
// ours, and a browser.
// On Debian as root it installs what is missing; elsewhere it says what to install, and stops.
import { execFileSync, spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import { chromiumPath } from "./chromium.mjs";
import { pythonWithEzdxf } from "./python.mjs";

const runs = (command, argument) => () => !spawnSync(command, [argument], { stdio: "ignore" }).error;

const NEEDED = [
  { name: "pdftoppm", isHere: runs("pdftoppm", "-v"), package: "poppler-utils" },
  { name: "qpdf", isHere: runs("qpdf", "--version"), package: "qpdf" },
  {
    name: "ezdxf for Python 3",
    isHere: () => pythonWithEzdxf() !== undefined,
    package: "python3-ezdxf",
  },
  { name: "Chromium", isHere: () => chromiumPath() !== undefined, package: "chromium" },
  // A bare Linux has one wide face, which people at a desk never see.
  {
    name: "the Liberation fonts",
    isHere: () => process.platform !== "linux" || existsSync("/usr/share/fonts/truetype/liberation"),
    package: "fonts-liberation",
  },
];

const missing = NEEDED.filter((n) => !n.isHere());
if (missing.length > 0) {
  const packages = missing.map((m) => m.package);
  const canInstall =
    process.platform === "linux" &&
    process.getuid?.() === 0 &&
    !spawnSync("apt-get", ["--version"], { stdio: "ignore" }).error;
  if (!canInstall) {
    console.error(
      `The tests need ${missing.map((m) => m.name).join(" and ")}. Install the packages ${packages.join(" and ")} (Debian's names) with your system's package manager, then run npm test again.`,
    );
    process.exit(1);
  }
  console.log(`Installing what the tests need: ${packages.join(", ")}`);
  const env = { ...process.env, DEBIAN_FRONTEND: "noninteractive" };
  execFileSync("apt-get", ["update", "-qq"], { stdio: "inherit", env });
  execFileSync("apt-get", ["install", "-y", "-qq", "--no-install-recommends", ...packages], {
    stdio: "inherit",
    env,
  });
  const still = NEEDED.filter((n) => !n.isHere());
  if (still.length > 0) {
    console.error(`Still missing after the installation: ${still.map((m) => m.name).join(", ")}`);
    process.exit(1);
  }
}

// The tests of the command and of the page run them as they are built from this very source.
const require = createRequire(import.meta.url);
const BUILDS = [
  [require.resolve("typescript/bin/tsc"), "-p", "tsconfig.build.json"],
  [
    join(dirname(require.resolve("vite/package.json")), "bin", "vite.js"),
    "build",
    "--config",
    "src/web/vite.config.ts",
    "--logLevel",
    "warn",
  ],
];
for (const build of BUILDS)
  if (spawnSync(process.execPath, build, { stdio: "inherit" }).status !== 0) process.exit(1);
