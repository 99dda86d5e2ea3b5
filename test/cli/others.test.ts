import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { JUNIPER, newFolder, whittaw } from "../support/whittaw.ts";

describe("whittaw begin", () => {
  test.each(["one-ear-headstall", "strap"])("%s: the order it writes can be made at once", (article) => {
    const folder = newFolder();
    const begun = whittaw(folder, "begin", article, "--to", "new.yaml", "--sheet");
    expect([begun.status, begun.err]).toEqual([0, ""]);
    expect(existsSync(join(folder, "new-measuring-sheet.pdf"))).toBe(true);
    const made = whittaw(folder, "make", "new.yaml");
    expect([made.status, made.err]).toEqual([0, ""]);
  });

  test("an order that is there already is left alone", () => {
    const folder = newFolder();
    writeFileSync(join(folder, "mine.yaml"), "precious\n");
    const { status, err } = whittaw(folder, "begin", "strap", "--to", "mine.yaml");
    expect(status).toBe(2);
    expect(err).toContain("is there already");
    expect(readFileSync(join(folder, "mine.yaml"), "utf8")).toBe("precious\n");
  });

  test("a misspelt article gets the nearest one", () => {
    const { status, err } = whittaw(newFolder(), "begin", "one-ear-headstal");
    expect(status).toBe(2);
    expect(err).toContain("write one-ear-headstall");
  });

  test("an article that is like none gets the list", () => {
    const { status, err } = whittaw(newFolder(), "begin", "bridle");
    expect(status).toBe(2);
    expect(err).toContain("To mend: write one-ear-headstall, strap or bag.");
  });

  test("a folder that is not there is told in words", () => {
    const { status, err } = whittaw(newFolder(), "begin", "strap", "--to", "nowhere/new.yaml");
    expect(status).toBe(2);
    expect(err).toContain("can't be written: its folder is not there or can't be made. To mend: choose");
  });
});

describe("whittaw check and explain", () => {
  test("check writes nothing", () => {
    const folder = newFolder();
    const { status, out } = whittaw(folder, "check", JUNIPER);
    expect(status).toBe(0);
    expect(out).toContain("checked");
    expect(existsSync(join(folder, "out"))).toBe(false);
  });

  test("check of an order with faults says so, and nothing of making", () => {
    const folder = newFolder();
    writeFileSync(join(folder, "a.yaml"), readFileSync(JUNIPER, "utf8").replace("over-poll", "over-pole"));
    const { status, err } = whittaw(folder, "check", "a.yaml");
    expect(status).toBe(2);
    expect(err).toMatch(/^a\.yaml: has faults\n/);
    expect(whittaw(folder, "make", "a.yaml").err).toMatch(/^a\.yaml: nothing was made\n/);
  });

  test("explain goes from what was given to the cut length, in the order's units", () => {
    const { status, out } = whittaw(newFolder(), "explain", JUNIPER, "cheek");
    expect(status).toBe(0);
    expect(out).toMatch(
      /cheek effective length = 10 in \(254 mm\) {3}\(you gave it, juniper-headstall\.yaml:\d+\)/,
    );
    expect(out).toMatch(/cheek cut length = .* in \(.* mm\)/);
  });

  test("explain of an unknown piece lists the pieces", () => {
    const { status, err } = whittaw(newFolder(), "explain", JUNIPER, "cheeek");
    expect(status).toBe(2);
    expect(err).toContain("write cheek");
  });

  test("measures that contradict each other end with 1, unreadable ones with 2", () => {
    const folder = newFolder();
    const text = readFileSync(JUNIPER, "utf8");
    writeFileSync(join(folder, "a.yaml"), text.replace("effective-length: 10", "effective-length: 16"));
    writeFileSync(join(folder, "b.yaml"), text.replace("41 1/2", "41,5"));
    expect(whittaw(folder, "check", "a.yaml").status).toBe(1);
    const comma = whittaw(folder, "check", "b.yaml");
    expect(comma.status).toBe(2);
    expect(comma.err).toContain("41.5");
  });
});

describe("whittaw facts", () => {
  test("lists its tables, and prints each with its sources", () => {
    const list = whittaw(newFolder(), "facts");
    expect(list.status).toBe(0);
    const names = list.out
      .split("\n")
      .map((l) => l.split(" ")[0]!)
      .filter((n) => n !== "" && n !== "whittaw");
    expect(names.length).toBeGreaterThanOrEqual(5);
    for (const name of names) {
      const { status, out } = whittaw(newFolder(), "facts", name);
      expect(status, name).toBe(0);
      expect(out).toContain("Sources:");
    }
  });
  test("an unknown table gets the nearest, or the list", () => {
    const near = whittaw(newFolder(), "facts", "punch");
    expect([near.status, near.err]).toEqual([2, expect.stringContaining("To mend: write punches.")]);
    expect(whittaw(newFolder(), "facts", "ounces").err).toContain("To mend: write leather.");
    const none = whittaw(newFolder(), "facts", "moonlight-serenade");
    expect([none.status, none.err]).toEqual([
      2,
      expect.stringMatching(/To mend: write leather, .* or dies\./),
    ]);
  });
});

describe("the command line itself", () => {
  test("help and version end with 0", () => {
    expect(whittaw(newFolder(), "--help").status).toBe(0);
    expect(whittaw(newFolder(), "--version").status).toBe(0);
  });
  test("an unknown command or option ends with 2 and names the nearest", () => {
    const { status, err } = whittaw(newFolder(), "mak", "a.yaml");
    expect(status).toBe(2);
    expect(err).toContain("make");
    expect(whittaw(newFolder(), "make", "a.yaml", "--papr", "a4").status).toBe(2);
  });
});
