import { expect, test } from "vitest";
import type { Point } from "../../src/geometry/path.ts";
import { pdf } from "../../src/output/pdf.ts";
import { dieDrawing } from "../../src/picture/die/dieDrawing.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { dieOf, inputFor } from "../support/dies.ts";
import { bold, font } from "../support/fonts.ts";
import { firstLine, measureSquare, renderPdfPage } from "../support/render.ts";
import { wordsOn } from "../support/sheets.ts";

// Measured on the rendered page, by a renderer that is not ours.

const DPI = 300;
const MM = DPI / 25.4;
const SQUARE_PX = 590.55; // 50 mm × 300 / 25.4

const render = async (pictures: readonly Picture[], page: number, hidden: readonly string[] = []) =>
  renderPdfPage(await pdf(pictures, { font, bold, title: "die", id: "1" }), page, DPI, hidden);

const pixel = ({ height }: Picture, [x, y]: Point): readonly [number, number] => [
  Math.round(x * MM),
  Math.round((height - y) * MM),
];

/** A place in the square beside its words, off its divisions: its words' middle is the square's. */
function besideWords(view: Picture): Point {
  const words = wordsOn(view).filter(({ text }) => text === "to outer edge" || text === "50 mm");
  expect(words.length).toBe(2);
  return [words[0]!.at[0] + 18, words[0]!.at[1] + 7];
}

test.each([
  ["at true scale", "keeper-running"],
  ["reduced", "cheek"],
])("the 50 mm square on a sheet whose view is %s measures 590.55 ± 1 px", async (_, id) => {
  const pictures = dieDrawing(inputFor(dieOf("juniper-headstall.yaml", id), "in"));
  const [view] = pictures as readonly [Picture];
  const { x, y } = measureSquare(await render([view], 1), pixel(view, besideWords(view)));
  expect(Math.abs(x.outer - SQUARE_PX)).toBeLessThan(1);
  expect(Math.abs(y.outer - SQUARE_PX)).toBeLessThan(1);
});

const ALL_BUT_CUT = ["skive", "fold", "stitch", "mark", "hole", "sheet", "text"];

test("a keeper's view at true scale is as long and as wide on the page as the keeper", async () => {
  const die = dieOf("juniper-headstall.yaml", "keeper-running");
  const [view] = dieDrawing(inputFor(die, "mm")) as readonly [Picture];
  const [length, width] = die.piece.sizes.slice(0, 2).map(({ value }) => value);
  const group = view.items.find((i) => i.kind === "group" && i.id === "view");
  if (group?.kind !== "group") throw new Error("no view");
  const inside = pixel(view, [group.placement.at[0] + length! / 2, group.placement.at[1]]);
  const { x, y } = measureSquare(await render([view], 1, ALL_BUT_CUT), inside);
  expect(x.middles / MM).toBeCloseTo(length!, 1);
  expect(y.middles / MM).toBeCloseTo(width!, 1);
});

test("a strap shown in stretches is as wide on the page as the strap", async () => {
  const die = dieOf("heron-bag-strap.yaml", "strap");
  const pictures = dieDrawing(inputFor(die, "mm"));
  const stretches = pictures[1]!;
  const group = stretches.items.find((i) => i.kind === "group" && i.id?.startsWith("from-"));
  if (group?.kind !== "group" || !group.clip) throw new Error("no stretch");
  const inside = pixel(stretches, [
    group.placement.at[0] + (group.clip.minX + group.clip.maxX) / 2,
    group.placement.at[1],
  ]);
  const image = await render([stretches], 1, ALL_BUT_CUT);
  const [up, down] = [firstLine(image, ...inside, [0, -1])!, firstLine(image, ...inside, [0, 1])!];
  expect((down.middle - up.middle) / MM).toBeCloseTo(25.4, 1);
});
