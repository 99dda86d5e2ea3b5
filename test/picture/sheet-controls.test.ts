import { describe, expect, test } from "vitest";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { allText, make, pictureOf, SETS } from "../support/sheets.ts";

describe("control lengths", () => {
  const made = make(SETS["a headstall"]!, { paper: paper("letter") });
  const said = made.pictures.slice(1).map(allText).join("\n");

  test("stand on what spans a joint", () => {
    expect(said).toContain("check end to tip: 900 mm");
  });

  test("and not on what one sheet shows whole", () => {
    const whole = make([samples.cheekLike()], { paper: paper("a3") });
    expect(whole.layout.sheets).toHaveLength(1);
    expect(allText(pictureOf(whole, "A1"))).not.toContain("check fold to fold");
    const cut = make([samples.cheekLike()], { paper: paper("letter") });
    expect(cut.layout.sheets.map((s) => allText(pictureOf(cut, s.name))).join()).toContain(
      "check fold to fold: 255 mm",
    );
  });

  test("are not drawn across what is left out of a strap", () => {
    const ends = make([samples.longStrap()], { paper: paper("letter"), endsOnly: true });
    const text = ends.layout.sheets.map((s) => allText(pictureOf(ends, s.name))).join();
    expect(text).not.toContain("check end to tip");
    // 694 − 25 − (206 + 25) mm are left out.
    expect(text).toContain("438 mm of plain strap");
  });
});
