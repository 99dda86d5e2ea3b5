import {
  arc,
  circlePath,
  closedPath,
  line,
  type Path,
  polyline,
  SAME_POINT_MM,
} from "../../geometry/path.ts";
import { mirroredInY } from "../../geometry/transform.ts";
import type { Made } from "../../model/article.ts";
import type { Bar, Piece, TurnBack } from "../../model/piece.ts";
import { sayFigure, sayValue, type Units } from "../../model/say.ts";
import type { Item } from "../picture.ts";
import { stroke } from "../piece/strokes.ts";
import { type FoldedPicture, framed, GAP_MM, measured, WORD_MM, words } from "./frame.ts";
import { KEEPER_MM, keeperItems, tickItems, ticksOf } from "./onLegs.ts";
import { heightsOf, legLines, type Side, sideOf, xAt } from "./side.ts";

// Each turn-back as it lies when it is folded, seen from the side, true to scale.

/** Between dimension lines, mm. */
const LINE_MM = 4.5;

/** A face of the leather; its neutral fibre is a middle line. */
const legStroke = ({ id, path }: { readonly id: string; readonly path: Path }): Item =>
  id.endsWith(".neutral") ? stroke("mark", "04.1", path, id) : stroke("cut", "01.2", path, id);

function barPath(bar: Bar): Path {
  if (bar.kind === "round") return circlePath([0, 0], bar.diameter / 2);
  const [x, y, c] = [bar.along / 2, bar.through / 2, bar.corner];
  const [a, b] = [x - c, y - c];
  if (c < SAME_POINT_MM)
    return polyline(
      [
        [x, y],
        [-x, y],
        [-x, -y],
        [x, -y],
      ],
      true,
    );
  return closedPath(
    [x, b],
    [
      arc([a, y], [a, b], true),
      line([-a, y]),
      arc([-x, b], [-a, b], true),
      line([-x, -b]),
      arc([-a, -y], [-a, -b], true),
      line([a, -y]),
      arc([x, -b], [a, -b], true),
      line([x, b]),
    ],
  );
}

const sayBar = (bar: Bar, units: Units): string =>
  bar.kind === "round"
    ? `a bar of ${sayFigure(bar.diameter, "length", units)}`
    : `${sayFigure(bar.through, "length", units)} through by ${sayFigure(bar.along, "length", units)} along`;

function sizesInWords(side: Side, units: Units): readonly string[] {
  const { t, piece, held, backEnd } = side;
  const size = (mm: number): string => sayValue(mm, "length", units);
  const pairs = t.mates.flatMap(([front, back]) => {
    const [a, b] = [front, back].map((id) => piece.holes.find((h) => h.id === id));
    return a && b ? [Math.abs(a.at[0] - b.at[0])] : [];
  });
  const stitches = ticksOf(side).filter(({ leg }) => leg === "both").length;
  return [
    `Folded round ${sayBar(t.bar, units)}.`,
    `From the bar's middle to the first hole, folded: ${size(t.clamp)}.`,
    `From the fold to there, along the leather: ${size(held + t.clamp - t.liftOff)} on either leg.`,
    ...pairs.map(
      (mm, i) => `From hole ${i + 1} of the front leg to its mate on the back leg, on the flat: ${size(mm)}.`,
    ),
    `The back leg ends ${size(backEnd)} from the fold.`,
    `Leather: ${thick(t.wrapThickness, units)} in the fold, ${thick(t.frontThickness, units)} in front, ${thick(t.backThickness, units)} behind${t.caught > 0 ? `, ${thick(t.caught, units)} caught between them` : ""}.`,
    ...(stitches > 0 ? [`${stitches} holes in each row of stitches go through both legs.`] : []),
  ];
}
const thick = (mm: number, units: Units): string => sayValue(mm, "thickness", units);

function turnBackPicture(side: Side, made: Made, units: Units): FoldedPicture {
  const { t, piece, taut, frontShown, backEnd } = side;
  const title = `${piece.name}: ${piece.folds.find((f) => f.id === t.fold)?.label.replace(/;.*$/, "") ?? t.id}`;
  const legs = [
    ...legLines(side, "front", t.frontThickness, frontShown),
    ...legLines(side, "back", t.backThickness, backEnd).map(({ id, path }) => ({
      id,
      path: mirroredInY(path),
    })),
  ];
  const [front, back] = [heightsOf(side, t.frontThickness), heightsOf(side, t.backThickness)];
  const lowest = Math.min(-back.grain, -(taut.bar.up + taut.radius + t.wrapThickness));
  const keeper = keeperItems(side, made);
  const first = lowest - KEEPER_MM - LINE_MM;
  const drawn: readonly Item[] = [
    ...legs.map(legStroke),
    stroke("mark", "01.2", barPath(t.bar), "bar"),
    ...tickItems(side),
    ...keeper,
    words("front leg", [xAt(side, frontShown), front.grain + GAP_MM], "right"),
    words("back leg", [xAt(side, backEnd) + GAP_MM, -back.grain - WORD_MM / 2], "left"),
    ...measured(0, t.clamp, first, `${sayFigure(t.clamp, "length", units)} to the first hole`),
    ...measured(
      0,
      xAt(side, backEnd),
      first - LINE_MM,
      `${sayFigure(xAt(side, backEnd), "length", units)} to the back leg's end`,
    ),
  ];
  return framed(title, drawn, sizesInWords(side, units), first - LINE_MM * 2, "seen from the side");
}

/** What is said of a turn-back that can't be folded as it stands. */
function noFold(piece: Piece, t: TurnBack): FoldedPicture {
  const title = `${piece.name}: ${t.id}`;
  const said =
    "Its legs are held so near the bar that no fold goes round it: it can't be drawn. The findings say how to mend it.";
  return framed(title, [words(title, [0, 0], "left")], [said], -GAP_MM, "seen from the side");
}

/** Every turn-back of every piece, folded; lengths as the leather lies, at full size. */
export const turnBackPictures = (made: Made, units: Units): readonly FoldedPicture[] =>
  made.pieces.flatMap((piece) =>
    piece.turnBacks.map((t) => {
      const side = sideOf(piece, t);
      return side ? turnBackPicture(side, made, units) : noFold(piece, t);
    }),
  );
