// The geometry validator: every rule over a made article, and over the sheets it is printed on.
import type { Made } from "../model/article.ts";
import type { Finding, Severity } from "../model/finding.ts";
import type { Layout } from "../model/sheet.ts";
import { adjustmentRange } from "./piece/adjustmentRange.ts";
import { assemblyOrder } from "./piece/assemblyOrder.ts";
import { besideSlot } from "./piece/besideSlot.ts";
import { caughtClear } from "./piece/caughtClear.ts";
import { closureMeets } from "./piece/closureMeets.ts";
import { featheredEnd } from "./piece/featheredEnd.ts";
import { fixedHolesMeet } from "./piece/fixedHolesMeet.ts";
import { flapReach } from "./piece/flapReach.ts";
import { foldAsDrawn } from "./piece/foldAsDrawn.ts";
import { foldStrain } from "./piece/foldStrain.ts";
import { foldsInward } from "./piece/foldsInward.ts";
import { goesIn } from "./piece/goesIn.ts";
import { gussetStrain } from "./piece/gussetStrain.ts";
import { holesApart } from "./piece/holesApart.ts";
import { holesToEdge } from "./piece/holesToEdge.ts";
import { holeToWidth } from "./piece/holeToWidth.ts";
import { insideOutline } from "./piece/insideOutline.ts";
import { keeperGirth } from "./piece/keeperGirth.ts";
import { matesAgree } from "./piece/matesAgree.ts";
import { matesMeet } from "./piece/matesMeet.ts";
import { namedParts } from "./piece/namedParts.ts";
import { numbersSound } from "./piece/numbersSound.ts";
import { outlineSound } from "./piece/outlineSound.ts";
import { pocketSmaller } from "./piece/pocketSmaller.ts";
import { seamLayers } from "./piece/seamLayers.ts";
import { slotsClear } from "./piece/slotsClear.ts";
import { stitchPitch } from "./piece/stitchPitch.ts";
import { stitchRow } from "./piece/stitchRow.ts";
import { stitchToEdge } from "./piece/stitchToEdge.ts";
import { strapInBuckle } from "./piece/strapInBuckle.ts";
import { strapInSlot } from "./piece/strapInSlot.ts";
import { tailAndSwell } from "./piece/tailAndSwell.ts";
import { tailInKeeper } from "./piece/tailInKeeper.ts";
import { tongueInSlot } from "./piece/tongueInSlot.ts";
import { toolingClear } from "./piece/toolingClear.ts";
import { turnBackSlope } from "./piece/turnBackSlope.ts";
import { weakestSection } from "./piece/weakestSection.ts";
import type { Context, Rule, SheetRule } from "./rule.ts";
import { endsOnly } from "./sheet/endsOnly.ts";
import { piecesApart } from "./sheet/piecesApart.ts";
import { sheetCoverage } from "./sheet/sheetCoverage.ts";
import { sheetJoints } from "./sheet/sheetJoints.ts";
import { sheetScale } from "./sheet/sheetScale.ts";
import { sheetsUsed } from "./sheet/sheetsUsed.ts";

export type { Context, Rule, SheetRule } from "./rule.ts";

/** Every rule on pieces, in the order a person would look. */
export const PIECE_RULES: readonly Rule[] = [
  numbersSound,
  namedParts,
  outlineSound,
  insideOutline,
  holesToEdge,
  holesApart,
  holeToWidth,
  besideSlot,
  matesMeet,
  foldAsDrawn,
  turnBackSlope,
  caughtClear,
  foldStrain,
  strapInBuckle,
  tongueInSlot,
  strapInSlot,
  keeperGirth,
  stitchPitch,
  stitchToEdge,
  stitchRow,
  matesAgree,
  fixedHolesMeet,
  seamLayers,
  slotsClear,
  assemblyOrder,
  adjustmentRange,
  tailInKeeper,
  tailAndSwell,
  toolingClear,
  gussetStrain,
  foldsInward,
  closureMeets,
  flapReach,
  goesIn,
  featheredEnd,
  pocketSmaller,
  weakestSection,
];

/** Every rule on sheets. */
export const SHEET_RULES: readonly SheetRule[] = [
  sheetScale,
  sheetCoverage,
  endsOnly,
  sheetJoints,
  sheetsUsed,
  piecesApart,
];

const RANK: Readonly<Record<Severity, number>> = { error: 0, caution: 1, note: 2 };

/** By code units, so that every engine sorts alike. */
const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Errors first; then by rule, piece, place and words. */
const inOrder = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (a, b) =>
      RANK[a.severity] - RANK[b.severity] ||
      compare(a.rule, b.rule) ||
      compare(a.piece, b.piece) ||
      compare(a.place, b.place) ||
      compare(a.message, b.message),
  );

/** What the piece rules find in a made article; the article's own findings are not repeated. */
export const checkPieces = (made: Made, context: Context): Finding[] => [
  ...inOrder(PIECE_RULES.flatMap((rule) => rule.check(made, context))),
];

/** What the sheet rules find in the sheets of a made article. */
export const checkSheets = (made: Made, layout: Layout, context: Context): Finding[] => [
  ...inOrder(SHEET_RULES.flatMap((rule) => rule.check(made, layout, context))),
];
