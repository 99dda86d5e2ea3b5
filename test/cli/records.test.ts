import {
  copyFileSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join, resolve } from "node:path";
import { parse } from "csv-parse/sync";
import { describe, expect, test } from "vitest";
import { JUNIPER, newFolder, whittaw } from "../support/whittaw.ts";

const SHOP = resolve("templates", "shop.yaml");
const STRAP =
  "article: strap\nfor: Heron\nunits: in\nmeasures: { width: 1 }\npieces: { strap: { length: 30 } }\n";

/** A folder with the demo order and its shop file. */
function workshop(): string {
  const folder = newFolder();
  copyFileSync(JUNIPER, join(folder, "juniper.yaml"));
  copyFileSync(SHOP, join(folder, "shop.yaml"));
  return folder;
}

describe("whittaw compare", () => {
  test("two orders, and an order's job.json a year later", () => {
    const folder = workshop();
    const text = readFileSync(JUNIPER, "utf8");
    writeFileSync(join(folder, "longer.yaml"), text.replace("41 1/2", "42"));
    const two = whittaw(folder, "compare", "juniper.yaml", "longer.yaml");
    expect([two.status, two.err]).toEqual([0, ""]);
    expect(two.out).toMatch(/measures\.over-poll .*\+ 1\/2 in/);
    expect(two.out).toMatch(/^ {2}price {2,}[\d.]+ GBP/m);

    expect(whittaw(folder, "make", "juniper.yaml").status).toBe(0);
    const kept = join("out", "juniper", "job.json");
    const again = whittaw(folder, "compare", kept);
    expect([again.status, again.err]).toEqual([0, ""]);
    expect(again.out).toContain("nothing differs");
    expect(again.out).toContain("the order kept in this job.json, made again");
    expect(again.out).toContain(`name both: whittaw compare ${kept} juniper.yaml`);
    const json = whittaw(folder, "compare", kept, "longer.yaml", "--json");
    expect(JSON.parse(json.out)).toMatchObject({
      given: [{ what: "measures.over-poll" }],
      price: expect.any(Array),
    });
  });

  test("a job.json alone says when the order file of its name is another one now", () => {
    const folder = workshop();
    expect(whittaw(folder, "make", "juniper.yaml").status).toBe(0);
    const text = readFileSync(JUNIPER, "utf8");
    writeFileSync(join(folder, "juniper.yaml"), text.replace("41 1/2", "42"));
    const kept = join("out", "juniper", "job.json");
    const { status, out } = whittaw(folder, "compare", kept);
    expect([status, out.includes("nothing differs")]).toEqual([0, true]);
    expect(out).toContain(
      `juniper.yaml is not the order kept here any more. To compare with it: whittaw compare ${kept} juniper.yaml`,
    );
    // Beside the job.json too, from any folder.
    writeFileSync(join(folder, "out", "juniper", "juniper.yaml"), text);
    expect(whittaw(join(folder, "out"), "compare", join("juniper", "job.json")).out).toContain(
      `name both: whittaw compare ${join("juniper", "job.json")} ${join("juniper", "juniper.yaml")}`,
    );
  });

  test("a contradiction ends with 1; what can't be read, and an order alone, with 2", () => {
    const folder = workshop();
    const text = readFileSync(JUNIPER, "utf8");
    writeFileSync(join(folder, "narrow.yaml"), text.replace("effective-length: 10", "effective-length: 16"));
    const contradiction = whittaw(folder, "compare", "juniper.yaml", "narrow.yaml");
    expect([contradiction.status, contradiction.out]).toEqual([1, ""]);
    expect(contradiction.err).toContain("narrow.yaml can't be compared:");
    writeFileSync(join(folder, "job.json"), '{"format": 1');
    const broken = whittaw(folder, "compare", "job.json");
    expect([broken.status, broken.err]).toEqual([2, expect.stringContaining("job.json is broken")]);
    const alone = whittaw(folder, "compare", "juniper.yaml");
    expect([alone.status, alone.err]).toEqual([2, expect.stringContaining("name a second order")]);
    expect(whittaw(folder, "compare", "gone.json").err).toContain("was not found");
  });
});

describe("whittaw book", () => {
  test("lists orders in a folder and under it, by name, and writes nothing", () => {
    const folder = workshop();
    for (const under of ["2025", "out", "node_modules", ".kept"]) {
      mkdirSync(join(folder, under));
      writeFileSync(join(folder, under, "heron.yml"), STRAP);
    }
    writeFileSync(join(folder, "binary.yaml"), Uint8Array.of(0xff, 0xfe, 0));
    const elsewhere = mkdtempSync(join(folder, "..", "whittaw-linked-"));
    writeFileSync(join(elsewhere, "linked.yaml"), STRAP);
    symlinkSync(elsewhere, join(folder, "link"), "junction");
    const noon = new Date(2024, 1, 29, 12);
    utimesSync(join(folder, "juniper.yaml"), noon, noon);
    const before = readdirSync(folder, { recursive: true });

    const { status, out } = whittaw(folder, "book", ".", "--csv");
    const rows = parse(out, { columns: true }) as Record<string, string>[];
    expect(status).toBe(0);
    expect(rows.map((r) => [r.file, r.checks])).toEqual([
      ["2025/heron.yml", "sound"],
      ["binary.yaml", "can't be read"],
      ["juniper.yaml", "sound"],
    ]);
    expect(rows[2]).toMatchObject({
      changed: "2024-02-29",
      currency: "GBP",
      for: "Juniper, bay mare, 15.1 hands",
    });
    const found = whittaw(folder, "book", ".", "HERON", "--json");
    expect(JSON.parse(found.out)).toMatchObject([{ file: "2025/heron.yml", forWhom: "Heron" }]);
    expect(whittaw(folder, "book", ".", "moonlight").out).toContain("None of 3 orders");
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
  });

  test("a folder that is none ends with 2", () => {
    const folder = workshop();
    expect(whittaw(folder, "book", "gone")).toMatchObject({
      status: 2,
      err: expect.stringContaining("not found"),
    });
    expect(whittaw(folder, "book", "juniper.yaml")).toMatchObject({
      status: 2,
      err: expect.stringContaining("is not a folder"),
    });
  });
});

describe("whittaw grade", () => {
  test("prints the sizes of the shop file that lies beside the order", () => {
    const folder = workshop();
    const { status, out, err } = whittaw(folder, "grade", "juniper.yaml", "--sizes", "pony,large");
    expect([status, err]).toEqual([0, ""]);
    expect(out).toMatch(/^piece +size +pony +large$/m);
    expect(out).toMatch(/^measures +over-poll +36 in +44 in$/m);
    expect(existing(folder)).toEqual(["juniper.yaml", "shop.yaml"]);
  });

  test("an article without sizes ends with 2 and says what to write", () => {
    const folder = newFolder();
    writeFileSync(join(folder, "heron.yaml"), STRAP);
    const { status, out, err } = whittaw(folder, "grade", "heron.yaml");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain("no source: enter your own");
  });
});

const existing = (folder: string): readonly string[] => [...readdirSync(folder)].sort();
