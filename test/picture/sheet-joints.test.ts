import { describe, expect, test } from "vitest";
import { boundsOf } from "../../src/geometry/bounds.ts";
import type { Point } from "../../src/geometry/path.ts";
import type { Sheet } from "../../src/model/sheet.ts";
import type { FlatItem } from "../../src/picture/flat.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import type { Stroke } from "../../src/picture/picture.ts";
import { spaceOf } from "../../src/picture/piece/space.ts";
import { joiningMarks } from "../../src/picture/sheet/marks.ts";
import { overlaps } from "../support/overlaps.ts";
import { paper } from "../support/papers.ts";
import * as samples from "../support/samplePieces.ts";
import { make, pictureOf, SETS, textsOn } from "../support/sheets.ts";

/** Where a point of a page lies on the sheet's plate, for a printer that is true. */
const onPlate = ([x, y]: Point, { origin, window }: Sheet): Point => [
  x - origin[0] + window.minX,
  y - origin[1] + window.minY,
];

describe("joining marks", () => {
  const made = make(SETS["a headstall and a panel"]!, { paper: paper("letter") });

  /** Diamonds as drawn on a sheet, in plate coordinates, with the numbers beside them. */
  const diamonds = (sheet: Sheet): readonly { readonly at: Point; readonly numbers: readonly string[] }[] => {
    const flat = flattenPicture(pictureOf(made, sheet.name));
    const isDiamond = ({ item }: FlatItem): boolean =>
      item.kind === "stroke" &&
      item.layer === "sheet" &&
      item.path.closed &&
      item.path.segments.length === 4 &&
      item.fill === undefined;
    return flat.filter(isDiamond).map(({ item }) => {
      const b = boundsOf((item as Stroke).path);
      const at: Point = [(b.minX + b.maxX) / 2, (b.minY + b.maxY) / 2];
      const near = flat.flatMap(({ item: w }) =>
        w.kind === "words" &&
        /^\d+$/.test(w.text) &&
        w.bold &&
        Math.hypot(w.at[0] - at[0], w.at[1] - at[1]) < 7
          ? [w.text]
          : [],
      );
      return { at: onPlate(at, sheet), numbers: near };
    });
  };

  test("coincide on the two sheets of every joint, with the same numbers", () => {
    const { sheets } = made.layout;
    let joints = 0;
    for (const s of sheets) {
      for (const name of [s.joins.right, s.joins.below]) {
        const other = sheets.find((o) => o.name === name);
        if (!other) continue;
        joints++;
        const edge = name === s.joins.right ? other.window.minX : other.window.maxY;
        const axis = name === s.joins.right ? 0 : 1;
        const across = (d: { readonly at: Point }): number => d.at[1 - axis]!;
        const range = (sheet: Sheet): readonly [number, number] =>
          axis === 0 ? [sheet.window.minY, sheet.window.maxY] : [sheet.window.minX, sheet.window.maxX];
        const onEdge = (sheet: Sheet) =>
          diamonds(sheet)
            .filter(
              (d) =>
                Math.abs(d.at[axis]! - edge) < 0.01 && across(d) > range(s)[0] && across(d) < range(s)[1],
            )
            .sort((a, b) => across(a) - across(b));
        const [mine, theirs] = [onEdge(s), onEdge(other)];
        expect(mine.length, `${s.name} and ${name}`).toBeGreaterThanOrEqual(2);
        expect(theirs.map((d) => d.numbers)).toEqual(mine.map((d) => d.numbers));
        mine.forEach((d, i) => {
          expect(Math.hypot(d.at[0] - theirs[i]!.at[0], d.at[1] - theirs[i]!.at[1])).toBeLessThan(0.005);
          expect(new Set(d.numbers).size).toBe(1);
        });
      }
    }
    expect(joints).toBeGreaterThan(3);
  });

  test("the same outline lies at the same place of the plate on every sheet that shows it", () => {
    const homes = made.layout.sheets.flatMap((s) =>
      flattenPicture(pictureOf(made, s.name)).flatMap(({ item }) =>
        item.kind === "stroke" && item.id === "crown.outline" ? [onPlate(item.path.start, s)] : [],
      ),
    );
    expect(homes.length).toBe(4);
    for (const at of homes)
      expect(Math.hypot(at[0] - homes[0]![0], at[1] - homes[0]![1])).toBeLessThan(0.005);
  });
});

test.each([1, 98, 998])("numbers from %s on stand clear of their diamonds", (first) => {
  const { layout } = make([samples.panel()], { paper: paper("letter") });
  const { items } = joiningMarks(layout.sheets, { space: spaceOf([]), leather: [] }, first);
  const [plate] = layout.plates;
  const at: Point = [20, 20];
  const picture = {
    title: "marks",
    width: plate!.width + 40,
    height: plate!.height + 40,
    items: [{ kind: "group" as const, placement: { at, angle: 0 }, items }],
  };
  expect(textsOn(picture)).toContain(`${first + 2}`);
  expect(overlaps(picture)).toEqual([]);
});
