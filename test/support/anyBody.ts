import type { ArticleDefinition } from "../../src/articles/definition.ts";
import type { Value } from "../../src/model/dimension.ts";
import type { QuantityKind } from "../../src/model/quantity.ts";
import { resolve } from "../../src/model/resolve.ts";
import { type BodyValues, dimensions } from "../../src/pieces/purseBody.ts";
import { anyOrder } from "./anyOrder.ts";
import { given } from "./quantities.ts";

// Bags' bodies: one with plain measures, and any that measures and the table of dimensions allow.

export type Handed = Readonly<Record<string, number | string | boolean>>;

/** A small bag with a flap and a stud; thicknesses and insets as the handbook's worked cases have them. */
export const PLAIN: Handed = {
  thickness: 2,
  thickest: 2,
  neutral: 0.5,
  made: "flanged gusset",
  opening: "flap",
  closure: "press stud",
  width: 240,
  height: 180,
  depth: 60,
  filledDepth: 60,
  inset: 4,
  pitch: 3.175,
  allowance: 0,
  flange: 10,
  gussetThickness: 2,
  closureRoom: 14,
  topClear: 0,
  closureBelow: 0,
  closureDrop: 0,
  flapLining: 0,
  wetMoulded: true,
};

const kindOf = (name: string): QuantityKind => {
  const d = dimensions[name as keyof typeof dimensions];
  return d.kind === "choice" || d.kind === "flag" ? "length" : d.kind;
};

export const handedFrom = (h: Handed): Record<string, Value> =>
  Object.fromEntries(
    Object.entries(h).map(([name, v]) => [name, typeof v !== "number" ? v : given(name, v, kindOf(name))]),
  );

/** Resolves the body from what it is handed and what an order gives. */
export function resolveBody(handed: Handed, texts: Readonly<Record<string, string>> = {}) {
  const place = { line: 1, column: 1 };
  return resolve({
    table: dimensions,
    section: "pieces.body",
    label: "body",
    given: Object.fromEntries(Object.entries(texts).map(([k, text]) => [k, { text, place }])),
    handed: handedFrom(handed),
    units: "mm",
    file: "fern.yaml",
  });
}

/** The values of a body; throws with the faults where they contradict. */
export function bodyOf(handed: Handed = {}, texts: Readonly<Record<string, string>> = {}): BodyValues {
  const { values, faults } = resolveBody({ ...PLAIN, ...handed }, texts);
  if (!values)
    throw new Error(faults.map((f) => `${f.key}: ${f.problem} (${f.allowed}; ${f.mend})`).join("\n"));
  return values;
}

const MADE = ["flanged gusset", "turned gusset", "side gussets", "end panels"] as const;
const CLOSURES = ["none", "press stud", "magnetic snap", "turn lock", "strap and buckle", "tuck-in tongue"];

/** What measures, leather and hardware may hand to a body. */
export function anyHanded(random: () => number): Handed {
  const within = (a: number, b: number): number => a + (b - a) * random();
  const one = <T>(all: readonly T[]): T => all[Math.floor(random() * all.length)]!;
  const made = one(MADE);
  const thickness = within(1, 4);
  const depth = within(20, 300);
  const allowance = made === "turned gusset" ? within(5, 15) : 0;
  return {
    thickness,
    thickest: thickness * within(1, 1.15),
    neutral: within(0.3, 0.7),
    made,
    opening: one(["flap", "open"]),
    closure: one(CLOSURES),
    width: within(70, 600),
    height: within(60, 500),
    depth,
    filledDepth: depth * within(0.5, 1),
    inset: made === "turned gusset" ? allowance : within(3, 6),
    pitch: within(2, 6),
    allowance,
    flange: made === "flanged gusset" ? within(8, 20) : 0,
    gussetThickness: within(1, 4),
    closureRoom: within(8, 30),
    topClear: random() < 0.7 ? 0 : within(5, 30),
  };
}

/** Any order of a body: undefined values and the words of its faults where its measures contradict. */
export function anyBody(random: () => number): {
  readonly handed: Handed;
  readonly texts: Readonly<Record<string, string>>;
  readonly values: BodyValues | undefined;
  readonly said: string;
} {
  const handed = anyHanded(random);
  const section = {
    path: "pieces.body",
    label: "body",
    table: dimensions,
    handOver: () => handedFrom(handed),
  };
  const { given: all } = anyOrder(
    { name: "any", sections: [section] } as unknown as ArticleDefinition,
    random,
  );
  const texts = Object.fromEntries(Object.entries(all).map(([k, v]) => [k.replace("pieces.body.", ""), v]));
  const { values, faults } = resolveBody(handed, texts);
  return {
    handed,
    texts,
    values,
    said: faults.map((f) => `${f.key}: ${f.problem}; ${f.allowed}`).join("\n"),
  };
}
