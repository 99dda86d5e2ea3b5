import type { Origin, Part, Quantity } from "./quantity.ts";

/** One line of an explanation: a named value, the expression behind it, and what it changes with. */
export type DerivationStep = {
  readonly name: string;
  readonly value: number;
  readonly kind: Quantity["kind"];
  readonly parts: readonly (
    | string
    | { readonly name: string; readonly value: number; readonly kind: Quantity["kind"] }
  )[];
  readonly inputs: readonly string[];
  readonly source?: string;
  readonly origin?: Origin;
};

/** How one size came about: the steps in the order they are worked, the result last. */
export type Derivation = {
  readonly piece: string;
  readonly result: string;
  readonly value: number;
  readonly steps: readonly DerivationStep[];
};

const namedIn = (parts: readonly Part[]): readonly Quantity[] => parts.filter((p) => typeof p !== "string");

function stepOf(q: Quantity): DerivationStep {
  return {
    name: q.name ?? "",
    value: q.value,
    kind: q.kind,
    parts: q.parts.map((p) =>
      typeof p === "string" ? p : { name: p.name ?? "", value: p.value, kind: p.kind },
    ),
    inputs: q.inputs.map((i) => i.name ?? ""),
    ...(q.source === undefined ? {} : { source: q.source }),
    ...(q.origin === undefined ? {} : { origin: q.origin }),
  };
}

/** Writes out a quantity's chain of named steps: values that were given first, the result last. */
export function derivationOf(piece: string, result: Quantity): Derivation {
  const seen = new Set<Quantity>();
  const leaves: DerivationStep[] = [];
  const worked: DerivationStep[] = [];
  const visit = (q: Quantity): void => {
    if (seen.has(q)) return;
    seen.add(q);
    for (const input of [...namedIn(q.parts), ...q.inputs]) visit(input);
    (q.origin === undefined ? worked : leaves).push(stepOf(q));
  };
  visit(result);
  return { piece, result: result.name ?? "", value: result.value, steps: [...leaves, ...worked] };
}
