import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { gzipSync } from "node:zlib";
import { afterAll, describe, expect, test } from "vitest";
import { BUILT, bench } from "./support.ts";
import { filesInBrowser, type Hashed } from "./worker.ts";

// The page's files are the command line's, byte for byte: the built engine in the browser against the built
// command in Node.

const out = mkdtempSync(join(tmpdir(), "whittaw-bytes-"));
afterAll(() => rmSync(out, { recursive: true }));

const MAIN = join("dist", "cli", "main.js");
const sha256 = (bytes: Uint8Array | string): string => createHash("sha256").update(bytes).digest("hex");
const textOf = (name: string): string => readFileSync(join("templates", name), "utf8");

/** What lies in the order's folder after commands of the command line, by path. */
function byCommand(order: string, commands: readonly (readonly string[])[]): Hashed {
  const root = mkdtempSync(join(out, "run-"));
  for (const [name, ...words] of commands) {
    const made = spawnSync(
      process.execPath,
      [MAIN, name!, join("templates", order), ...words, "--out", root],
      {
        encoding: "utf8",
      },
    );
    if (made.status !== 0) throw new Error(made.stderr);
  }
  const folder = join(root, order.replace(".yaml", ""));
  const files = readdirSync(folder, { recursive: true, withFileTypes: true }).filter((e) => e.isFile());
  const paths = files.map((e) => join(e.parentPath, e.name)).sort();
  return Object.fromEntries(
    paths.map((p) => [p.slice(folder.length + 1).replaceAll("\\", "/"), sha256(readFileSync(p))]),
  );
}

const only = (files: Hashed, which: RegExp): Hashed =>
  Object.fromEntries(Object.entries(files).filter(([path]) => which.test(path)));

const SHOP = textOf("shop.yaml");
const HEADSTALL = "juniper-headstall.yaml";
const PURSE = "wren-flap-purse.yaml";

describe("files made in the browser", () => {
  const { open } = bench();

  test("all of a headstall: the same names in the same folders with the same bytes, and the order itself", async () => {
    const { page } = await open();
    const text = textOf(HEADSTALL);
    const made = await filesInBrowser(page, [text, HEADSTALL, SHOP, "all", {}]);
    const { pieces } = JSON.parse(textOfJob(HEADSTALL)) as {
      readonly pieces: readonly { readonly id: string }[];
    };
    const command = byCommand(HEADSTALL, [["make"], ["die", ...pieces.map((p) => p.id)]]);
    expect(Object.keys(command)).toEqual(
      expect.arrayContaining([
        "job.json",
        "quote.pdf",
        "pieces/cheek.svg",
        "die/die-cheek-left-and-right-A.dxf",
      ]),
    );
    expect(made).toEqual({ ...command, [HEADSTALL]: sha256(text) });
  });

  test("each kind of a purse is that part of the folder", async () => {
    const { page } = await open();
    const text = textOf(PURSE);
    const command = byCommand(PURSE, [["make"], ["die", "back"]]);
    const kinds = [
      ["template", /^template-/],
      ["pieces", /^pieces\//],
      ["bench", /^bench-sheet\./],
      ["quote", /^quote\./],
      ["job", /^job\.json$/],
      ["printer check", /^printer-check-/],
    ] as const;
    for (const [kind, which] of kinds) {
      const expected = only(command, which);
      expect(Object.keys(expected), kind).not.toEqual([]);
      expect(await filesInBrowser(page, [text, PURSE, SHOP, kind, {}]), kind).toEqual(expected);
    }
    expect(await filesInBrowser(page, [text, PURSE, SHOP, "pieces", { pieces: ["back"] }])).toEqual(
      only(command, /^pieces\/back\.svg$/),
    );
    expect(await filesInBrowser(page, [text, PURSE, SHOP, "die", { pieces: ["back"] }])).toEqual(
      only(command, /^die\//),
    );
  });

  test("paper and measured bars count as they do on the command line; a die takes the paper alone", async () => {
    const { page } = await open();
    const text = textOf(PURSE);
    const printing = { paper: "a4", printed: "169.2x259.1" };
    const command = byCommand(PURSE, [
      ["make", "--paper", "a4", "--printed", "169.2x259.1"],
      ["die", "gusset", "--paper", "a4"],
    ]);
    expect(await filesInBrowser(page, [text, PURSE, SHOP, "template", printing])).toEqual(
      only(command, /^template-a4/),
    );
    expect(
      await filesInBrowser(page, [text, PURSE, SHOP, "die", { ...printing, pieces: ["gusset"] }]),
    ).toEqual(only(command, /^die\//));
  });

  test("an order that can't be made, or has errors, gets words instead of files", async () => {
    const { page } = await open();
    const text = textOf(HEADSTALL);
    expect(await filesInBrowser(page, ["article: hat", "a.yaml", undefined, "all", {}])).toMatch(/hat/);
    expect(await filesInBrowser(page, [text, HEADSTALL, undefined, "quote", {}])).toMatch(
      /no quote.*To mend/,
    );
    expect(await filesInBrowser(page, [text, HEADSTALL, SHOP, "template", { paper: "napkin" }])).toMatch(
      /napkin/,
    );
  });
});

/** The job.json that the command line writes of an order. */
function textOfJob(order: string): string {
  const root = mkdtempSync(join(out, "job-"));
  spawnSync(process.execPath, [MAIN, "make", join("templates", order), "--out", root]);
  return readFileSync(join(root, order.replace(".yaml", ""), "job.json"), "utf8");
}

/** The whole page with the engine and its letters, as a tablet fetches it once. */
const MOST_BYTES = 1_500_000;

test("the page weighs less than 1.5 MB, compressed", () => {
  const files = readdirSync(BUILT, { recursive: true, withFileTypes: true }).filter((e) => e.isFile());
  const sizes = files.map((e) => gzipSync(readFileSync(join(e.parentPath, e.name)), { level: 9 }).length);
  expect(files.length).toBeGreaterThan(5);
  expect(sizes.reduce((a, b) => a + b, 0)).toBeLessThan(MOST_BYTES);
});
