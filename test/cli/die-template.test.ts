import { execFileSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { describe, expect, test } from "vitest";
import { newFolder, whittaw } from "../support/whittaw.ts";

// The true-scale template that goes with a die to its maker, read by pdftotext.

/** Each page's words in one line, by the piece's template. */
function templates(
  order: string,
  lines: string,
  ...args: readonly string[]
): ReadonlyMap<string, readonly string[]> {
  const folder = newFolder();
  const text = readFileSync(resolve("templates", `${order}.yaml`), "utf8");
  writeFileSync(join(folder, "job.yaml"), `${text.trimEnd()}\ndie: { ${lines} }\n`);
  expect(whittaw(folder, "die", "job.yaml", ...args).status).toBe(0);
  const out = join(folder, "out", "job", "die");
  const files = readdirSync(out).filter((f) => f.startsWith("template-"));
  return new Map(
    files.map((file) => {
      const words = execFileSync("pdftotext", [join(out, file), "-"], { encoding: "utf8" });
      const pages = words.split("\f").slice(0, -1);
      return [file, pages.map((page) => page.replaceAll(/\s+/g, " "))];
    }),
  );
}

const all = (pages: readonly string[]): string => pages.join(" ");

describe("a template that goes with a die", () => {
  const juniper = templates(
    "juniper-headstall",
    "revision: B2, number: TS-104",
    "cheek",
    "crown",
    "keeper-fixed",
  );

  test.each([...juniper])("%s: every sheet says for which drawing and revision it is", (file, pages) => {
    const piece = /^template-(.+)-B2\.pdf$/.exec(file)![1]!;
    expect(pages.length).toBeGreaterThan(1);
    for (const page of pages) {
      expect(page).toMatch(/for die drawings? TS-104-/i);
      expect(page).toContain(`TS-104-${piece}-`);
      expect(page).toContain("revision B2");
    }
  });

  test.each([...juniper])(
    "%s: no command, no order's file, nothing that only the order mends",
    (_, pages) => {
      for (const word of ["--", "job.yaml", "To mend", "whittaw"]) expect(all(pages)).not.toContain(word);
      expect(all(pages)).toContain("If a bar is off by more than half a millimetre");
    },
  );

  test("what was found is said without what mends it in the order", () => {
    // The cheek's load is more than 80 % of this.
    const [pages] = [...templates("juniper-headstall", "press: 90 kN", "cheek").values()];
    expect(all(pages!)).toContain("Look here first");
    expect(all(pages!)).toContain("hardly any reserve");
    expect(all(pages!)).not.toContain("To mend");
  });

  test("notches: marked by hand, or cut by the die, never both", () => {
    const words = (notches: string): string =>
      all([...templates("rowan-tool-tote", `notches: ${notches}`, "front").values()][0]!);
    const [byHand, inDie] = [words("by hand"), words("in the die")];
    expect(byHand).toContain("mark the notches on the flesh side");
    expect(byHand).toContain("notch, by its triangle: mark it on the flesh side");
    expect(byHand).not.toMatch(/die cuts/);
    expect(inDie).toContain("the die cuts the notches");
    expect(inDie).toContain("notch, by its triangle: the die cuts it");
    expect(inDie).not.toMatch(/mark (it|the notches) on the flesh side(?! instead)/);
  });
});
