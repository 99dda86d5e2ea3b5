import { describe, expect, test } from "vitest";
import { readPrinted } from "../../src/layout/printed.ts";
import { paper } from "../support/papers.ts";

// The bars on letter paper are 180 mm and 240 mm long.
const read = (text: string) => readPrinted(text, paper("letter"), 10);
const mendOf = (text: string): string => {
  const r = read(text);
  return r.ok ? "taken" : r.mend;
};

describe("what the bars measured, as typed", () => {
  test.each(["179.2x239.5", " 179.2 X 239.5 ", "179.2 mm × 239.5 mm", "7.05 in x 9.43 in"])(
    "%s is taken",
    (text) => {
      const r = read(text);
      expect(r.ok).toBe(true);
      // 7.05 in are 179.07 mm and 9.43 in are 239.52 mm.
      if (r.ok) expect(r.factor.x).toBeCloseTo(179.2 / 180, 2);
    },
  );

  test.each([
    ["179,2x239,5", "write a point, as in 179.2x239.5"],
    ["179,2 x 239.5", "write a point, as in 179.2 x 239.5"],
    ["239.5x179.2", "short edge first: did you mean 179.2x239.5?"],
    ["9.43 in x 7.05 in", "short edge first: did you mean 7.05 in x 9.43 in?"],
    ["7.05x9.43", "in mm, or write in after each: 7.05 in x 9.43 in"],
    ["9.43x7.05", "in mm, or write in after each: 7.05 in x 9.43 in"],
    ["big", "write both bars in mm, as in 179.3x239.5"],
  ])("%s: %s", (text, mend) => expect(mendOf(text)).toBe(mend));

  test("what a mend tells to write is taken", () => {
    for (const slip of ["179,2x239,5", "239.5x179.2", "9.43 in x 7.05 in", "7.05x9.43", "big"]) {
      const told = mendOf(slip)
        .replace(/^.*(as in|did you mean|after each:) /, "")
        .replace("?", "");
      expect([told, read(told).ok]).toEqual([told, true]);
    }
  });

  test("a page that the viewer scaled is no slip of the pen", () => {
    expect(mendOf("169x225.5")).toMatch(/^print the printer check again at 100 %/);
  });
});
