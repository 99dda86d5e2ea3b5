import { isSame } from "./same.ts";

/** One value on both sides; the side that lacks it has none. Numbers in mm, mm², radians or bare. */
export type Change = {
  readonly what: string;
  readonly kind: string;
  readonly before?: number | string | boolean;
  readonly after?: number | string | boolean;
  /** After less before, of numbers. */
  readonly difference?: number;
};

type Value = Change["before"];

const sameValue = (a: Value, b: Value, kind: string): boolean =>
  typeof a === "number" && typeof b === "number" ? isSame(a, b, kind) : a === b;

/** The change of a value, or nothing where there is none. */
export function changeOf(what: string, kind: string, before: Value, after: Value): readonly Change[] {
  if (sameValue(before, after, kind)) return [];
  const numbers = typeof before === "number" && typeof after === "number";
  return [
    {
      what,
      kind,
      ...(before === undefined ? {} : { before }),
      ...(after === undefined ? {} : { after }),
      ...(numbers ? { difference: after - before } : {}),
    },
  ];
}

/** Names of both lists, those of the second after those of the first. */
export const union = (a: readonly string[], b: readonly string[]): readonly string[] => [
  ...new Set([...a, ...b]),
];
