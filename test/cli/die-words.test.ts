import { existsSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { die, dieFolder, shop } from "../support/dieCommand.ts";

describe("what whittaw die does not understand", () => {
  test.each([
    ["keeper", "write keeper-fixed or keeper-running, or both."],
    ["KEEPER ", "write keeper-fixed or keeper-running, or both."],
    ["crow", "write crown."],
    ["running", "write keeper-running."],
    ["zzzzzzzz", "write one of these."],
  ])("%j is no piece: the ones that begin so", (name, mend) => {
    const folder = shop();
    const { status, err } = die(folder, "juniper.yaml", name);
    expect([status, err.trim().endsWith(`To mend: ${mend}`)]).toEqual([2, true]);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("capitals and spaces in a piece's name do not matter", () => {
    const folder = shop();
    expect(die(folder, "juniper.yaml", "Keeper  Fixed").status).toBe(0);
    expect(readdirSync(dieFolder(folder))).toContain("die-keeper-fixed-as-drawn-A.dxf");
  });

  test("no piece at all: which there are, and what to type", () => {
    const folder = shop();
    const { status, out, err } = die(folder, "juniper.yaml");
    expect([status, out]).toEqual([2, ""]);
    expect(err).toBe(
      "No piece was named. The pieces of juniper.yaml are: crown, cheek, ear-piece, keeper-fixed, keeper-running. To mend: add one or several, as in: whittaw die juniper.yaml crown\n",
    );
  });

  test.each([
    [["--rev", "B"], "write  die: { revision: B }  in the order"],
    [["--revision=2026-2"], "write  die: { revision: 2026-2 }  in the order"],
    [["--revision", "../B"], "write  die: { revision: B }  in the order"],
    [["--date", "2026-11-25"], "write  die: { date: 2026-11-25 }  in the order"],
    [["--press", "20 US tons"], "write  die: { press: 20 US tons }  in the order"],
    [["--press", "20"], "write  die: { press: 150 kN }  in the order"],
    [["--bevel", "centre"], "write  die: { bevel: centre }  in the order"],
    [["--least_radius"], "write least-radius: under die: in the order"],
    [["--papr", "a4"], "To mend: write --paper."],
    [["--zzzzzzzzzzzzzzzz"], "whittaw die --help lists them"],
    [["--\u001b[31m\u202e"], "that is no option"],
  ])("%j is no option: where it stands, or the nearest", (words, mend) => {
    const folder = shop();
    const { status, out, err } = die(folder, "juniper.yaml", "cheek", ...words);
    expect([status, out]).toEqual([2, ""]);
    expect(err).toContain(mend);
    for (const unseen of ["\u001b", "\u202e"]) expect(err).not.toContain(unseen);
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("an option before the order is told as well", () => {
    const { status, err } = die(shop(), "--rev", "B", "juniper.yaml", "cheek");
    expect([status, err.includes("write  die: { revision: B }")]).toEqual([2, true]);
  });
});
