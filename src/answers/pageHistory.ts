import type { Section } from "../articles/definition.ts";
import { remembered } from "../geometry/remember.ts";
import { isFormula, type Value, workingOrder } from "../model/dimension.ts";
import type { Quantity } from "../model/quantity.ts";
import type { Settable } from "./pageSettable.ts";

// Which settable values a number came from: read off the histories that quantities carry.

/** A set of settable values as bits, the first of them the lowest. */
type Keys = bigint;

export type History = {
  /** Keys of the settable values that a quantity changes with, in the order of the order. */
  readonly keysOf: (q: Quantity) => readonly string[];
  /** Keys of the values left at their default that move with a key. */
  readonly movedBy: (key: string) => readonly string[];
};

const isQuantity = (v: Value | undefined): v is Quantity => typeof v === "object";

/** Reads the settable values of an order; each quantity is looked at once. */
export function historyOf(all: readonly Settable[]): History {
  const bits = new Map(all.map(({ key }, i) => [key, 1n << BigInt(i)]));
  // A quantity that counts as another kind is a copy, but it keeps its parts: these tell which one it is.
  const own = new Map<Quantity["parts"], Keys>();
  for (const { key, value } of all)
    if (isQuantity(value) && !own.has(value.parts)) own.set(value.parts, bits.get(key)!);

  const known = new Map<Quantity, Keys>();
  const behind = (q: Quantity): Keys => {
    const before = known.get(q);
    if (before !== undefined) return before;
    const found = q.inputs.reduce((some, input) => some | behind(input), own.get(q.parts) ?? 0n);
    known.set(q, found);
    return found;
  };
  const keysIn = (some: Keys): readonly string[] => {
    const found: string[] = [];
    for (let i = 0, rest = some; rest !== 0n; i++, rest >>= 1n)
      if ((rest & 1n) !== 0n) found.push(all[i]!.key);
    return found;
  };

  const follows = whatDefaultsFollow(all, behind, bits);
  const moved = new Map<string, string[]>();
  for (const [key, some] of follows)
    for (const by of keysIn(some)) if (by !== key) moved.set(by, [...(moved.get(by) ?? []), key]);
  return { keysOf: remembered((q: Quantity) => keysIn(behind(q))), movedBy: (key) => moved.get(key) ?? [] };
}

/**
 * What each value left at its default follows from. A size says so itself; a choice says only at which names
 * its formula looks. A choice that the article hands on is the order's of the same name and value.
 */
function whatDefaultsFollow(
  all: readonly Settable[],
  behind: (q: Quantity) => Keys,
  bits: ReadonlyMap<string, Keys>,
): ReadonlyMap<string, Keys> {
  const follows = new Map<string, Keys>();
  const chosen = new Map<string, Settable>();
  for (const [section, inside] of bySection(all)) {
    const named = new Map(inside.map((s) => [s.name, s]));
    const values = inside[0]?.values ?? {};
    const ofChoice = (name: string): Keys => {
      const s = named.get(name) ?? chosen.get(name);
      return s && s.value === values[name] ? bits.get(s.key)! | (follows.get(s.key) ?? 0n) : 0n;
    };
    for (const name of workingOrder(section.table)) {
      const s = named.get(name);
      if (!s || s.given || !isFormula(s.d.default)) continue;
      const self = s.value;
      const looksAt = s.d.default.inputs.map((input): Keys => {
        const value = values[input];
        if (!isQuantity(value)) return ofChoice(input);
        return isQuantity(self) ? 0n : behind(value);
      });
      const own = isQuantity(self) ? behind(self) : 0n;
      follows.set(s.key, looksAt.reduce((some, more) => some | more, own) & ~bits.get(s.key)!);
    }
    for (const s of inside) if (s.value !== undefined && !isQuantity(s.value)) chosen.set(s.name, s);
  }
  return follows;
}

function bySection(all: readonly Settable[]): ReadonlyMap<Section, readonly Settable[]> {
  const found = new Map<Section, Settable[]>();
  for (const s of all) found.set(s.section, [...(found.get(s.section) ?? []), s]);
  return found;
}
