import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { die, dieFolder, juniper, shop, withDie } from "../support/dieCommand.ts";

const CHEEK = [
  "die-cheek-left-and-right-A.dxf",
  "die-cheek-left-and-right-A.pdf",
  "die-cheek-left-and-right-A.svg",
  "plotter-cheek-left-and-right-A.svg",
  "template-cheek-A.pdf",
];
const CHANGED = juniper.replace("1 1/4", "1 3/8");
const change = (folder: string, text: string): void => writeFileSync(join(folder, "juniper.yaml"), text);
/** Every file of the folder with its bytes. */
const standing = (folder: string): readonly string[] =>
  readdirSync(dieFolder(folder))
    .sort()
    .map((f) => `${f} ${readFileSync(join(dieFolder(folder), f)).toString("base64")}`);
const DXF = join("out", "juniper", "die", CHEEK[0]!);

describe("a die that may be out is not drawn anew under its revision", () => {
  test("it ends with 1, nothing is written, and both ways out are told", () => {
    const folder = shop();
    die(folder, "juniper.yaml", "cheek");
    const before = standing(folder);
    change(folder, CHANGED);
    const { status, out, err } = die(folder, "juniper.yaml", "cheek", "crown");
    expect([status, out]).toEqual([1, ""]);
    expect(err).toContain(
      `${DXF} stands there and is different: add a later die.revision to juniper.yaml, as in  die: { revision: B } or, if the drawing isn't out yet, add --replace`,
    );
    expect(err).toContain("Nothing was written");
    expect(standing(folder)).toEqual(before);
  });

  test("the line of the revision is told; raised, both drawings stand", () => {
    const folder = shop(withDie("  owner: Fernhollow\n  revision: B"));
    die(folder, "juniper.yaml", "cheek");
    const before = standing(folder);
    change(folder, withDie("  owner: Fernhollow\n  revision: B").replace("1 1/4", "1 3/8"));
    const line = juniper.trimEnd().split("\n").length + 3;
    expect(die(folder, "juniper.yaml", "cheek").err).toContain(
      `raise die.revision (juniper.yaml, line ${line})`,
    );
    change(folder, withDie("  owner: Fernhollow\n  revision: C").replace("1 1/4", "1 3/8"));
    expect(die(folder, "juniper.yaml", "cheek").status).toBe(0);
    const after = standing(folder);
    for (const file of before) expect(after).toContain(file);
    expect(after.length).toBe(2 * before.length);
  });

  test("--json tells it as well", () => {
    const folder = shop();
    die(folder, "juniper.yaml", "cheek");
    change(folder, CHANGED);
    const { status, out } = die(folder, "juniper.yaml", "cheek", "--json");
    expect([status, JSON.parse(out)]).toEqual([
      1,
      expect.objectContaining({
        status: 1,
        written: [],
        changed: [DXF],
        gone: [],
        refused: [expect.stringContaining("add --replace")],
      }),
    ]);
  });

  test("the same die is written again freely: on other paper, with the faces of the rule, without", () => {
    const folder = shop();
    for (const more of [
      [],
      [],
      ["--paper", "a3"],
      ["--rule-edge"],
      [],
      ["--nest"],
      ["--nest", "--rule-edge"],
    ])
      expect([die(folder, "juniper.yaml", "cheek", ...more).status, more]).toEqual([0, more]);
    change(folder, CHANGED);
    for (const more of [[], ["--rule-edge"]])
      expect(die(folder, "juniper.yaml", "cheek", ...more).status).toBe(1);
  });

  test("a drawing for sides that are not made any more is another drawing too", () => {
    const folder = shop();
    mkdirSync(dieFolder(folder), { recursive: true });
    writeFileSync(join(dieFolder(folder), "die-cheek-left-A.dxf"), "old");
    const { status, err } = die(folder, "juniper.yaml", "cheek");
    expect([status, readdirSync(dieFolder(folder))]).toEqual([1, ["die-cheek-left-A.dxf"]]);
    expect(err).toContain("die-cheek-left-A.dxf stands there and is different");
    expect(die(folder, "juniper.yaml", "cheek", "--replace").status).toBe(0);
    expect(die(folder, "juniper.yaml", "cheek").status).toBe(0);
  });

  test("--replace draws anew and takes away what is not made any more, and nothing else", () => {
    const folder = shop();
    die(folder, "juniper.yaml", "cheek", "--nest");
    const old = "die-cheek-left-and-right-A-sheet-44.svg";
    const others = ["die-cheek-two-A.txt", "die-cheeky-two-A.dxf", "die-cheek-two-B.dxf", "mine.pdf"];
    for (const name of [old, ...others]) writeFileSync(join(dieFolder(folder), name), "old");
    const same = die(folder, "juniper.yaml", "cheek", "--replace");
    expect(same.out).not.toMatch(/was taken away|was replaced/);
    expect(readdirSync(dieFolder(folder))).toContain("die-cheek-two-A.dxf");
    change(folder, CHANGED);
    const { status, out } = die(folder, "juniper.yaml", "cheek", "--replace");
    expect(status).toBe(0);
    expect(out).toContain(`${DXF} held another drawing and was replaced`);
    const left = readdirSync(dieFolder(folder));
    for (const gone of [old, "die-cheek-two-A.dxf", "die-cheek-two-A.pdf", "die-cheek-two-A.svg"]) {
      expect(left).not.toContain(gone);
      expect(out).toContain(`${gone} was of the earlier drawing and was taken away`);
    }
    for (const kept of [...others, ...CHEEK]) expect(left).toContain(kept);
    expect(die(folder, "juniper.yaml", "cheek").status).toBe(0);
  });
});
