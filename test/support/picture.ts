import {
  arc,
  circlePath,
  closedPath,
  cubic,
  line,
  type Path,
  polyline,
  rectanglePath,
  slotPath,
} from "../../src/geometry/path.ts";
import type { Item, Layer, LineType, Picture, Stroke, Words } from "../../src/picture/picture.ts";

export const stroke = (layer: Layer, line: LineType, path: Path, more: Partial<Stroke> = {}): Stroke => ({
  kind: "stroke",
  layer,
  line,
  path,
  ...more,
});

export const words = (text: string, at: readonly [number, number], more: Partial<Words> = {}): Words => ({
  kind: "words",
  layer: "text",
  at,
  size: 4,
  text,
  align: "left",
  angle: 0,
  ...more,
});

/** Text that tries to break out of every format, to turn the page round, to hide. */
export const hostile = [
  `</text><script>alert(1)</script>`,
  `]]> & <!-- " ' -->`,
  `) Tj ET (\\) \\\\ (`,
  `a\u202Egnp.exe\u202C\u2066b\u2069`,
  `\u0000\u0007bell\u001b[31m`,
  `lone \ud800 surrogate`,
  `Juniper \u{1F40E}`,
] as const;

/** A made-up strap: point, swelled edge, slot, holes, fold, stitch lines. */
function strap(): readonly Item[] {
  const outline = closedPath(
    [0, 0],
    [
      line([120, 0]),
      cubic([130, 0], [138, -3], [150, -3]),
      arc([150, 19], [150, 8], true),
      cubic([138, 19], [130, 16], [120, 16]),
      line([8, 16]),
      arc([0, 8], [8, 8], true),
      line([0, 0]),
    ],
  );
  const holes = [20, 39, 58].map((x, i) =>
    stroke("hole", "01.1", circlePath([x, 8], 2), { fill: "black", id: `hole-${i + 1}` }),
  );
  return [
    stroke("cut", "01.2", outline, { id: "outline" }),
    stroke("hole", "01.2", slotPath([132, 8], 14, 5), { id: "slot", fill: "white" }),
    ...holes,
    stroke(
      "fold",
      "04.1",
      polyline([
        [100, -4],
        [100, 20],
      ]),
      { id: "fold" },
    ),
    stroke(
      "fold",
      "05.1",
      polyline([
        [104, -4],
        [104, 20],
      ]),
    ),
    stroke(
      "stitch",
      "07.1",
      polyline([
        [6, 3],
        [96, 3],
      ]),
      { id: "stitch" },
    ),
    stroke(
      "mark",
      "02.1",
      polyline([
        [6, 13],
        [96, 13],
      ]),
    ),
    stroke(
      "skive",
      "03.1",
      polyline([
        [6, 5],
        [96, 5],
      ]),
    ),
    stroke(
      "mark",
      "01.1",
      polyline([
        [6, 11],
        [96, 11],
      ]),
    ),
    words("cheek, near side", [70, 7], { size: 3, align: "centre" }),
  ];
}

/** A page with a 50 mm square, straps laid in several ways, a clipped group and texts of all kinds. */
export const testPicture: Picture = {
  title: `Juniper's <headstall> & "more"`,
  width: 215.9,
  height: 279.4,
  items: [
    stroke("sheet", "01.1", rectanglePath([20, 20], 50, 50), { id: "square" }),
    { kind: "group", id: "cheek", placement: { at: [20, 240], angle: 0 }, items: strap() },
    {
      kind: "group",
      id: "cheek-off",
      placement: { at: [190, 200], angle: Math.PI, mirrored: true },
      items: strap(),
    },
    {
      kind: "group",
      id: "part",
      placement: { at: [120, 20], angle: 0.6 },
      clip: { minX: 40, minY: -10, maxX: 110, maxY: 30 },
      items: strap(),
    },
    words("Ηνιοχική Ελένη", [20, 170]),
    words("Уздечка для Ёлки, Љубица", [20, 162], { bold: true }),
    words("Straße Čapek Łukasz ½ ¾ → ≤ 41½ in", [20, 154]),
    words("over-poll 1 054 mm", [205, 120], { angle: Math.PI / 2, align: "centre", size: 5 }),
    words("slanted, ends here", [190, 180], { angle: -0.3, align: "right", bold: true }),
    ...hostile.map((text, i) => words(text, [20, 140 - 7 * i])),
  ],
};
