import { boundsOf } from "../geometry/bounds.ts";
import { crossings } from "../geometry/crossing.ts";
import { offsetPath } from "../geometry/offset.ts";
import { line, openPath, type Path } from "../geometry/path.ts";
import type { Adjustment, Join, Made } from "../model/article.ts";
import type { Finding } from "../model/finding.ts";
import type { Piece } from "../model/piece.ts";
import * as cheek from "../pieces/cheek.ts";
import * as crown from "../pieces/crown.ts";
import * as earPiece from "../pieces/earPiece.ts";
import * as keeper from "../pieces/keeper.ts";
import { adjustmentHalf, holeRow } from "../trade/balance.ts";
import { bitEnd } from "../trade/bitEnd.ts";
import { mateDrift } from "../trade/drawTurnBack.ts";
import { shankRange } from "../trade/shankLength.ts";
import { printLength, printNumber } from "../units/index.ts";
import * as trig from "../units/trigonometry.ts";
import type { Resolved } from "./definition.ts";
import { keeperJoin } from "./handing.ts";
import { headstallAssembly } from "./headstallAssembly.ts";
import { fitOf } from "./headstallFit.ts";
import { headstallFittings } from "./headstallFittings.ts";
import {
  allowances,
  bitRing,
  buckle,
  cheekSection,
  crownSection,
  earSection,
  fixedKeeper,
  fixing,
  innermostOf,
  keeperFarOf,
  measures,
  overPollOf,
  runningKeeper,
  strapLeather,
  straps,
} from "./headstallSections.ts";

// Makes the pieces of a one-ear headstall from resolved values, and says how they meet.

export function makeHeadstall(done: Resolved): Made {
  const both = done.of(straps).buckles === "both cheeks";
  const count = both ? 2 : 1;
  const cheekPiece = withBitNotes(cheek.shape(done.of(cheekSection), { count, leather: "strap" }), done);
  const crownPiece = crown.shape(done.of(crownSection), { leather: "strap" });
  const ear = earPiece.shape(done.of(earSection), { leather: "ear" });
  const fixed = keeper.shape(done.of(fixedKeeper), { count, leather: "keeper" });
  const running = done.of(straps).runningKeepers
    ? [keeper.shape(done.of(runningKeeper), { count, leather: "keeper" })]
    : [];
  const loss = done.of(allowances);
  const edged = (p: Piece): Piece =>
    loss.edgeFinishing.value === 0 ? p : { ...p, edgeLoss: loss.edgeFinishing.value };
  const adjusting = adjustment(done, cheekPiece, crownPiece);
  return {
    article: "one-ear headstall",
    pieces: [edged(crownPiece), edged(cheekPiece), ear, fixed, ...running].map((p) =>
      withRough(p, loss.roughCut.value),
    ),
    joins: [...joins(done, crownPiece, cheekPiece, ear), ...keeperJoins(done), ...adjusting],
    fit: fitOf(done),
    assembly: headstallAssembly([crownPiece, cheekPiece, ear, fixed, ...running]),
    fittings: headstallFittings(done, [crownPiece, cheekPiece, ear, fixed, ...running]),
    findings: findings(done, crownPiece),
    sizes: [
      overPollOf(done),
      crown.crownSizes(done.of(crownSection)).effective,
      adjustmentHalf(holeRow(done.of(straps).holes, done.of(straps).pitch), both),
    ],
    cautions: [
      "Strength figures are estimates for comparing designs. Have fit and strength checked by a qualified saddler or fitter.",
      "Inspect before each use. Never tie a horse by a bridle.",
      "Cut away from your hand, on a firm board. Use dyes and glues with fresh air, as their makers say.",
    ],
  };
}

/** The line to cut roughly along first, where the order asks for a margin. */
function withRough(piece: Piece, margin: number): Piece {
  const rough = margin > 0 ? offsetPath(piece.outline, -margin)[0] : undefined;
  return rough ? { ...piece, rough } : piece;
}

/** How far punched mates move with the leather's neutral fibre, and how long the screws are. */
function withBitNotes(piece: Piece, done: Resolved): Piece {
  const d = done.of(cheekSection);
  const k = d.neutral;
  const input = cheek.bitInput(d, d.bitTurnBack);
  const drift = mateDrift(
    (neutral) => bitEnd({ ...input, legs: { ...input.legs, neutral: { ...k, value: neutral } } }).developed,
    k.value,
  );
  const through = d.thickness.value + d.skiveAtBit.value;
  const barrel = done.of(fixing).barrel.value;
  const long = shankRange("binding screw", barrel, through);
  const notes = [
    `bit end: mated holes move ${printNumber(drift, 2)} mm if your leather's neutral fibre lies 0.1 off; a trial fold tells`,
    d.fixing === "rivet"
      ? `bit end: 2 rivets for each cheek, shank ${printNumber(barrel, 1)} mm, through ${printNumber(through, 1)} mm of leather`
      : `bit end: 2 screws for each cheek, barrel ${printNumber(barrel, 1)} mm thick and ${printNumber(long.from, 1)} to ${printNumber(long.to, 1)} mm long`,
  ];
  return { ...piece, notes: [...piece.notes, ...notes] };
}

function joins(done: Resolved, crownPiece: Piece, cheekPiece: Piece, ear: Piece): readonly Join[] {
  const b = done.of(buckle);
  const d = done.of(cheekSection);
  const e = done.of(earSection);
  const width = done.of(straps).width.value;
  const inBuckle = (piece: string): Join => ({
    kind: "strap in buckle",
    piece,
    strapWidth: width,
    inside: b.inside.value,
    buckle: "cheek buckle",
    dimension: "straps.width",
  });
  const tongue: Join = {
    kind: "tongue in slot",
    piece: cheekPiece.id,
    cutout: "buckle.slot",
    turnBack: "buckle",
    tongueThickness: b.tongue.value,
    tongueBreadth: b.tongueBreadth.value,
    openAngle: b.open.value,
    dimension: "hardware.cheek-buckle.tongue",
  };
  const slots = earPiece.SLOTS.map(
    (cutout): Join => ({
      kind: "strap in slot",
      piece: ear.id,
      cutout,
      strapWidth: e.crownWidth.value,
      strapThickness: e.crownThickness.value,
      weave: { angle: e.weave.value, through: e.thickness.value },
      dimension: "leather.ear.thickness",
    }),
  );
  return [
    inBuckle(crownPiece.id),
    { ...inBuckle(cheekPiece.id), strapWidth: Math.min(width, d.width.value) } as Join,
    tongue,
    ...slots,
  ];
}

function keeperJoins(done: Resolved): readonly Join[] {
  const keepers = [fixedKeeper, ...(done.of(straps).runningKeepers ? [runningKeeper] : [])];
  return keepers.map((k) => keeperJoin(k.path, done.of(k)));
}

/** The tail of each buckled end: its holes, keepers and the room on the cheek. */
function adjustment(done: Resolved, cheekPiece: Piece, crownPiece: Piece): readonly Adjustment[] {
  const d = done.of(crownSection);
  const n = Math.round(d.holes.value);
  const holes = Array.from({ length: n }, (_, i) => d.toTip.value + i * d.holePitch.value);
  const sides = d.buckles === "both cheeks" ? ["near", "off"] : ["near"];
  const room = tailRoom(done, cheekPiece);
  return sides.map((side) => ({
    kind: "adjustment",
    side,
    piece: crownPiece.id,
    holes,
    keeperFar: keeperFarOf(done).value,
    point: d.pointLength.value,
    ...room,
    dimension: "straps.holes",
    tipDimension: "pieces.crown.to-tip",
    bodySection: "pieces.cheek",
  }));
}

/** A running keeper passes this much more than the strap's width, mm. */
const KEEPER_PASSES_MM = 1;

/** Where, from the buckle's bar, the cheek is too wide for a keeper, or the bit's fixings begin. */
function tailRoom(done: Resolved, piece: Piece): Pick<Adjustment, "swellAt" | "swellIs"> {
  const d = done.of(cheekSection);
  const { top, bit } = cheek.cheekEnds(d);
  const bitFrom = d.effectiveLength.value - done.of(bitRing).bar.value / 2 - bit.reach.value;
  const wide = firstWiderThan(piece.outline, d.width.value + KEEPER_PASSES_MM);
  const swell = wide === undefined ? Infinity : wide - top.takeUp.value;
  return swell < bitFrom
    ? { swellAt: swell, swellIs: "the cheek's swell" }
    : { swellAt: bitFrom, swellIs: "the cheek's fixings at the bit" };
}

/** The least x at which an outline's upper edge is wider than `width`. */
function firstWiderThan(outline: Path, width: number): number | undefined {
  const box = boundsOf(outline);
  const y = width / 2;
  const xs = crossings(outline, openPath([box.minX - 1, y], [line([box.maxX + 1, y])])).map((p) => p[0]);
  return xs.length === 0 ? undefined : Math.min(...xs);
}

function findings(done: Resolved, crownPiece: Piece): readonly Finding[] {
  const m = done.of(measures);
  const found: Finding[] = [];
  if (m.measuredFrom === "mouth corner" && !m.rise)
    found.push({
      rule: "measures",
      severity: "caution",
      piece: "",
      place: "measures.rise",
      message:
        "the horse was measured from mouth corner to mouth corner, but the bit's rise is not known, so the headstall may come out long",
      mend: "measure from the mouth's corner up to where the cheek bears on the bit ring and write it as measures.rise",
    });
  return [...found, tapeNote(done), weaveNote(done), ...earClear(done, crownPiece)];
}

/** A tape on the skin lies inside the leather's middle: said, and not added unasked. */
function tapeNote(done: Resolved): Finding {
  const leather = done.of(strapLeather);
  const more = leather.neutral.value * leather.thickness.value * Math.PI;
  return {
    rule: "tape-on-skin",
    severity: "note",
    piece: "",
    place: "measures.over-poll",
    message: `a tape on the skin runs inside the leather's middle: over the poll's half round the strap needs about ${printNumber(more, 1)} mm more; this is not added`,
    mend: "add it to the measure if your tape lay on the skin and the fit must be close",
  };
}

/** The crown goes through the ear piece's leather twice, on a slope: that takes up some of it. */
function weaveNote(done: Resolved): Finding {
  const e = done.of(earSection);
  const through = e.thickness.value + e.crownThickness.value;
  const more = 2 * through * trig.tan(e.weave.value / 2);
  return {
    rule: "weave-takes-up",
    severity: "note",
    piece: "",
    place: "pieces.ear-piece",
    message: `weaving through the ear piece takes up about ${printNumber(more, 1)} mm of the crown; this is not added`,
    mend: "add it to measures.over-poll if the fit must be close",
  };
}

/** The ear piece must lie between the crown's two rows of holes. */
function earClear(done: Resolved, crownPiece: Piece): readonly Finding[] {
  const d = done.of(crownSection);
  const s = done.of(straps);
  const inner = innermostOf(done).value;
  const ear = Math.max(Math.abs(d.earFrom?.value ?? 0), Math.abs(d.earTo?.value ?? 0));
  if (inner >= ear + earPiece.HOLE_CLEAR_MM - 1e-6) return [];
  const spare = Math.floor((inner + holeRow(s.holes, s.pitch).value / 2 - ear) / s.pitch.value);
  const fewer = Math.max(1, 2 * spare - 1);
  const say = (mm: number): string => printLength(mm, "mm");
  return [
    {
      rule: "ear-clear",
      severity: inner < ear ? "error" : "caution",
      piece: crownPiece.id,
      place: "between the ear piece and the innermost hole",
      message: `the innermost hole lies ${say(inner)} from the poll, the ear piece reaches ${say(ear)}`,
      limit: `at least ${say(earPiece.HOLE_CLEAR_MM)} between them`,
      mend: "punch fewer holes (straps.holes), shorten the cheeks (pieces.cheek.effective-length) or bring the ear piece nearer the poll (pieces.ear-piece.offset)",
      ...(fewer < s.holes.value ? { change: { dimension: "straps.holes", value: String(fewer) } } : {}),
    },
  ];
}
