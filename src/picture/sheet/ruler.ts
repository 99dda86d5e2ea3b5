import type { Point } from "../../geometry/path.ts";
import type { Item, Words } from "../picture.ts";
import { findPlace } from "../piece/find.ts";
import { textWidth } from "../words.ts";
import { overLeather, type Page, withMore } from "./page.ts";
import type { Scale } from "./scale.ts";
import { type Area, areasOn } from "./square.ts";

// A ruler with millimetres above its line and inches below. Its marks are filled areas whose left edge is
// the mark, so that a ruler laid beside it agrees wherever it is read from.

const LINE_MM = 0.2;
const MM_PER_INCH = 25.4;
/** Lengths of marks: every 1, 5, 10 mm; every 1/8, 1/2, 1 in. */
const MARKS_MM = { short: 1.5, middle: 2.4, long: 3.2 } as const;
const FIGURE_MM = 2.2;
/** From a mark's end to the base line or the top of its figure. */
const FIGURE_GAP_MM = 0.3;
const CAP = 0.73;
/** Half the ruler's height: the longest mark and a figure. */
const HALF_MM = MARKS_MM.long + FIGURE_GAP_MM + FIGURE_MM * CAP + 0.4;
export const RULER_HEIGHT_MM = 2 * HALF_MM;
/** Room for the units after the last mark. */
const TAIL_MM = 6;

export type Ruler = { readonly mm: number; readonly inches: number };
/** A long ruler, and shorter ones for less room. */
export const RULERS: readonly Ruler[] = [
  { mm: 150, inches: 6 },
  { mm: 100, inches: 4 },
  { mm: 50, inches: 2 },
];

const lengthOf = ({ mm, inches }: Ruler): number => Math.max(mm, inches * MM_PER_INCH);
export const rulerSize = (
  ruler: Ruler,
  scale: Scale,
): { readonly width: number; readonly height: number } => ({
  width: lengthOf(ruler) * scale.x + TAIL_MM,
  height: RULER_HEIGHT_MM,
});

const mmMark = (i: number): number =>
  i % 10 === 0 ? MARKS_MM.long : i % 5 === 0 ? MARKS_MM.middle : MARKS_MM.short;
const inchMark = (i: number): number =>
  i % 8 === 0 ? MARKS_MM.long : i % 4 === 0 ? MARKS_MM.middle : MARKS_MM.short;

function figure(text: string, x: number, y: number, align: Words["align"] = "centre"): Words {
  return { kind: "words", layer: "text", at: [x, y], size: FIGURE_MM, text, align, angle: 0 };
}

/** A ruler whose lower left corner is at `at`. Heights don't follow the scale: nothing is measured by them. */
export function rulerAt([left, foot]: Point, ruler: Ruler, scale: Scale): readonly Item[] {
  const middle = foot + HALF_MM;
  const flat = { x: scale.x, y: 1 };
  const millimetres = Array.from(
    { length: ruler.mm + 1 },
    (_, i): Area => [i - LINE_MM / 2, 0, LINE_MM, mmMark(i)],
  );
  const eighths = Array.from({ length: ruler.inches * 8 + 1 }, (_, i): Area => {
    const long = inchMark(i);
    return [(i * MM_PER_INCH) / 8 - LINE_MM / 2, -long, LINE_MM, long];
  });
  const line: Area = [-LINE_MM / 2, -LINE_MM / 2, lengthOf(ruler) + LINE_MM, LINE_MM];
  const above = middle + MARKS_MM.long + FIGURE_GAP_MM;
  const below = middle - MARKS_MM.long - FIGURE_GAP_MM - FIGURE_MM * CAP;
  const start = left + textWidth("0", FIGURE_MM) / 2;
  const end = start + lengthOf(ruler) * scale.x;
  const tens = Array.from({ length: ruler.mm / 10 + 1 }, (_, i) =>
    figure(String(i * 10), start + i * 10 * scale.x, above),
  );
  const inches = Array.from({ length: ruler.inches + 1 }, (_, i) =>
    figure(String(i), start + i * MM_PER_INCH * scale.x, below),
  );
  return [
    ...areasOn([...millimetres, ...eighths, line], [start, middle], flat),
    ...tens,
    ...inches,
    figure("mm", end + 1.4, middle + 0.8, "left"),
    figure("in", end + 1.4, middle - 2.2, "left"),
  ];
}

/** Puts the longest ruler, up to `longest` mm, that finds free space on a page; over leather only when there is no other place. */
export function withRuler(page: Page, near: Point, longest = Number.POSITIVE_INFINITY): Page {
  const free = (leather: boolean): Page | undefined => {
    for (const ruler of RULERS.filter((r) => r.mm <= longest)) {
      const size = rulerSize(ruler, page.scale);
      const box = findPlace(page.space, {
        ...size,
        areas: [page.printable],
        near,
        accept: (b) => leather || !overLeather(page, b),
      });
      if (box) return withMore(page, rulerAt([box.minX, box.minY], ruler, page.scale), [box]);
    }
    return undefined;
  };
  return free(false) ?? free(true) ?? page;
}
