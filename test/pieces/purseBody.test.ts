import polygonClipping, { type Polygon } from "polygon-clipping";
import { svgPathProperties } from "svg-path-properties";
import { describe, expect, test } from "vitest";
import worked from "../../fixtures/published/worked-cases.json";
import {
  boundsOf,
  containsPath,
  cornerTurns,
  distanceToPath,
  endPoint,
  flatten,
  line,
  openPath,
  type Path,
  pathLength,
  pointAt,
  selfCrossings,
  signedArea,
} from "../../src/geometry/index.ts";
import type { Piece, SeamEdge } from "../../src/model/piece.ts";
import type { Quantity } from "../../src/model/quantity.ts";
import {
  type BodyValues,
  back,
  baseLines,
  dimensions,
  edges,
  flapEndPoint,
  flapPoint,
  front,
  frontPoint,
  wrap,
  wrapEdges,
} from "../../src/pieces/purseBody.ts";
import { svgData } from "../geometry/shapes.ts";
import { anyBody, bodyOf, type Handed, handedFrom, PLAIN, resolveBody } from "../support/anyBody.ts";
import { given, radians } from "../support/quantities.ts";
import { randomFrom } from "../support/random.ts";
import { faultsOfHistory } from "../support/sensitivity.ts";

const ORDER = { leather: "body", count: 1 };
const TURNED: Handed = {
  made: "turned gusset",
  inset: 8,
  allowance: 8,
  flange: 0,
  thickness: 1.2,
  thickest: 1.2,
};
const END_PANELS: Handed = { made: "end panels", flange: 0, inset: 3, thickness: 2.5, thickest: 2.5 };
const OPEN: Handed = { opening: "open", closure: "none" };

const isWrap = (d: BodyValues): boolean => d.made === "side gussets" || d.made === "end panels";
const piecesOf = (d: BodyValues): readonly Piece[] =>
  isWrap(d) ? [wrap(d, ORDER)] : [front(d, ORDER), back(d, ORDER)];
const edgesOf = (d: BodyValues): readonly SeamEdge[] => Object.values(isWrap(d) ? wrapEdges(d) : edges(d));
const sizeOf = (piece: Piece, name: string): Quantity => {
  const found = piece.sizes.find((q) => q.name === name);
  if (!found)
    throw new Error(`${piece.id} has no ${name}; it has ${piece.sizes.map((q) => q.name).join("; ")}`);
  return found;
};
const polygonOf = (path: Path): Polygon => [flatten(path, 0.001).map(([x, y]) => [x, y] as [number, number])];

describe("worked cases", () => {
  test("a wrap-round body is as long on the flat as in fixtures/published/worked-cases.json", () => {
    const c = worked.cases.wrapRound;
    // The case's height is inside; a bag's is outside.
    const d = bodyOf(
      {
        ...END_PANELS,
        ...OPEN,
        height: c.height + c.thickness,
        depth: c.base,
        filledDepth: c.base,
        thickness: c.thickness,
        thickest: c.thickness,
      },
      { "base-fold": String(c.foldRadius) },
    );
    const { minY, maxY } = boundsOf(wrap(d, ORDER).outline);
    expect(maxY - minY).toBeCloseTo(c.flat, 4);
    expect(sizeOf(wrap(d, ORDER), "body flat, front's top to back's top").value).toBeCloseTo(c.flat, 4);
  });

  test("a turned piece is cut so far outside its finished edge", () => {
    const c = worked.cases.turnedEdge;
    const d = bodyOf({
      ...TURNED,
      allowance: c.allowance,
      inset: c.allowance,
      thickness: c.thickness,
      thickest: c.thickness,
    });
    const box = boundsOf(front(d, ORDER).outline);
    expect(box.maxX - box.minX).toBeCloseTo(240 + 2 * c.finishedInside, 3);
    expect(box.minY).toBeCloseTo(-c.finishedInside, 3);
    expect(box.maxY).toBeCloseTo(180, 9);
  });
});

/** Folds a piece in section by its own bends: the way along its inner face, as seen from the side. */
function folded(piece: Piece, from: number, at: number): { readonly forward: number; readonly up: number } {
  const bends = piece.folds
    .filter((f) => f.id.startsWith("flap"))
    .map((f) => ({ y: f.from[1], ...f.bend! }))

    .sort((a, b) => a.y - b.y);
  let [u, v, way, y] = [0, 0, Math.PI / 2, from];
  const straight = (length: number): void => {
    u += length * Math.cos(way);
    v += length * Math.sin(way);
  };
  for (const b of bends) {
    const flat = b.angle * (b.inner + b.neutral * b.thickness);
    straight(b.y - flat / 2 - y);
    // The inner face goes round the bend's middle, to the right of the way.
    const middle = [u + b.inner * Math.sin(way), v - b.inner * Math.cos(way)] as const;
    way -= b.angle;
    [u, v] = [middle[0] - b.inner * Math.sin(way), middle[1] + b.inner * Math.cos(way)];
    y = b.y + flat / 2;
  }
  straight(at - y);
  return { forward: u, up: v };
}

describe("folded by its own bends", () => {
  test.each([
    ["panels", {}],
    ["a wrap-round body", END_PANELS],
  ] as const)(
    "%s: the flap's half of the closure lies on the front's, the end at its height",
    (_, handed) => {
      const d = bodyOf(handed, {
        "closure-height": "90",
        "flap-end": "60",
        "back-fold": "6",
        "front-fold": "4",
      });
      const piece = isWrap(d) ? wrap(d, ORDER) : back(d, ORDER);
      const lines = baseLines(d);
      const stud = folded(piece, lines.flap, flapPoint(d, d.closureHeight)[1]);
      expect(stud.up).toBeCloseTo(90, 6);
      expect(stud.forward).toBeCloseTo(60 + d.thickness.value, 6);
      expect(folded(piece, lines.flap, flapEndPoint(d)[1]).up).toBeCloseTo(60, 6);
      expect(boundsOf(piece.outline).maxY).toBeCloseTo(flapEndPoint(d)[1], 2);
      expect(Math.abs(frontPoint(d, 90)[1] - lines.front)).toBeCloseTo(90, 9);
    },
  );

  test("over a bulged front the flap is longer, and still ends as far below its closure", () => {
    const texts = { "closure-height": "90", "flap-end": "60" };
    const [flat, bulged] = [bodyOf({}, texts), bodyOf({}, { ...texts, bulge: "12" })];
    expect(flapPoint(bulged, bulged.closureHeight)[1]).toBeGreaterThan(
      flapPoint(flat, flat.closureHeight)[1],
    );
    expect(flapEndPoint(bulged)[1] - flapPoint(bulged, bulged.closureHeight)[1]).toBeCloseTo(30, 9);
  });

  test("a wrap-round body stands as high and as deep as the bag", () => {
    const d = bodyOf(END_PANELS, { "base-fold": "8" });
    const piece = wrap(d, ORDER);
    const from = baseLines(d).front - d.height.value;
    const [first, second] = piece.folds.filter((f) => f.id.startsWith("base"));
    // Down the front to before the bend, then along the base to before the next.
    const bend = first!.bend!;
    const half = (bend.angle * (bend.inner + bend.neutral * bend.thickness)) / 2;
    expect(first!.from[1] - half - from + bend.inner + bend.thickness).toBeCloseTo(180, 6);
    expect(second!.from[1] - first!.from[1] - 2 * half + 2 * bend.inner).toBeCloseTo(60, 6);
  });

  test("what lies to the right on the front, seen from outside, lies to the left on a body drawn front down", () => {
    expect(frontPoint(bodyOf(), 50, 20)).toEqual([20, 50]);
    expect(frontPoint(bodyOf(END_PANELS), 50, 20)[0]).toBe(-20);
  });
});

describe("seams", () => {
  test("front and back follow the gusset in one direction, from the first stitch below the top", () => {
    const { front: f, back: b } = edges(bodyOf({}, { "seam-start": "12" }));
    expect(f.path.start[0]).toBeLessThan(0);
    expect(b.path.start[0]).toBeGreaterThan(0);
    for (const at of [f.path.start, endPoint(f.path), b.path.start, endPoint(b.path)])
      expect(at[1]).toBeCloseTo(168, 9);
    expect(pathLength(b.path)).toBe(pathLength(f.path));
  });

  test("between straight sides it is a U of 2h + w − (4 − π) r, so far inside", () => {
    const d = bodyOf({}, { "corner-radius": "40" });
    const [h, w, r] = [180 - d.seamStart.value - 4, 240 - 8, 36];
    expect(pathLength(edges(d).front.path)).toBeCloseTo(2 * h + w - (4 - Math.PI) * r, 6);
  });

  test("a wrap-round body's break where its bends begin and end", () => {
    const d = bodyOf(END_PANELS, { "base-fold": "8" });
    const { left, right } = wrapEdges(d);
    for (const { path, breaks } of [left, right]) {
      const ys = breaks.map((b) => pointAt(path, b.at)[1]);
      const [a, b] = [60 / 2 - 8, 60 / 2 - 8 + (Math.PI / 2) * (8 + 0.5 * 2.5)];
      [-b, -a, a, b].forEach((y, i) => {
        expect(ys[i]).toBeCloseTo(y, 9);
      });
      expect(path.start[1]).toBeLessThan(0);
    }
    expect(left.path.start[0]).toBe(-117);
    expect(right.path.start[0]).toBe(117);
  });
});

describe("outlines", () => {
  test("the back is the front and the flap in one: polygon-clipping 0.15.7", () => {
    const d = bodyOf({}, { "flap-edge": "bell" });
    const b = back(d, ORDER).outline;
    const flapAlone = polygonClipping.difference(polygonOf(b), polygonOf(front(d, ORDER).outline));
    expect(flapAlone.length).toBe(1);
    const ys = flapAlone[0]![0]!.map(([, y]) => y);
    expect(Math.min(...ys)).toBeCloseTo(180, 2);
    expect(Math.max(...ys)).toBeCloseTo(flapEndPoint(d)[1], 2);
  });

  test("a tongue goes through its slot, the flap's own edge stays above it", () => {
    const d = bodyOf({ closure: "tuck-in tongue", closureRoom: 30 }, { "tongue-width": "50" });
    const slot = flapPoint(d, d.closureHeight)[1];
    const across = (y: number): number => {
      const xs = flatten(back(d, ORDER).outline, 0.001).filter((p) => Math.abs(p[1] - y) < 0.6);
      return xs.length === 0 ? 0 : Math.max(...xs.map(([x]) => x));
    };
    expect(distanceToPath([25, slot], back(d, ORDER).outline)).toBeLessThan(0.001);
    expect(across(slot - 6)).toBeGreaterThan(25);
  });

  test("an allowance ends beside the flap, whose sides are those of the finished top", () => {
    const d = bodyOf(TURNED);
    const piece = back(d, ORDER);
    expect(piece.corners.map((c) => c.name)).toEqual([
      "end of the allowance, left",
      "end of the allowance, right",
    ]);
    expect(distanceToPath([120, 190], piece.outline)).toBeCloseTo(0, 9);
    expect(piece.corners[1]!.at[0]).toBeCloseTo(128.2137, 3);
  });

  test("a dipped top lies that much lower in its middle", () => {
    const d = bodyOf({}, { top: "dipped", dip: "15" });
    expect(distanceToPath([0, 165], front(d, ORDER).outline)).toBeCloseTo(0, 9);
    expect(distanceToPath([0, 165], back(d, ORDER).outline)).toBeGreaterThan(50);
    const open = bodyOf(OPEN, { top: "dipped", dip: "15" });
    expect(distanceToPath([0, 165], back(open, ORDER).outline)).toBeCloseTo(0, 9);
  });
});

/** What is wrong with a drawn piece: one line a fault. */
function faultsOf(piece: Piece, seams: readonly SeamEdge[]): readonly string[] {
  const { outline } = piece;
  const turns = cornerTurns(outline);
  const near = (a: readonly number[], b: readonly number[]): boolean =>
    Math.hypot(a[0]! - b[0]!, a[1]! - b[1]!) < 0.01;
  const unnamed = turns.filter(
    (t) => Math.abs(t.turn) > radians(0.1) && !piece.corners.some((c) => near(c.at, t.at)),
  );
  const offInset = seams.flatMap((edge) => {
    const total = pathLength(edge.path);
    return Array.from({ length: 25 }, (_, i) => pointAt(edge.path, (total * i) / 24)).filter(
      (at) => Math.abs(distanceToPath(at, outline) - edge.inset) > 0.003,
    );
  });
  const crossed = piece.marks
    .filter((m) => m.kind === "notch")
    .filter((m) => seams.some((e) => distanceToPath(endPoint(m.path), e.path) < 0.5));
  const within = (what: string, path: Path): readonly string[] =>
    containsPath(outline, path) ? [] : [`${what} runs over the edge`];
  return [
    ...(signedArea(outline) > 0 ? [] : ["clockwise"]),
    ...selfCrossings(outline).map((at) => `crosses itself at ${at}`),
    ...unnamed.map((t) => `a corner without a name at ${t.at}`),
    ...piece.corners.filter((c) => !turns.some((t) => near(c.at, t.at))).map((c) => `no ${c.name}`),
    ...offInset.map((at) => `seam at ${at} is not its inset from the cut edge`),
    ...crossed.map((m) => `${m.id} reaches the stitches`),
    ...piece.zones.flatMap((z) => within(z.id, z.outline)),
    ...piece.zones.filter((z) => selfCrossings(z.outline).length > 0).map((z) => `${z.id} crosses itself`),
    ...piece.marks.flatMap((m) => within(m.id, m.path)),
    ...piece.folds.flatMap((f) => within(f.id, openPath(f.from, [line(f.to)]))),
    ...piece.controls.flatMap((c) => within(c.words, openPath(c.from, [line(c.to)]))),
    ...piece.sizes.filter((q) => !(q.value > 0)).map((q) => `${q.name} is ${q.value}`),
  ];
}

/** Sizes that the outline has, by name. */
function drawnSizes(piece: Piece, d: BodyValues): Readonly<Record<string, number>> {
  const { minX, minY, maxX, maxY } = boundsOf(piece.outline);
  if (piece.id === "body") return { "body cut length": maxY - minY, "body cut width": maxX - minX };
  const seam = edges(d)[piece.id as "front" | "back"].path;
  return {
    [`${piece.id} cut width`]: maxX - minX,
    [`${piece.id} cut height`]: maxY - minY,
    [`${piece.id} seam length`]: new svgPathProperties(svgData(seam)).getTotalLength(),
  };
}

describe("any body", () => {
  const random = randomFrom(77);
  const all = Array.from({ length: 300 }, () => anyBody(random));

  test("measures contradict in few orders, and each says what to change", () => {
    const faulty = all.filter((b) => !b.values);
    expect(faulty.length).toBeLessThan(0.05 * all.length);
  });

  test("is drawn soundly, at its sizes", () => {
    let drawn = 0;
    for (const { values: d, handed, texts } of all) {
      if (!d) continue;
      for (const piece of piecesOf(d)) {
        const about = `${piece.id} of ${JSON.stringify(handed)} ${JSON.stringify(texts)}`;
        expect(
          faultsOf(
            piece,
            edgesOf(d).filter((e) => e.piece === piece.id),
          ),
          about,
        ).toEqual([]);
        for (const [name, size] of Object.entries(drawnSizes(piece, d)))
          expect(Math.abs(sizeOf(piece, name).value - size), `${name} ${about}`).toBeLessThan(0.01);
        drawn += 1;
      }
    }
    expect(drawn).toBeGreaterThan(300);
  });

  test("the harness sees a planted fault", () => {
    const piece = front(bodyOf(), ORDER);
    const [edge] = edgesOf(bodyOf());
    expect(faultsOf(piece, [edge!])).toEqual([]);
    expect(faultsOf({ ...piece, corners: [] }, [edge!])).toHaveLength(2);
    expect(faultsOf(piece, [{ ...edge!, inset: 3.9 }]).length).toBe(25);
    const short = { ...piece, outline: { ...piece.outline, segments: piece.outline.segments.slice(0, -2) } };
    expect(faultsOf(short, []).length).toBeGreaterThan(0);
  });
});

/** Values from numbers and choices by name, as given by an order, without judging them. */
function valuesFrom(choices: BodyValues, numbers: Readonly<Record<string, number>>): BodyValues {
  return Object.fromEntries(
    Object.entries(choices).map(([name, v]) => [
      name,
      typeof v === "object" ? given(name, numbers[name]!, v.kind) : v,
    ]),
  ) as BodyValues;
}

describe("histories", () => {
  test.each([
    ["panels", {}, {}],
    ["sloping panels", {}, { "top-width": "200", "base-sag": "12" }],
    ["panels wider at the top, square", OPEN, { "top-width": "260", corners: "square", "base-sag": "12" }],
    ["clipped panels", {}, { corners: "clipped", "base-sag": "12" }],
    ["turned panels", { ...TURNED, neutral: 0.45 }, { "base-sag": "12", corners: "clipped" }],
    [
      "turned panels wider at the top",
      { ...TURNED, neutral: 0.45 },
      { "top-width": "260", "base-sag": "12" },
    ],
    ["a flap without a closure", { closure: "none" }, { bulge: "10" }],
    ["a wrap-round body", END_PANELS, { bulge: "10" }],
    ["an open wrap-round body", { ...END_PANELS, ...OPEN }, {}],
  ] as const)("%s: each size changes with what its history names and nothing else", (_, handed, texts) => {
    const d = bodyOf(handed, texts);
    const numbers = Object.fromEntries(
      Object.entries(d).flatMap(([name, v]) => (typeof v === "object" ? [[name, v.value]] : [])),
    );
    // What an allowance adds it takes off again for the seam: the two are one value of the order.
    const values = d.made === "turned gusset" ? { ...numbers, inset: undefined } : numbers;
    const clean = Object.fromEntries(Object.entries(values).filter(([, v]) => v !== undefined)) as Record<
      string,
      number
    >;
    const made = (v: Readonly<Record<string, number>>): readonly Piece[] =>
      piecesOf(valuesFrom(d, { ...v, inset: v.inset ?? v.allowance! }));
    made(clean).forEach((piece, i) => {
      piece.sizes.forEach((size, j) => {
        const work = (v: Readonly<Record<string, number>>): Quantity => made(v)[i]!.sizes[j]!;
        expect(faultsOfHistory(work, clean), `${piece.id}: ${size.name}`).toEqual([]);
      });
    });
  });
});

describe("ranges", () => {
  const faults = (handed: Handed, texts: Readonly<Record<string, string>>): readonly string[] =>
    resolveBody({ ...PLAIN, ...handed }, texts).faults.map((f) => f.key);

  test("a flanged gusset's corners are no rounder than 30 % of strain allows: s + (f + t/2 − s) / 0.3", () => {
    expect(faults({}, { "corner-radius": "27.3" })).toEqual(["pieces.body.corner-radius"]);
    expect(faults({}, { "corner-radius": "27.4" })).toEqual([]);
    expect(faults(TURNED, { "corner-radius": "10" })).toEqual([]);
  });

  test("a flanged gusset gathers round the ends of a clip as well; a turned one is clipped sharp", () => {
    expect(faults({}, { corners: "clipped", "corner-radius": "50", "clip-round": "27.3" })).toEqual([
      "pieces.body.clip-round",
    ]);
    expect(faults({}, { corners: "clipped", "corner-radius": "50", "clip-round": "27.4" })).toEqual([]);
    // Rounds of 27.33 mm at both ends take 2 × 27.33 tan(22.5°) of a clip of 16.01 √2.
    expect(faults({}, { corners: "clipped", "corner-radius": "16" })).toEqual(["pieces.body.corner-radius"]);
    expect(front(bodyOf({}, { corners: "clipped" }), ORDER).corners.map((c) => c.name)).toEqual([
      "top left",
      "top right",
    ]);
    expect(bodyOf(TURNED, { corners: "clipped" }).clipRound.value).toBe(0);
  });

  test("the flap doesn't end under the base, nor too near its closure", () => {
    expect(faults({}, { "flap-end": "-1" })).toEqual(["pieces.body.flap-end"]);
    expect(faults({}, { "closure-height": "80", "flap-end": "70" })).toEqual(["pieces.body.flap-end"]);
    expect(faults({}, { "closure-height": "10" })).toContain("pieces.body.closure-height");
  });

  test("a dip leaves the closure its leather; corners leave each other room", () => {
    expect(faults({}, { top: "dipped", dip: "30", "closure-height": "145" })).toEqual([
      "pieces.body.closure-height",
    ]);
    expect(faults({}, { "corner-radius": "125" })).toEqual(["pieces.body.corner-radius"]);
  });

  test("a body that wraps round has straight sides", () => {
    expect(faults(END_PANELS, { "top-width": "220" })).toEqual(["pieces.body.top-width"]);
    expect(faults(END_PANELS, { "base-sag": "5" })).toEqual(["pieces.body.base-sag"]);
  });

  test("what the article hands over is not the order's to give", () => {
    for (const [name, d] of Object.entries(dimensions))
      expect("handed" in d && d.handed === true, name).toBe(name in handedFrom(PLAIN));
  });
});

describe("words", () => {
  test("a bend sharper than the leather is thick says to groove", () => {
    const d = bodyOf({ thickest: 2.4 }, { "back-fold": "2" });
    expect(back(d, ORDER).notes.join()).toMatch(/back fold: .*2 mm; sharper .* groove/);
    expect(back(bodyOf({}, { "back-fold": "2" }), ORDER).notes.join()).not.toContain("groove");
  });

  test("a turned piece says which sides meet; an edge that shows isn't to be cut into", () => {
    expect(front(bodyOf(TURNED), ORDER).notes.join()).toContain("grain side to grain side");
    expect(front(bodyOf(), ORDER).notes.join()).toContain("don't cut into an edge that shows");
  });
});
