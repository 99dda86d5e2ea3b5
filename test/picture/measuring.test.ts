import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { bag as bagArticle } from "../../src/articles/bag.ts";
import { bagMeasuresTable } from "../../src/articles/bagTables.ts";
import { headstall } from "../../src/articles/headstall.ts";
import { plainStrap } from "../../src/articles/strap.ts";
import { signedArea } from "../../src/geometry/area.ts";
import { distanceToPath } from "../../src/geometry/distance.ts";
import { type Box, openPath, type Path, type Point, polyline } from "../../src/geometry/path.ts";
import { apart } from "../../src/geometry/vector.ts";
import { svg } from "../../src/output/svg.ts";
import { flattenPicture } from "../../src/picture/flat.ts";
import { arrowItems } from "../../src/picture/measuring/arrow.ts";
import { bagDrawing } from "../../src/picture/measuring/bagDrawing.ts";
import type { MeasureDrawing } from "../../src/picture/measuring/drawing.ts";
import { headDrawing } from "../../src/picture/measuring/headDrawing.ts";
import {
  leastPaper,
  type Measured,
  measuringSheet,
  type PaperSize,
} from "../../src/picture/measuring/measuringSheet.ts";
import { penned, smooth, smoothLoop } from "../../src/picture/measuring/pen.ts";
import { strapDrawing } from "../../src/picture/measuring/strapDrawing.ts";
import { wrapped } from "../../src/picture/measuring/wrap.ts";
import type { Item, Picture, Stroke, Words } from "../../src/picture/picture.ts";
import { textBox, textWidth } from "../../src/picture/words.ts";
import { stroke, words as wordsOf } from "../support/picture.ts";
import { darkness, type Image, inkBox, measureSquare, renderSvg } from "../support/render.ts";

const DPI = 120;
const PX = DPI / 25.4;

const letter: PaperSize = { width: 215.9, height: 279.4 };
const papers: Readonly<Record<string, PaperSize>> = {
  letter,
  a4: { width: 210, height: 297 },
  tabloid: { width: 279.4, height: 431.8 },
};

/** An article that has no drawing, with more measures than fingers and words too long for a line. */
const hood: Measured = {
  name: "hood for Ελένη",
  means: "nothing that has a drawing",
  measuring: Array.from({ length: 11 }, (_, i) => ({
    measure: `part-${i + 1}`,
    how: i === 3 ? "m".repeat(150) : `Round part ${i + 1}, tape snug, twice.`,
  })),
};
/** A bag's measures, by hand; two of them are asked in words. */
const bag: Measured = {
  name: "bag",
  means: "a flap bag or a tote",
  measuring: [
    { measure: "measured", how: "Say which." },
    { measure: "width", how: "Side to side at its base." },
    { measure: "height", how: "From the base to the top edge of the front." },
    { measure: "depth", how: "Front to back at the base." },
    { measure: "filled-depth", how: "Front to back at the top, the bag filled." },
    { measure: "shoulder-drop", how: "From the top of the shoulder down to where the strap meets the bag." },
    { measure: "hand-drop", how: "From the top edge to the inside of the handle." },
    { measure: "holds", how: "Say what." },
  ],
};
const twoParts: Measured = { ...hood, measuring: hood.measuring.slice(0, 2) };

const sheets: readonly (readonly [string, Picture])[] = [
  ...Object.entries(papers).flatMap(([name, paper]) =>
    [headstall, plainStrap, bag, twoParts].map((a): [string, Picture] => [
      `${a.name} on ${name}`,
      measuringSheet(a, paper),
    ]),
  ),
  ...[headstall, plainStrap, bag, hood].map((a): [string, Picture] => {
    const least = leastPaper(a, 200);
    return [`${a.name} on the least paper`, measuringSheet(a, least)];
  }),
];
const letterSheets = sheets.filter(([name]) => name.endsWith("letter"));

const flat = (picture: Picture): readonly (Stroke | Words)[] =>
  flattenPicture(picture).map(({ item }) => item);
const allWords = (picture: Picture): readonly Words[] =>
  flat(picture).filter((i): i is Words => i.kind === "words");
const allStrokes = (picture: Picture): readonly Stroke[] =>
  flat(picture).filter((i): i is Stroke => i.kind === "stroke");
const texts = (picture: Picture): readonly string[] => allWords(picture).map(({ text }) => text);

const withoutWords = (items: readonly Item[]): readonly Item[] =>
  items.flatMap((i): readonly Item[] => {
    if (i.kind === "words") return [];
    return i.kind === "group" ? [{ ...i, items: withoutWords(i.items) }] : [i];
  });

/** Is there ink in this box of the picture, mm? */
function inkIn(image: Image, height: number, { minX, minY, maxX, maxY }: Box): boolean {
  for (let x = Math.floor(minX * PX); x < maxX * PX; x += 1)
    for (let y = Math.floor((height - maxY) * PX); y < (height - minY) * PX; y += 1)
      if (darkness(image, x, y) > 0.1) return true;
  return false;
}

/** What is drawn, rendered without the words; once for each picture. */
const drawn = new Map<Picture, Image>();
function drawnImage(picture: Picture): Image {
  const image = drawn.get(picture) ?? renderSvg(svg({ ...picture, items: withoutWords(picture.items) }), DPI);
  drawn.set(picture, image);
  return image;
}

/** Words that a drawn line crosses or touches: there is ink where they are to stand. */
const struckWords = (picture: Picture): readonly string[] =>
  allWords(picture)
    .filter((w) => inkIn(drawnImage(picture), picture.height, textBox(w)))
    .map(({ text }) => text);

const overlap = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

function overlappingWords(picture: Picture): readonly string[] {
  const boxes = allWords(picture).map((w) => ({ text: w.text, box: textBox(w) }));
  return boxes.flatMap((a, i) =>
    boxes.slice(i + 1).flatMap((b) => (overlap(a.box, b.box) ? [`${a.text} / ${b.text}`] : [])),
  );
}

describe("words on the sheet", () => {
  test.each(sheets)("%s: no two overlap, none is crossed by a line", (_, picture) => {
    expect(overlappingWords(picture)).toEqual([]);
    expect(struckWords(picture)).toEqual([]);
  });

  test("a line through a word and a word on a word are seen", () => {
    const bad: Picture = {
      title: "bad",
      width: 100,
      height: 50,
      items: [
        wordsOf("struck", [10, 20]),
        wordsOf("free", [60, 20]),
        wordsOf("over it", [62, 21]),
        stroke(
          "sheet",
          "01.1",
          polyline([
            [5, 21],
            [20, 21],
          ]),
        ),
      ],
    };
    expect(struckWords(bad)).toEqual(["struck"]);
    expect(overlappingWords(bad)).toEqual(["free / over it"]);
  });

  test.each(sheets)("%s: no letters under 3 mm", (_, picture) => {
    expect(Math.min(...allWords(picture).map(({ size }) => size))).toBeGreaterThanOrEqual(3);
  });
});

/** Softened edges of lines reach one pixel further. */
const SOFT = 1 / PX;

function strays(picture: Picture): readonly string[] {
  const { minX, minY, maxX, maxY } = inkBox(drawnImage(picture))!;
  const { width, height } = picture;
  const inside = (box: Box, slack: number): boolean =>
    Math.min(box.minX, box.minY, width - box.maxX, height - box.maxY) >= 10 - slack;
  const lines = inside({ minX: minX / PX, minY: minY / PX, maxX: maxX / PX, maxY: maxY / PX }, SOFT);
  const words = allWords(picture).filter((w) => !inside(textBox(w), 0));
  return [...(lines ? [] : ["a line"]), ...words.map(({ text }) => text)];
}

describe("the outer 10 mm", () => {
  test.each(sheets)("%s: nothing is drawn there", (_, picture) => expect(strays(picture)).toEqual([]));

  test("what lies there is seen", () => {
    const square = (low: number, size: number) =>
      stroke(
        "sheet",
        "01.1",
        polyline(
          [
            [low, low],
            [low + size, low],
            [low + size, low + size],
          ],
          true,
        ),
      );
    const page = { title: "bad", width: 60, height: 60 };
    expect(strays({ ...page, items: [square(9.5, 30), wordsOf("long words", [40, 30])] })).toEqual([
      "a line",
      "long words",
    ]);
    expect(strays({ ...page, items: [square(10.25, 30), wordsOf("in", [30, 30])] })).toEqual([]);
  });
});

describe("what the sheet says", () => {
  test.each([headstall, plainStrap, hood])(
    "$name: every measure with its number, its name and all of its how",
    (article) => {
      const said = texts(measuringSheet(article, { width: 279.4, height: 431.8 }));
      const all = said.join(" ").replace(/\s+/g, "");
      article.measuring.forEach(({ measure, how }, i) => {
        expect(said).toContain(measure);
        expect(said).toContain(`${i + 1}`);
        expect(all).toContain(how.replace(/\s+/g, ""));
      });
    },
  );

  test.each(letterSheets)("%s: lines to fill in, print at 100 %, remarks", (_, picture) => {
    const all = texts(picture).join(" ");
    for (const text of [
      "For",
      "Date",
      "Measured by",
      "Measure me: 50 mm",
      "Print at 100 %, do not scale.",
      "Remarks",
    ])
      expect(all).toContain(text);
  });

  test("the headstall's sheet says bit in, tape snug, twice, both sides, and never tied by the bridle", () => {
    const all = texts(measuringSheet(headstall, letter)).join(" ").toLowerCase();
    for (const text of ["bit in", "tape snug", "twice", "both sides", "never tied by the bridle"])
      expect(all).toContain(text);
  });

  test("a bag's sheet asks inside or outside and what goes in, with boxes to tick and no numbers", () => {
    const said = texts(measuringSheet(bag, letter));
    const all = said.join(" ");
    for (const part of ["measured", "Inside or outside?", "holds", "What must go in?", "other:"])
      expect(all).toContain(part);
    for (const choice of ["outside", "inside", "phone", "A5 book"]) expect(said).toContain(choice);
    // Six measures have numbers, each on the drawing and in the table; the two questions have none.
    for (const n of [1, 2, 3, 4, 5, 6]) expect(said.filter((t) => t === `${n}`)).toHaveLength(2);
    expect(said).not.toContain("7");
    for (const unit of ["in", "cm"]) expect(said.filter((t) => t === unit)).toHaveLength(6);
  });

  test("what is ticked is what an order can say", () => {
    const choices = (section: string, name: string): unknown => {
      const dimension = headstall.sections.find(({ path }) => path === section)!.table[name]!;
      return dimension.kind === "choice" ? dimension.choices : undefined;
    };
    const asked = (measure: string) => bagDrawing.questions!.find((q) => q.measure === measure)!.choices;
    expect(asked("measured")).toEqual(bagMeasuresTable.measured.choices);
    expect(["anything", ...asked("holds")]).toEqual(bagMeasuresTable.holds.choices);
    expect(headDrawing.asks["over-poll"]!.choices).toEqual(choices("measures", "measuredFrom"));
    const ears = headstall.sections.flatMap(({ table }) =>
      table.ear?.kind === "choice" ? [table.ear.choices] : [],
    );
    expect(headDrawing.asks["ear-base"]!.choices).toEqual(ears[0]!.map((side) => `${side} ear`));
  });
});

describe("boxes to write in", () => {
  const boxes = (picture: Picture, least: Point, most: Point): number =>
    allStrokes(picture).filter(({ layer, path }) => {
      if (layer !== "sheet" || !path.closed || path.segments.length !== 4) return false;
      const [w, h] = [
        apart(path.start, path.segments[0]!.to),
        apart(path.segments[0]!.to, path.segments[1]!.to),
      ];
      return w >= least[0] && h >= least[1] && w <= most[0] && h <= most[1];
    }).length;

  test.each([
    ["headstall", headstall, ["1st", "2nd", "other side"]],
    ["strap", plainStrap, ["1st", "2nd"]],
    ["no drawing", twoParts, ["1st", "2nd", "other side"]],
  ] as const)("%s: one for each reading, two units to tick", (_, article, names) => {
    const picture = measuringSheet(article, letter);
    const rows = article.measuring.length;
    for (const name of [...names, "unit"]) expect(texts(picture)).toContain(name);
    // A measure like 41 1/2 in pencil needs some 20 × 10 mm.
    expect(boxes(picture, [20, 10], [40, 20])).toBe(rows * names.length);
    const asks = article === headstall ? 4 : 0;
    expect(boxes(picture, [3, 3], [6, 6])).toBe(rows * 2 + asks);
    for (const unit of ["in", "cm"]) expect(texts(picture).filter((t) => t === unit)).toHaveLength(rows);
  });
});

test("the check square is 50 mm when the sheet is rendered, within a pixel at 300 dpi", () => {
  const picture = measuringSheet(headstall, letter);
  const bare = { ...picture, items: withoutWords(picture.items) };
  const label = allWords(picture).find(({ text }) => text.startsWith("Measure me"))!;
  const image = renderSvg(svg(bare), 300);
  const inside = [label.at[0], picture.height - label.at[1]].map((mm) => Math.round((mm * 300) / 25.4));
  const square = measureSquare(image, [inside[0]!, inside[1]!]);
  // 50 mm at 300 dpi: 50 / 25.4 × 300.
  expect(Math.abs(square.x.middles - 590.55)).toBeLessThan(1);
  expect(Math.abs(square.y.middles - 590.55)).toBeLessThan(1);
});

describe("arrows", () => {
  const drawings: readonly (readonly [string, Measured, MeasureDrawing])[] = [
    ["headstall", headstall, headDrawing],
    ["strap", plainStrap, strapDrawing],
    [
      "bag",
      { ...bag, measuring: bag.measuring.filter((m) => !["measured", "holds"].includes(m.measure)) },
      bagDrawing,
    ],
  ];
  test.each(drawings)("%s: one for each measure, and none for anything else", (_, article, drawing) => {
    const measures = article.measuring.map(({ measure }) => measure);
    expect(Object.keys(drawing.arrows).sort()).toEqual([...measures].sort());
    for (const asked of Object.keys(drawing.asks)) expect(measures).toContain(asked);
  });

  test("the bag in the program: every measure has its arrow or is a question, and letter paper holds it", () => {
    const known = [...Object.keys(bagDrawing.arrows), ...bagDrawing.questions!.map((q) => q.measure)];
    for (const { measure } of bagArticle.measuring) expect(known).toContain(measure);
    const least = leastPaper(bagArticle, letter.width);
    expect(least.height).toBeLessThanOrEqual(letter.height);
    expect(overlappingWords(measuringSheet(bagArticle, letter))).toEqual([]);
  });

  const triangles = (items: readonly Item[]): readonly Stroke[] =>
    items.filter(
      (i): i is Stroke => i.kind === "stroke" && i.fill === "black" && i.path.segments.length === 3,
    );
  const numberRings = (picture: Picture, number: string): number =>
    texts(picture).filter((t) => t === number).length;

  test("an arrow's heads touch the two ends of what it measures, its number stands in the middle", () => {
    const arrow = {
      points: [
        [0, 0],
        [30, 0],
      ] as Point[],
      heads: "both" as const,
      number: 0.5,
    };
    const items = arrowItems(arrow, 7, { to: (p) => p, scale: 1 });
    const tips = triangles(items).map(({ path }) => path.start);
    expect(tips.map((tip) => [Math.round(tip[0] * 1000) / 1000, tip[1]])).toEqual([
      [0, 0],
      [30, 0],
    ]);
    const ring = items.find((i): i is Stroke => i.kind === "stroke" && i.fill === "white")!;
    expect(distanceToPath([15, 0], ring.path)).toBeCloseTo(3.2, 6);
  });

  test("the heads of a short arrow don't meet", () => {
    const arrow = {
      points: [
        [0, 0],
        [5, 0],
      ] as Point[],
      heads: "both" as const,
      number: [2, -5] as Point,
    };
    const heads = triangles(arrowItems(arrow, 1, { to: (p) => p, scale: 1 }));
    const reach = heads.map(({ path }) => path.segments.map(({ to }) => to[0]));
    const [left, right] = [
      reach.find((xs) => Math.min(...xs) < 1)!,
      reach.find((xs) => Math.max(...xs) > 4)!,
    ];
    expect(Math.max(...left)).toBeLessThan(Math.min(...right));
  });

  test("a measure that the drawing doesn't know has its row but no arrow", () => {
    const more: Measured = {
      ...plainStrap,
      measuring: [...plainStrap.measuring, { measure: "depth", how: "Down." }],
    };
    const picture = measuringSheet(more, letter);
    expect(numberRings(picture, "1")).toBe(2);
    expect(numberRings(picture, "3")).toBe(1);
    expect(texts(picture)).toContain("depth");
  });

  test("without a drawing there are no arrows, and a frame to sketch in", () => {
    const picture = measuringSheet(twoParts, letter);
    expect(triangles(flat(picture))).toEqual([]);
    expect(numberRings(picture, "1")).toBe(1);
    expect(texts(picture).join(" ")).toContain("Sketch what you measure");
    expect(triangles(flat(measuringSheet(plainStrap, letter)))).toHaveLength(4);
  });

  test("the tape over the poll begins on the bit's ring and runs out over the crest of the neck", () => {
    const points = headDrawing.arrows["over-poll"]!.points;
    const ring = headDrawing.views[0]!.lines.find((l) => l.kind === "ring")!;
    const bears = apart(points[0]!, ring.at);
    expect(Math.abs(bears - ring.radius)).toBeLessThanOrEqual(ring.wire / 2);
    const pens = headDrawing.views[0]!.lines.filter((l) => l.kind === "pen").flatMap((l) => l.points);
    const behindEars = pens.filter(([x]) => x < points.at(-1)![0]);
    expect(points.at(-1)![1]).toBeGreaterThan(Math.max(...behindEars.map(([, y]) => y)));
  });
});

describe("paper", () => {
  test.each([headstall, plainStrap, hood])("$name: fits the least paper, and nothing smaller", (article) => {
    const least = leastPaper(article, 215.9);
    const picture = measuringSheet(article, { ...least, width: 215.9 });
    expect(picture.height).toBeCloseTo(least.height, 6);
    expect(() => measuringSheet(article, { width: 215.9, height: least.height - 0.1 })).toThrow(RangeError);
    expect(() => measuringSheet(article, { width: least.width - 0.1, height: 5000 })).toThrow(RangeError);
  });

  test("a headstall's sheet fits Letter and A4", () => {
    for (const paper of [letter, papers.a4!])
      expect(leastPaper(headstall, paper.width).height).toBeLessThanOrEqual(paper.height);
  });

  test("a roll's page ends where the sheet ends", () => {
    const picture = measuringSheet(headstall, { width: 610, height: 5000 });
    expect(picture.width).toBe(610);
    expect(picture.height).toBeLessThan(500);
    expect(struckWords(picture)).toEqual([]);
  });

  test("black and white, and the same each time", () => {
    const [once, again] = [measuringSheet(headstall, letter), measuringSheet(headstall, letter)].map(svg);
    expect(once).toBe(again);
    const colours = new Set(Array.from(once!.matchAll(/(?:fill|stroke)="(#?\w+)"/g), (m) => m[1]));
    expect([...colours].sort()).toEqual(["#000", "#fff", "none"]);
  });
});

describe("wrapping", () => {
  const cases = fc.record({
    text: fc.lorem({ maxCount: 30 }),
    size: fc.double({ min: 3, max: 8, noNaN: true }),
    width: fc.double({ min: 15, max: 120, noNaN: true }),
    bold: fc.boolean(),
  });

  test("no line is broader than its room, no letter is lost, no line could have taken the next word", () => {
    fc.assert(
      fc.property(cases, ({ text, size, width, bold }) => {
        const lines = wrapped(text, { size, width, bold });
        for (const line of lines)
          if (Array.from(line).length > 1) expect(textWidth(line, size, bold)).toBeLessThanOrEqual(width);
        expect(lines.join("").replace(/ /g, "")).toBe(text.replace(/\s/g, ""));
        lines.slice(1).forEach((line, i) => {
          expect(textWidth(`${lines[i]} ${line.split(" ")[0]}`, size, bold)).toBeGreaterThan(width);
        });
      }),
      { seed: 11, numRuns: 200 },
    );
  });

  test("a word too long for a line is broken where the line ends", () => {
    const lines = wrapped(`up ${"m".repeat(40)} down`, { size: 4, width: 30 });
    expect(lines[0]).toBe("up");
    expect(lines.slice(1).join("").replace(" ", "")).toBe(`${"m".repeat(40)}down`);
    expect(Math.max(...lines.map((l) => textWidth(l, 4)))).toBeLessThanOrEqual(30);
  });

  test("no text gives no lines", () => expect(wrapped("  ", { size: 4, width: 30 })).toEqual([]));
});

describe("the pen", () => {
  const even = { start: 0.4, full: 0.4, end: 0.4 };

  test("a straight line covers its length times its breadth", () => {
    expect(
      signedArea(
        penned(
          polyline([
            [0, 0],
            [30, 40],
          ]),
          even,
        ),
      ),
    ).toBeCloseTo(-20, 6);
  });

  test("a round line covers the way of its middle times its breadth (Pappus)", () => {
    const r = 20;
    // A quarter circle as one cubic, with the usual handle of 4/3 (√2 − 1) radii.
    const k = (4 / 3) * (Math.SQRT2 - 1) * r;
    const quarter: Path = openPath([r, 0], [{ kind: "cubic", c1: [r, k], c2: [k, r], to: [0, r] }]);
    const area = Math.abs(signedArea(penned(quarter, even)));
    expect(Math.abs(area / ((Math.PI / 2) * r * 0.4) - 1)).toBeLessThan(0.02);
  });

  test("it is thin at its ends and full in the middle", () => {
    const edge = penned(
      polyline([
        [0, 0],
        [10, 0],
        [20, 0],
        [30, 0],
      ]),
      { start: 0.1, full: 0.6, end: 0.2 },
    );
    expect(distanceToPath([15, 0], edge)).toBeCloseTo(0.3, 2);
    expect(apart(edge.start, [0, 0])).toBeCloseTo(0.05, 6);
  });

  test("smooth lines go through their points and turn no corner", () => {
    const points: Point[] = [
      [0, 0],
      [10, 4],
      [14, 12],
      [30, 9],
    ];
    for (const path of [smooth(points), smoothLoop(points)]) {
      for (const p of points) expect(distanceToPath(p, path)).toBeCloseTo(0, 9);
      path.segments.slice(1).forEach((s, i) => {
        const before = path.segments[i]!;
        if (s.kind !== "cubic" || before.kind !== "cubic") throw new Error("a cubic was expected");
        const [a, b] = [before.c2, s.c1].map((c): Point => [c[0] - before.to[0], c[1] - before.to[1]]);
        const turn = (a![0] * b![1] - a![1] * b![0]) / (Math.hypot(...a!) * Math.hypot(...b!));
        expect(turn).toBeCloseTo(0, 9);
        expect(a![0] * b![0] + a![1] * b![1]).toBeLessThan(0);
      });
    }
    expect(smoothLoop(points).closed).toBe(true);
  });
});
