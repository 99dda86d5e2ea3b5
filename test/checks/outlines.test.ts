import { describe, expect, test } from "vitest";
import {
  arc,
  circlePath,
  closedPath,
  cubic,
  line,
  openPath,
  type Path,
  type Point,
  polyline,
  rectanglePath,
} from "../../src/geometry/path.ts";
import { reversed } from "../../src/geometry/transform.ts";
import { found, told, verdict } from "../support/found.ts";
import { bareJob, barePiece } from "../support/soundPiece.ts";

const job = (outline: Path, over = {}) => bareJob([barePiece("a", outline, over)]);
const square = rectanglePath([0, 0], 40, 40);

describe("outline-sound", () => {
  test("a rectangle with its four corners named is sound, and so is a circle without any", () => {
    expect(verdict(job(square), "outline-sound")).toBe("none");
    expect(verdict(job(circlePath([0, 0], 20), { corners: [] }), "outline-sound")).toBe("none");
  });

  test("an open outline is found, and one whose ends miss each other by more than a knife can follow", () => {
    const ends = (gap: number): Path => ({
      start: [0, 0],
      closed: true,
      segments: [line([40, 0]), line([40, 40]), line([0, 40]), line([gap, 0])],
    });
    expect(verdict(job(openPath([0, 0], square.segments)), "outline-sound")).toBe("error");
    expect(found(job(ends(0.0011)), "outline-sound")[0]!.message).toContain("not closed");
    expect(found(job(ends(0.0009)), "outline-sound").some((f) => f.message.includes("not closed"))).toBe(
      false,
    );
  });

  test("a figure of eight crosses itself", () => {
    const eight = polyline(
      [
        [0, 0],
        [40, 40],
        [40, 0],
        [0, 40],
      ],
      true,
    );
    const findings = found(job(eight), "outline-sound");
    expect(findings.map((f) => f.message)).toEqual(["The outline of a crosses or touches itself."]);
    expect(findings[0]!.at![0]).toBeCloseTo(20, 6);
    expect(findings[0]!.at![1]).toBeCloseTo(20, 6);
  });

  test("a strip under 1 mm across on the whole is no piece", () => {
    // Twice the area over the way round, of a strip 100 long: 100 w / (100 + w).
    const wide = 100 / 99;
    expect(verdict(job(rectanglePath([0, 0], 100, wide + 0.001)), "outline-sound")).toBe("none");
    expect(verdict(job(rectanglePath([0, 0], 100, wide - 0.001)), "outline-sound")).toBe("error");
  });

  test("a clockwise outline is inside out", () => {
    expect(found(job(reversed(square)), "outline-sound")[0]!.value).toBe("clockwise");
  });

  test("a turn of over 1° needs a name, a smaller one doesn't", () => {
    const bent = (degrees: number): Path => {
      const rise = 20 * Math.tan((degrees * Math.PI) / 180);
      return polyline(
        [
          [0, 0],
          [20, 0],
          [40, rise],
          [40, 40],
          [0, 40],
        ],
        true,
      );
    };
    const corners = [
      [0, 0],
      [40, 40],
      [0, 40],
    ] as const;
    const named = (path: Path) =>
      [...corners, path.segments[1]!.to].map((at, i) => ({ name: `corner ${i}`, at: at as Point }));
    const sharp = bent(1.05);
    const soft = bent(0.95);
    expect(found(job(sharp, { corners: named(sharp) }), "outline-sound").map((f) => f.at)).toEqual([[20, 0]]);
    expect(verdict(job(soft, { corners: named(soft) }), "outline-sound")).toBe("none");
    const all = [...named(sharp), { name: "bend", at: [20, 0] as Point }];
    expect(verdict(job(sharp, { corners: all }), "outline-sound")).toBe("none");
  });

  test("a name with no corner under it is found", () => {
    const corners = [...barePiece("a", square).corners, { name: "tip", at: [20, 0] as Point }];
    expect(found(job(square, { corners }), "outline-sound")[0]!.message).toContain("no corner where its tip");
  });

  test("an arc whose ends lie at different distances from its middle is no arc", () => {
    const bulge = (x: number): Path =>
      closedPath([0, 0], [line([40, 0]), arc([40, 40], [x, 20], true), line([0, 40])]);
    expect(verdict(job(bulge(40)), "outline-sound")).toBe("none");
    const bad = closedPath([0, 0], [line([40, 0]), arc([40, 40], [40, 20.01], true), line([0, 40])]);
    expect(found(job(bad), "outline-sound")[0]!.message).toContain("an arc");
  });

  test("cutouts are looked at too", () => {
    const cutout = (outline: Path) => ({ cutouts: [{ id: "hole", use: "opening", outline }] });
    expect(verdict(job(square, cutout(circlePath([20, 20], 5))), "outline-sound")).toBe("none");
    expect(told(job(square, cutout(reversed(circlePath([20, 20], 5)))), "outline-sound")).toEqual([
      "error opening hole",
    ]);
  });

  test("the rough-cut line lies outside the piece, and is a sound line itself", () => {
    const rough = (corner: number, size: number) =>
      verdict(job(square, { rough: rectanglePath([corner, corner], size, size) }), "outline-sound");
    expect(rough(-5, 50)).toBe("none");
    expect(rough(-5, 44)).toBe("error");
    expect(told(job(square, { rough: reversed(rectanglePath([-5, -5], 50, 50)) }), "outline-sound")).toEqual([
      "error rough-cut line",
    ]);
  });

  test("a smooth edge of cubics has no corner", () => {
    const swelled = closedPath(
      [0, 0],
      [
        cubic([20, 0], [30, -6], [50, -6]),
        cubic([70, -6], [80, 0], [100, 0]),
        line([100, 30]),
        line([0, 30]),
      ],
    );
    const corners = (
      [
        [0, 0],
        [100, 0],
        [100, 30],
        [0, 30],
      ] as const
    ).map((at, i) => ({ name: `corner ${i}`, at }));
    expect(verdict(job(swelled, { corners }), "outline-sound")).toBe("none");
  });
});
