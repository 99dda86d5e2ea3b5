import DxfParser, { type ICircleEntity, type IEntity, type ILwpolylineEntity } from "dxf-parser";
import { beforeAll, describe, expect, test } from "vitest";
import { pairDie } from "../../src/die/pairDie.ts";
import { defaultDie } from "../../src/die/settings.ts";
import { type Side, sidesOf } from "../../src/die/sides.ts";
import { curvesOf } from "../../src/geometry/curve.ts";
import { distanceToPath, type Path, type Point, pathLength, pointAt } from "../../src/geometry/index.ts";
import type { Piece } from "../../src/model/piece.ts";
import { DXF_LAYERS, dxf } from "../../src/output/dxf.ts";
import { cutItems, pairItems } from "../../src/picture/die/cutItems.ts";
import { orderPieces, type PieceOf } from "../support/dies.ts";
import { type Audited, audited, type Entity, ownLayers, pathOf, type Segment } from "../support/dxf.ts";

// The DXF of every die of every order, read by two programs that are not ours.

const ARC_MM = 0.001;
const PIECE_MM = 0.05;
const settings = defaultDie();

type Case = {
  readonly name: string;
  readonly piece: Piece;
  readonly side: Side;
  readonly text: string;
  readonly nested: string;
};

const words = ["Ødegård & <Sons>, 鞍", "left; {\\fArial;bold}"];
const asked = { ruleEdge: true, words };
/** A pair whose die is not its own mirror image: the cheek of a demo order with a hole off its middle. */
function lopsided(pieces: readonly PieceOf[]): PieceOf {
  const cheek = pieces.find(({ piece }) => piece.hand === "pair")!;
  const moved = cheek.piece.holes.find(({ kind }) => kind === "round")!;
  const holes = cheek.piece.holes.map((h) =>
    h === moved ? { ...h, at: [h.at[0], h.at[1] + 2] as const } : h,
  );
  return { ...cheek, name: "lopsided cheek", piece: { ...cheek.piece, holes } };
}

const pieces = orderPieces();
const cases: readonly Case[] = [...pieces, lopsided(pieces)].flatMap(({ name, piece }) =>
  sidesOf(piece, settings).map(
    (side): Case => ({
      name: `${name}, ${side.slug}`,
      piece,
      side,
      text: dxf(cutItems(side.die, asked)),
      nested: dxf(pairItems(side.die, pairDie(side.die), asked)),
    }),
  ),
);

/** The furthest that points all along one path lie from the other. */
const furthest = (a: Path, b: Path): number =>
  Math.max(
    ...Array.from({ length: 200 }, (_, i) => distanceToPath(pointAt(a, (pathLength(a) * i) / 200), b)),
  );
const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

/** How far what was read lies from the lines and arcs that were written, mm: ends, centres, radii. */
function astray(segments: readonly Segment[], written: Path): number {
  const curves = curvesOf(written);
  expect(segments.length).toBe(curves.length);
  return Math.max(
    ...curves.map((curve, i) => {
      const read = segments[i]!;
      const ends = Math.max(apart(read.from, curve.p0), apart(read.to, curve.p1));
      if (curve.kind !== "arc") return ends;
      expect(read.anticlockwise).toBe(curve.sweep > 0);
      return Math.max(ends, apart(read.centre!, curve.centre), Math.abs(read.radius! - curve.radius));
    }),
  );
}

/** Mirrored where the side is the turned one: y → −y by hand, apart from the code's own mirror. */
function outlineOf({ piece, side }: Case): Path {
  if (side.slug !== "right") return piece.outline;
  const flip = ([x, y]: Point): Point => [x, -y];
  return {
    ...piece.outline,
    start: flip(piece.outline.start),
    segments: piece.outline.segments.map((s) => {
      if (s.kind === "line") return { ...s, to: flip(s.to) };
      if (s.kind === "arc") return { ...s, to: flip(s.to), centre: flip(s.centre), ccw: !s.ccw };
      return { ...s, c1: flip(s.c1), c2: flip(s.c2), to: flip(s.to) };
    }),
  };
}

/** What the die's rules and tubes are in one reader's words: outline and slots in order, then the tubes. */
function compared(one: Case, entities: readonly Entity[]): void {
  const on = (layer: string): readonly Entity[] => entities.filter((e) => e.layer === layer);
  const { rules } = one.side.die;
  const lines = [...on("CUT"), ...on("CUT_SLOTS")];
  const bent = [...rules].filter(({ kind }) => kind !== "tube");
  expect(lines.length).toBe(bent.length);
  lines.forEach(({ closed, segments }, i) => {
    expect(closed).toBe(true);
    expect(astray(segments!, bent[i]!.path)).toBeLessThan(ARC_MM);
  });
  const outline = pathOf(lines[0]!.segments!);
  expect(furthest(outline, outlineOf(one))).toBeLessThan(PIECE_MM);
  expect(furthest(outlineOf(one), outline)).toBeLessThan(PIECE_MM);
  const holes = new Map(one.piece.holes.map((h) => [h.id, h]));
  const tubes = rules.filter(({ kind }) => kind === "tube");
  expect(on("CUT_TUBES").length).toBe(tubes.length);
  on("CUT_TUBES").forEach(({ centre, radius }, i) => {
    const hole = holes.get(tubes[i]!.id)!;
    const at: Point = one.side.slug === "right" ? [hole.at[0], -hole.at[1]] : hole.at;
    expect(apart(centre!, at)).toBeLessThan(ARC_MM);
    expect(Math.abs(radius! * 2 - hole.size)).toBeLessThan(ARC_MM);
  });
}

const named = cases.map((c, i) => [c.name, c, i] as const);

describe("ezdxf, which is not ours, reads every die's DXF", () => {
  let single: readonly Audited[] = [];
  let nested: readonly Audited[] = [];
  beforeAll(() => {
    const all = audited(cases.flatMap(({ text, nested: pair }) => [text, pair]));
    single = all.filter((_, i) => i % 2 === 0);
    nested = all.filter((_, i) => i % 2 === 1);
  });

  test("there are some of every article, and pairs with a left and a right", () => {
    expect(cases.length).toBeGreaterThan(20);
    expect(new Set(cases.map(({ side }) => side.slug))).toContain("right");
  });

  test("an unsound file is found so by the audit", () => {
    const [broken] = audited([cases[0]!.text.replace(/^ {2}8\nCUT$/m, "  8\nbad|layer*name")]);
    expect(broken!.errors.length + broken!.fixes.length).toBeGreaterThan(0);
  });

  test.each(named)("%s: no errors, no fixes, millimetres, arcs and piece come back", (_, one, i) => {
    for (const { errors, fixes, units } of [single[i]!, nested[i]!])
      expect({ errors, fixes, units }).toEqual({ errors: [], fixes: [], units: "mm" });
    for (const file of [single[i]!, nested[i]!])
      expect(ownLayers(file)).toEqual(
        Object.keys(DXF_LAYERS).filter((name) => file.entities.some(({ layer }) => layer === name)),
      );
    compared(one, single[i]!.entities);
  });

  test.each(named)("%s: two on one board are twice the rules of one, and the board's edge", (_, one, i) => {
    const count = (entities: readonly Entity[], layer: string): number =>
      entities.filter((e) => e.layer === layer).length;
    for (const layer of ["CUT", "CUT_SLOTS", "CUT_TUBES", "RULE_FACES"])
      expect(count(nested[i]!.entities, layer), layer).toBe(2 * count(single[i]!.entities, layer));
    expect(count(nested[i]!.entities, "BOARD")).toBe(1);
    const [a, b] = nested[i]!.entities.filter((e) => e.layer === "CUT").map((e) => pathOf(e.segments!));
    const gap = Math.min(
      ...Array.from({ length: 400 }, (_, k) => distanceToPath(pointAt(a!, (pathLength(a!) * k) / 400), b!)),
    );
    expect(gap).toBeGreaterThan(one.side.die.settings.spacing.value);
  });
});

/** An arc from its ends and bulge, by the bulge's definition: the tangent of a quarter of the turn. */
function segmentOf(from: Point, to: Point, bulge: number | undefined): Segment {
  if (!bulge) return { from, to };
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const off = (1 - bulge * bulge) / (4 * bulge);
  const centre: Point = [(from[0] + to[0]) / 2 - dy * off, (from[1] + to[1]) / 2 + dx * off];
  return { from, to, centre, radius: apart(centre, from), anticlockwise: bulge > 0 };
}

function entityOf(entity: IEntity): Entity {
  const { type, layer } = entity;
  if (type === "CIRCLE") {
    const { center, radius } = entity as ICircleEntity;
    return { type, layer, centre: [center.x, center.y], radius };
  }
  if (type !== "LWPOLYLINE") return { type, layer };
  const { vertices, shape } = entity as ILwpolylineEntity;
  const at = ({ x, y }: { readonly x: number; readonly y: number }): Point => [x, y];
  const count = shape ? vertices.length : vertices.length - 1;
  const segments = vertices
    .slice(0, count)
    .map((v, i) => segmentOf(at(v), at(vertices[(i + 1) % vertices.length]!), v.bulge));
  return { type, layer, closed: shape, segments };
}

describe("dxf-parser, which is not ours, reads every die's DXF", () => {
  test.each(named)("%s: the same arcs, and the piece", (_, one) => {
    const read = new DxfParser().parseSync(one.text)!;
    expect(read.header.$INSUNITS).toBe(4);
    compared(one, read.entities.map(entityOf));
  });

  test("a millimetre's slip of one corner is seen", () => {
    const [one] = cases;
    const entities = new DxfParser().parseSync(one!.text)!.entities.map(entityOf);
    const moved = entities.map((e): Entity => {
      if (e.layer !== "CUT") return e;
      const [first, ...rest] = e.segments!;
      return { ...e, segments: [{ ...first!, from: [first!.from[0] + 0.002, first!.from[1]] }, ...rest] };
    });
    expect(() => compared(one!, moved)).toThrow();
  });
});
