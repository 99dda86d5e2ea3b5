import { spawnSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";

// The import boundaries are checked by dependency-cruiser; here each kind of forbidden import is planted in
// a small tree and must be caught.

const folder = mkdtempSync(join(tmpdir(), "whittaw-boundaries-"));
afterAll(() => rmSync(folder, { recursive: true }));

function cruise(files: Readonly<Record<string, string>>): {
  readonly status: number | null;
  readonly said: string;
} {
  rmSync(join(folder, "src"), { recursive: true, force: true });
  for (const [path, text] of Object.entries(files)) {
    mkdirSync(join(folder, path, ".."), { recursive: true });
    writeFileSync(join(folder, path), text);
  }
  const binary = join(process.cwd(), "node_modules", "dependency-cruiser", "bin", "dependency-cruise.mjs");
  const { status, stdout } = spawnSync(
    process.execPath,
    [binary, "src", "--config", ".dependency-cruiser.cjs"],
    { cwd: folder, encoding: "utf8" },
  );
  return { status, said: stdout };
}

cpSync(".dependency-cruiser.cjs", join(folder, ".dependency-cruiser.cjs"));
cpSync("tsconfig.json", join(folder, "tsconfig.json"));
cpSync("package.json", join(folder, "package.json"));
symlinkSync(join(process.cwd(), "node_modules"), join(folder, "node_modules"), "junction");

const SOUND = {
  "src/units/a.ts": "export const a = 1;\n",
  "src/geometry/b.ts": 'import { a } from "../units/a.ts";\nexport const b = a;\n',
};

describe("import boundaries", () => {
  test("a sound tree passes, and is seen", () => {
    const { status, said } = cruise(SOUND);
    expect(said).toContain("2 modules");
    expect(status).toBe(0);
  });

  test("the page may take types from the engine's entry, and its worker all of it", () => {
    const { status, said } = cruise({
      "src/job.ts": "export const b = 1;\nexport type B = number;\n",
      "src/web/order/a.ts": 'import type { B } from "../../job.ts";\nexport const a: B = 1;\n',
      "src/web/engine/engineWith.ts": 'import { b } from "../../job.ts";\nexport const a = b;\n',
    });
    expect(said).toContain("3 modules");
    expect(status).toBe(0);
  });

  test.each([
    [
      "units may import nothing",
      "units-imports",
      {
        "src/units/a.ts": 'import { b } from "../model/b.ts";\nexport const a = b;\n',
        "src/model/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "a type counts",
      "checks-imports",
      {
        "src/checks/a.ts": 'import type { B } from "../pieces/b.ts";\nexport type A = B;\n',
        "src/pieces/b.ts": "export type B = number;\n",
      },
    ],
    [
      "an import() counts",
      "geometry-imports",
      {
        "src/geometry/a.ts": 'export const a = () => import("../trade/b.ts");\n',
        "src/trade/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "pieces never import pieces",
      "piece-to-piece",
      {
        "src/pieces/a.ts": "import { b } from './b.ts';\nexport const a = b;\n",
        "src/pieces/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "the command line sees the engine's entry alone",
      "cli-imports",
      {
        "src/cli/a.ts": 'import { b } from "../units/b.ts";\nexport const a = b;\n',
        "src/units/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "the page sees the engine's entry alone",
      "web-imports",
      {
        "src/web/order/a.ts": 'import type { B } from "../../units/b.ts";\nexport type A = B;\n',
        "src/units/b.ts": "export type B = number;\n",
      },
    ],
    [
      "the page takes types alone from it: the engine stays in the worker",
      "page-is-small",
      {
        "src/web/order/a.ts": 'import { b } from "../../job.ts";\nexport const a = b;\n',
        "src/job.ts": "export const b = 1;\n",
      },
    ],
    [
      "nor by way of the worker's files",
      "engine-stays-in-the-worker",
      {
        "src/web/order/a.ts": 'import { b } from "../engine/files.ts";\nexport const a = b;\n',
        "src/web/engine/files.ts": 'import { b as c } from "../../job.ts";\nexport const b = c;\n',
        "src/job.ts": "export const b = 1;\n",
      },
    ],
    [
      "the engine knows nothing of the page",
      "job-imports",
      {
        "src/job.ts": 'export { b } from "./web/b.ts";\n',
        "src/web/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "the page reads no files either",
      "engine-knows-no-machine",
      { "src/web/a.ts": 'import { readFileSync } from "node:fs";\nexport const a = readFileSync;\n' },
    ],
    [
      "rings",
      "no-cycles",
      {
        "src/units/a.ts": 'import { b } from "./b.ts";\nexport const a = () => b;\n',
        "src/units/b.ts": 'import { a } from "./a.ts";\nexport const b = a;\n',
      },
    ],
    [
      "the engine reads no files",
      "engine-knows-no-machine",
      { "src/order/a.ts": 'import { readFileSync } from "node:fs";\nexport const a = readFileSync;\n' },
    ],
    [
      "paper stays in geometry",
      "one-kernel",
      { "src/picture/a.ts": 'import paper from "paper";\nexport const a = paper;\n' },
    ],
    [
      "a room that the table lacks",
      "no-orphan-room",
      {
        "src/misc/a.ts": 'import { b } from "../units/b.ts";\nexport const a = b;\n',
        "src/units/b.ts": "export const b = 1;\n",
      },
    ],
    [
      "development packages are not shipped",
      "not-to-dev-dependency",
      { "src/order/a.ts": 'import fc from "fast-check";\nexport const a = fc;\n' },
    ],
  ])("%s", (_, rule, files) => {
    const { status, said } = cruise({ ...SOUND, ...files });
    expect(said).toContain(rule);
    expect(status).not.toBe(0);
  });
});
