import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { ENGINE_VERSION } from "../../src/model/job.ts";
import { engineFaults } from "../support/engineFaults.ts";

const filesUnder = (folder: string): readonly string[] =>
  readdirSync(folder).flatMap((n) => {
    const path = join(folder, n);
    return statSync(path).isDirectory() ? filesUnder(path) : [path];
  });

const sources = filesUnder("src").filter((f) => /\.tsx?$/.test(f) && !f.endsWith(".d.ts"));
/** Asks the machine's own only where the answer is exact everywhere. */
const TRIGONOMETRY = join("src", "units", "trigonometry.ts");
const engine = sources.filter(
  (f) => !f.startsWith(join("src", "cli")) && !f.startsWith(join("src", "web")) && f !== TRIGONOMETRY,
);

describe("the engine knows neither clock, chance, language nor machine", () => {
  test.each([
    ["const t = Date.now();", "the clock"],
    ["const t = new Date();", "the clock"],
    ["const r = Math.random();", "chance"],
    ["a.localeCompare(b)", "language"],
    ["n.toLocaleString()", "language"],
    ["process.env.HOME", "the process"],
    ["Buffer.from(x)", "buffers"],
    ['import { readFileSync } from "node:fs";', "the machine"],
    ["const y = Math.sin(x);", "engine-dependent"],
    ["const y = Math.atan2(y, x);", "engine-dependent"],
  ])("a planted %s is seen", (line, why) => {
    expect(engineFaults(`const a = 1;\n${line}\n`).join()).toContain(why);
  });

  test("words in comments and texts are no fault", () => {
    expect(engineFaults('// Date.now() is forbidden\nconst a = "Math.random";\n')).toEqual([]);
  });

  test.each(engine)("%s", (file) => {
    expect(engineFaults(readFileSync(file, "utf8"))).toEqual([]);
  });
});

test("the engine's version is the package's", () => {
  expect(ENGINE_VERSION).toBe(
    (JSON.parse(readFileSync("package.json", "utf8")) as { version: string }).version,
  );
});

test("files stay short: none over 300 lines but generated ones", () => {
  const long = sources.filter(
    (f) => !f.includes(".generated.") && readFileSync(f, "utf8").split("\n").length > 301,
  );
  expect(long).toEqual([]);
});

test("nothing is left for later, and no address of a registry or a machine stands in a source", () => {
  const bad = [...sources, "README.md", "DEVELOPERS.md", "CHANGELOG.md", "package-lock.json"].filter((f) => {
    try {
      return /\b(TODO|FIXME|XXX)\b|https?:\/\/registry|"resolved": "http|\/(root|home)\//.test(
        readFileSync(f, "utf8"),
      );
    } catch {
      return true;
    }
  });
  expect(bad).toEqual([]);
});
