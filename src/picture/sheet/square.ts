import { type Box, type Point, rectanglePath } from "../../geometry/path.ts";
import type { Item, Stroke } from "../picture.ts";
import { blockBox, blockWords } from "../piece/block.ts";
import { findPlace } from "../piece/find.ts";
import { grownBy, isFree, type Space } from "../piece/space.ts";
import { PLAIN_MM, SMALL_MM } from "../piece/title.ts";
import { overLeather, type Page, withMore } from "./page.ts";
import type { Scale } from "./scale.ts";

// The calibration square: 50 mm from outer edge to outer edge of its lines, as it leaves the printer.
// Its lines are filled areas, so that their edges lie exactly where they should.

export const SQUARE_MM = 50;
const LINE_MM = 0.25;
/** Divisions, mm apart; along the lower and the left side. */
const DIVISION_MM = 10;
const TICK_MM = 2;
/** Arms of the corner ticks that stand for the square where it would lie over a piece. */
const ARM_MM = 5;
/** From the square to anything else, mm. */
const CLEAR_MM = 1.5;

/** A filled area, its sizes in true mm. */
export function bar(x: number, y: number, width: number, height: number): Stroke {
  return {
    kind: "stroke",
    layer: "sheet",
    line: "01.1",
    path: rectanglePath([x, y], width, height),
    fill: "black",
  };
}

/** Areas in true mm from a corner, laid on the page. */
export type Area = readonly [x: number, y: number, width: number, height: number];
export const areasOn = (areas: readonly Area[], [x, y]: Point, scale: Scale): readonly Stroke[] =>
  areas.map(([ax, ay, w, h]) => bar(x + ax * scale.x, y + ay * scale.y, w * scale.x, h * scale.y));

const S = SQUARE_MM;
const FRAME: readonly Area[] = [
  [0, 0, S, LINE_MM],
  [0, S - LINE_MM, S, LINE_MM],
  [0, 0, LINE_MM, S],
  [S - LINE_MM, 0, LINE_MM, S],
  ...Array.from({ length: S / DIVISION_MM - 1 }, (_, i) => (i + 1) * DIVISION_MM).flatMap(
    (at): readonly Area[] => [
      [at - LINE_MM / 2, 0, LINE_MM, TICK_MM],
      [0, at - LINE_MM / 2, TICK_MM, LINE_MM],
    ],
  ),
];

/** The four corners as angles, each inside the square. */
const TICKS: readonly Area[] = [0, S].flatMap((x) =>
  [0, S].flatMap((y): readonly Area[] => [
    [x === 0 ? 0 : S - ARM_MM, y === 0 ? 0 : S - LINE_MM, ARM_MM, LINE_MM],
    [x === 0 ? 0 : S - LINE_MM, y === 0 ? 0 : S - ARM_MM, LINE_MM, ARM_MM],
  ]),
);

const INSIDE = [
  { text: `${S} mm`, size: PLAIN_MM, bold: true },
  { text: "from outer edge", size: SMALL_MM },
  { text: "to outer edge", size: SMALL_MM },
  { text: "measure before cutting", size: SMALL_MM },
];
const BY_TICKS = [
  { text: `${S} mm square by its corners;`, size: SMALL_MM, bold: true },
  { text: "measure before cutting", size: SMALL_MM },
];

/** The square with its words, its lower left corner at `at`. */
export function squareAt(at: Point, scale: Scale): readonly Item[] {
  const { width, height } = blockBox(INSIDE, 0);
  const [x, y] = [at[0] + (S * scale.x - width) / 2, at[1] + (S * scale.y - height) / 2];
  const words = blockWords(INSIDE, { minX: x, minY: y, maxX: x + width, maxY: y + height }, 0, {
    align: "centre",
  });
  return [...areasOn(FRAME, at, scale), ...words];
}

/** The boxes of the four corner ticks of a square in this box. */
function corners({ minX, minY, maxX, maxY }: Box): readonly Box[] {
  const at = (x: number, y: number): Box => ({ minX: x, minY: y, maxX: x + ARM_MM, maxY: y + ARM_MM });
  return [at(minX, minY), at(maxX - ARM_MM, minY), at(minX, maxY - ARM_MM), at(maxX - ARM_MM, maxY - ARM_MM)];
}

/** Corner ticks are tried this far apart, mm; then finer. */
const STEPS_MM = [4, 1] as const;

/** Where four ticks cross nothing, nearest to the page's middle. */
function ticksPlace(space: Space, area: Box, width: number, height: number): Box | undefined {
  const middle: Point = [(area.minX + area.maxX - width) / 2, (area.minY + area.maxY - height) / 2];
  for (const step of STEPS_MM) {
    let best: { readonly box: Box; readonly far: number } | undefined;
    for (let x = area.minX; x <= area.maxX - width; x += step) {
      for (let y = area.minY; y <= area.maxY - height; y += step) {
        const far = (x - middle[0]) ** 2 + (y - middle[1]) ** 2;
        if (best && far >= best.far) continue;
        const box = { minX: x, minY: y, maxX: x + width, maxY: y + height };
        if (corners(box).every((c) => isFree(space, grownBy(c, 0.5)))) best = { box, far };
      }
    }
    if (best) return best.box;
  }
  return undefined;
}

const sizeOn = (scale: Scale): { readonly width: number; readonly height: number } => ({
  width: SQUARE_MM * scale.x,
  height: SQUARE_MM * scale.y,
});

/**
 * Puts the square on a page as corner ticks over the pieces, which cross no line, hole or word: on bare
 * leather if there is enough of it, else with whatever lies between the corners.
 */
export function withTicks(page: Page): Page | undefined {
  const size = sizeOn(page.scale);
  const middle: Point = [
    (page.printable.minX + page.printable.maxX) / 2,
    (page.printable.minY + page.printable.maxY) / 2,
  ];
  const whole = findPlace(page.space, { ...size, areas: [page.printable], near: middle, clear: CLEAR_MM });
  const box = whole ?? ticksPlace(page.space, page.printable, size.width, size.height);
  if (!box) return undefined;
  const marked = withMore(page, areasOn(TICKS, [box.minX, box.minY], page.scale), corners(box));
  const words = blockBox(BY_TICKS, 0);
  const near: Point = [(box.minX + box.maxX) / 2, box.minY + 8];
  const place =
    findPlace(marked.space, { ...words, areas: [box], near }) ??
    findPlace(marked.space, { ...words, areas: [page.printable], near });
  return place ? withMore(marked, blockWords(BY_TICKS, place)) : marked;
}

/** Puts the calibration square on a page in free space; undefined when there is none. */
export function withSquare(page: Page, near: Point): Page | undefined {
  const box = findPlace(page.space, {
    ...sizeOn(page.scale),
    areas: [page.printable],
    near,
    clear: CLEAR_MM,
    accept: (b) => !overLeather(page, b),
  });
  return box && withMore(page, squareAt([box.minX, box.minY], page.scale), [box]);
}
