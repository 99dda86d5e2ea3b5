import type { Layout, Plate, Sheet } from "../../model/sheet.ts";
import { BAD_SHEETS, sayLength } from "../measure/words.ts";
import { type Context, type Remark, sheetRule } from "../rule.ts";

/** Joints agree within this. */
const JOINT_MM = 0.01;

type Side = "left" | "right" | "above" | "below";
const OPPOSITE: Readonly<Record<Side, Side>> = {
  left: "right",
  right: "left",
  above: "below",
  below: "above",
};
const SIDES: readonly Side[] = ["left", "right", "above", "below"];

const fault = (sheet: Sheet, side: Side, message: string, value: string, limit: string): Remark => ({
  severity: "error",
  piece: "",
  place: `sheet ${sheet.name}, ${side}`,
  message,
  value,
  limit,
  mend: BAD_SHEETS,
});

type Span = readonly [low: number, high: number];
/** A sheet's window along the way to its neighbour, and across it. */
function spansOf({ window }: Sheet, side: Side): { readonly along: Span; readonly across: Span } {
  const [x, y]: readonly [Span, Span] = [
    [window.minX, window.maxX],
    [window.minY, window.maxY],
  ];
  return side === "left" || side === "right" ? { along: x, across: y } : { along: y, across: x };
}

const same = (a: Span, b: Span): boolean =>
  Math.abs(a[0] - b[0]) <= JOINT_MM && Math.abs(a[1] - b[1]) <= JOINT_MM;

/** What is shared by a sheet and the neighbour it names: width of the overlap, its middle, and the edges beside it. */
function jointWrong(
  sheet: Sheet,
  side: Side,
  other: Sheet,
  plate: Plate,
  layout: Layout,
  context: Context,
): readonly Remark[] {
  const [mine, theirs] = [spansOf(sheet, side), spansOf(other, side)];
  const first = side === "left" || side === "below" ? theirs.along : mine.along;
  const second = side === "left" || side === "below" ? mine.along : theirs.along;
  const overlap = first[1] - second[0];
  const middle = (first[1] + second[0]) / 2;
  const joints = side === "left" || side === "right" ? plate.jointsX : plate.jointsY;
  const words = `Sheets ${sheet.name} and ${other.name}`;
  if (!same(mine.across, theirs.across))
    return [
      fault(sheet, side, `${words} are joined but don't lie level with each other.`, "not level", "level"),
    ];
  if (Math.abs(overlap - layout.overlap) > JOINT_MM) {
    const [is, says] = [sayLength(overlap, context), sayLength(layout.overlap, context)];
    return [fault(sheet, side, `${words} overlap by ${is}, not ${says}.`, is, says)];
  }
  if (joints.some((j) => Math.abs(j - middle) <= JOINT_MM)) return [];
  return [
    fault(
      sheet,
      side,
      `The joint of sheets ${sheet.name} and ${other.name} is not one of its plate's.`,
      sayLength(middle, context),
      joints.map((j) => sayLength(j, context)).join("; "),
    ),
  ];
}

function namedJoints(sheet: Sheet, plate: Plate, layout: Layout, context: Context): readonly Remark[] {
  return SIDES.flatMap((side) => {
    const name = sheet.joins[side];
    if (name === undefined) return [];
    const other = layout.sheets.find((s) => s.name === name);
    if (!other || other.plate !== sheet.plate)
      return [
        fault(
          sheet,
          side,
          `Sheet ${sheet.name} is to be joined to ${name}, which is no sheet of the same drawing.`,
          name,
          "a sheet of the same drawing",
        ),
      ];
    if (other.joins[OPPOSITE[side]] !== sheet.name)
      return [
        fault(
          sheet,
          side,
          `Sheet ${sheet.name} is to be joined to ${name}, but ${name} not to ${sheet.name}.`,
          "one way",
          "both ways",
        ),
      ];
    return jointWrong(sheet, side, other, plate, layout, context);
  });
}

/** Sheets that lie beside each other, share a strip, and don't say so. */
function unnamedJoints(sheet: Sheet, layout: Layout): readonly Remark[] {
  return (["right", "above"] as const).flatMap((side) =>
    layout.sheets.flatMap((other) => {
      if (other === sheet || other.plate !== sheet.plate || sheet.joins[side] === other.name) return [];
      const [mine, theirs] = [spansOf(sheet, side), spansOf(other, side)];
      const follows = theirs.along[0] > mine.along[0] + JOINT_MM && theirs.along[0] < mine.along[1];
      if (!follows || !same(mine.across, theirs.across)) return [];
      return [
        fault(
          sheet,
          side,
          `Sheets ${sheet.name} and ${other.name} lie beside each other, and neither says that they are joined.`,
          "not joined",
          "joined",
        ),
      ];
    }),
  );
}

/** Neighbours name each other, lie level, and overlap by what is claimed, their joint in the middle of it. */
export const sheetJoints = sheetRule(
  "sheet-joints",
  "neighbouring sheets overlap as claimed",
  (_, layout, context) =>
    layout.sheets.flatMap((sheet) => {
      const plate = layout.plates.find((p) => p.id === sheet.plate);
      return plate ? [...namedJoints(sheet, plate, layout, context), ...unnamedJoints(sheet, layout)] : [];
    }),
);
