import type { Closure, FixedJoin, SeamJoin } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import { type Vec, walk } from "./assembleBends.ts";
import {
  apart,
  asked,
  type Flat,
  HOLES_MM,
  holesOf,
  insideDepth,
  liningOf,
  type Off,
  pieceOf,
  pointsOf,
} from "./assembleJob.ts";
import { bendsOf, bodyAt } from "./assembleWrap.ts";

// What is laid flat on another piece and stitched or riveted to it, and the flap folded over the filled bag.

const FOLDED_MM = 0.2;

const mean = (points: readonly Vec[]): Vec => [
  points.reduce((s, p) => s + p[0], 0) / points.length,
  points.reduce((s, p) => s + p[1], 0) / points.length,
];

/** How a piece is laid on another. */
type Laid = (at: Vec) => Vec;

const turnedOver: Laid = ([x, y]) => [-x, y];
const asItIs: Laid = (at) => at;

/** Lays `from` on `to` as nearly as it will go, point for point, moved and turned by quarters: all is laid square. */
function layOn(from: readonly Vec[], to: readonly Vec[]): Laid {
  const [a, b] = [mean(from), mean(to)];
  let [sin, cos] = [0, 0];
  from.forEach((p, i) => {
    const [x, y, u, v] = [p[0] - a[0], p[1] - a[1], to[i]![0] - b[0], to[i]![1] - b[1]];
    cos += x * u + y * v;
    sin += x * v - y * u;
  });
  const turn = Math.round(Math.atan2(sin, cos) / (Math.PI / 2)) * (Math.PI / 2);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  return ([x, y]) => [b[0] + (x - a[0]) * c - (y - a[1]) * s, b[1] + (x - a[0]) * s + (y - a[1]) * c];
}

const worst = (what: string, lay: Laid, from: readonly Vec[], to: readonly Vec[]): Off => ({
  what,
  off:
    from.length === to.length
      ? Math.max(...from.map((p, i) => apart(lay(p), to[i]!)))
      : Number.POSITIVE_INFINITY,
  most: HOLES_MM,
});

const found = (piece: Piece, ids: readonly string[]): readonly Vec[] =>
  ids.map((id) => piece.holes.find((h) => h.id === id)!.at);

/** A patch is glued on from behind, flesh to flesh. */
const seen = (piece: string): Laid => (piece.startsWith("patch-") ? turnedOver : asItIs);

/** Rivets, screws, and patches sewn in with what they back. */
export function fixedOff(f: Flat, join: FixedJoin): readonly Off[] {
  const [first, ...others] = join.sides.map((s) => found(pieceOf(f, s.piece), s.holes).map(seen(s.piece)));
  return others.map((o, i) =>
    worst(`${join.name}, on ${join.sides[i + 1]!.piece}`, layOn(o, first!), o, first!),
  );
}

const middleOf = (points: readonly Vec[]): Vec => {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [(Math.min(...xs) + Math.max(...xs)) / 2, (Math.min(...ys) + Math.max(...ys)) / 2];
};

/** One drawing of a patch goes behind each root of a handle: each of its holes on one of the root's. */
export function rootsOff(f: Flat): readonly Off[] {
  const patch = f.pieces.find((p) => p.id === "patch-handle");
  if (!patch) return [];
  const behind = patch.holes.map((h) => turnedOver(h.at));
  return f.pieces.flatMap((piece) => {
    if (piece.id === "patch-handle" || piece.id === "handle") return [];
    const groups = new Map<string, Vec[]>();
    for (const h of piece.holes) {
      const root = /^((front|back)\.)?handle\.(left|right)\./.exec(h.id)?.[0];
      if (root) groups.set(root, [...(groups.get(root) ?? []), h.at]);
    }
    return [...groups].map(([root, holes]): Off => {
      const [from, to] = [middleOf(behind), middleOf(holes)];
      // A front in one with the back hangs head down.
      const turn = piece.id === "body" && root.startsWith("front") ? -1 : 1;
      const offs = behind.map(([x, y]) =>
        Math.min(...holes.map((h) => apart(h, [to[0] + turn * (x - from[0]), to[1] + turn * (y - from[1])]))),
      );
      return {
        what: `patch behind ${root} of ${piece.id}`,
        off: holes.length === behind.length ? Math.max(...offs) : Number.POSITIVE_INFINITY,
        most: HOLES_MM,
      };
    });
  });
}

/** A closed box of stitches in several runs: laid on its mates by the whole box. */
export function boxOff(f: Flat, runs: readonly SeamJoin[]): readonly Off[] {
  const name = runs[0]!.name.split(":")[0]!;
  const count = runs[0]!.sides.length;
  const all = Array.from({ length: count }, (_, k) =>
    runs.flatMap((r) => holesOf(f, r.sides[k]!).map((h) => h.at)),
  );
  const [first, ...others] = all;
  return others.map((o, i) =>
    worst(`${name}, on ${runs[0]!.sides[i + 1]!.piece}`, layOn(first!, o), first!, o),
  );
}

/** A pocket laid where its place is marked; an inside one shows its back there. */
export function pocketOff(f: Flat, join: SeamJoin): readonly Off[] {
  const [own, on] = join.sides;
  const panel = pieceOf(f, on!.piece);
  const mark = panel.marks.find((m) => m.id === "pocket.place")!;
  const place = pointsOf(mark.path, 16);
  const outline = pointsOf(pieceOf(f, "pocket").outline, 16);
  const over = f.order.get("bag.pocket") === "inside" ? -1 : 1;
  // On a body that wraps round, the front hangs head down.
  const turn = on!.piece === "body" && mean(place)[1] < 0 ? -1 : 1;
  const [xs, ys] = [place.map(([x]) => x), place.map(([, y]) => y)];
  const middle = (Math.min(...xs) + Math.max(...xs)) / 2;
  const base = turn > 0 ? Math.min(...ys) : Math.max(...ys);
  const lay: Laid = ([x, y]) => [middle + over * turn * x, base + turn * y];
  const wide = Math.max(...outline.map(([x]) => x)) - Math.min(...outline.map(([x]) => x));
  const points = (side: SeamJoin["sides"][number]) => holesOf(f, side).map((h): Vec => h.at);
  const [a, b] = [points(own!), points(on!)];
  return [
    worst(join.name, lay, a, b),
    {
      what: "pocket as wide as its place",
      off: Math.abs(Math.max(...xs) - Math.min(...xs) - wide),
      most: HOLES_MM,
    },
  ];
}

/** Where a closure's half lies: its stud, or the middle of its slits and opening. */
function halfOf(piece: Piece, id: string): Vec | undefined {
  const holes = piece.holes.filter((h) => h.id === id || h.id.startsWith(`${id}.`)).map((h) => h.at);
  const mine = piece.cutouts.filter((c) => c.id === id || c.id.startsWith(`${id}.`));
  const opening = mine.filter((c) => c.use === "opening");
  const cuts = (opening.length > 0 ? opening : mine).map((c) => {
    return middleOf(pointsOf(c.outline, 8));
  });
  const all = holes.length > 0 ? holes : cuts;
  return all.length > 0 ? mean(all) : undefined;
}

/** The flap's inner face at y of the drawing: from the back's inner face forward, and over the bag's bottom. */
function flapAt(f: Flat, piece: Piece, y: number): Vec {
  const { thickness } = piece.leather;
  if (piece.id === "body") {
    const { inner } = bodyAt(f, y);
    return [insideDepth(f) / 2 - inner[0], inner[1] + thickness];
  }
  const neutral = asked(f, "leather.body.neutral");
  const { flesh } = walk(bendsOf(piece), y, { thickness, neutral });
  return [-flesh[1] - neutral * thickness, flesh[0]];
}

function frontAt(f: Flat, piece: Piece, y: number): number {
  return piece.id === "body" ? bodyAt(f, y).inner[1] + piece.leather.thickness : y;
}

const middleX = (piece: Piece, use: string): number =>
  middleOf(piece.holes.filter((h) => h.use === use && !/\.(front|back)\./.test(h.id)).map((h) => h.at))[0];

/** How far over the bag's bottom the flap's half must come to lie; `front`: where the front's own half lies. */
function meetsAt(f: Flat, join: Closure, front: number): number {
  // Where a flap without a closure ends on the front, nothing is drawn: only its height is ordered.
  if (join.what === "none") return asked(f, "pieces.body.flap-end");
  if (join.what !== "strap and buckle") return front;
  // From the tab's rivets up to the buckle's bar; to the billet's middle hole as the buckle asks; and from there
  // up the billet to its own rivets, on the flap. Turn-backs are folded by tests of their own: here the bar lies
  // where the drawn turn-back says, so far from the first hole of its front leg.
  const [tab, billet] = [pieceOf(f, "closure-tab"), pieceOf(f, "closure-billet")];
  const fixed = tab.holes.some((h) => h.use === "screw") ? "screw" : "rivet";
  const holes = billet.holes.filter((h) => h.use === "buckle").map((h) => h.at[0]);
  const middle = [...holes].sort((a, b) => a - b)[(holes.length - 1) / 2]!;
  const hanging = Math.abs(middle - middleX(billet, fixed));
  const turned = tab.turnBacks[0]!;
  const leg = tab.holes.map((h) => (h.at[0] - turned.centre) * turned.direction).filter((x) => x > 0);
  const up = (middleX(tab, fixed) - turned.centre) * turned.direction - (Math.min(...leg) - turned.clamp);
  return front + up + asked(f, "hardware.closure-buckle.hole-offset") + hanging;
}

/** The flap folded over the filled bag: its half on the front's. */
export function closureOff(f: Flat, join: Closure): readonly Off[] {
  const [flap, front] = [pieceOf(f, join.flap.piece), pieceOf(f, join.front.piece)];
  const half = halfOf(flap, "closure.flap");
  const mate = halfOf(front, "closure.front");
  const filled = f.order.get("measures.filled-depth");
  const reach =
    (typeof filled === "number" ? filled + 2 * liningOf(f) : insideDepth(f)) +
    liningOf(f) +
    front.leather.thickness +
    asked(f, "pieces.body.bulge");
  const end = Math.max(...pointsOf(flap.outline, 64).map(([, y]) => y));
  const [, lowest] = flapAt(f, flap, end);
  const ends: Off = {
    what: "flap's end over the bag's bottom",
    off: join.what === "none" ? Math.abs(lowest - asked(f, "pieces.body.flap-end")) : Math.max(0, -lowest),
    most: join.what === "none" ? FOLDED_MM : 0.5,
  };
  // A tongue, or a bare flap, has nothing punched in it: the leather itself lies where the front's half is.
  const on = half ?? join.flap.at;
  const to = mate ?? join.front.at;
  const [u, v] = flapAt(f, flap, on[1]);
  const high = meetsAt(f, join, frontAt(f, front, to[1]));
  const aside = join.flap.piece === join.front.piece ? on[0] - to[0] : on[0] + to[0];
  const named = ["press stud", "magnetic snap", "turn lock"].includes(join.what);
  return [
    ends,
    { what: `${join.what}: both halves drawn`, off: named && !(half && mate) ? 1 : 0, most: 0 },
    { what: `${join.what}: the flap lies on the front`, off: Math.abs(u - reach), most: FOLDED_MM },
    {
      what: `${join.what}: the halves meet`,
      off: Math.hypot(aside, v - high),
      most: FOLDED_MM,
    },
    ...(join.what === "none"
      ? []
      : [
          {
            what: `${join.what}: as high as was ordered`,
            off: Math.abs(v - asked(f, "pieces.body.closure-height")),
            most: FOLDED_MM,
          },
        ]),
  ];
}
