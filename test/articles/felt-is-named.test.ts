import { describe, expect, test } from "vitest";
import type { Section } from "../../src/articles/definition.ts";
import { articles } from "../../src/articles/index.ts";
import { type Derivation, derivationOf } from "../../src/model/derivation.ts";
import { isMeasured, orderKey } from "../../src/model/dimension.ts";
import { editOrder } from "../../src/order/edit.ts";
import type { Order } from "../../src/order/order.ts";
import { readOrder } from "../../src/order/read.ts";
import { orderFiles } from "../support/orders.ts";

// An explanation must name every value of the order that its size changes with. Each measured value of each
// order is changed a little and then more; whatever size moves must have named it.

const CHANGES = [1.0004, 1.03, 0.97];
const UNITS: Readonly<Record<string, string>> = { length: " mm", thickness: " mm", pitch: " mm" };

function orderOf(text: string): Order | undefined {
  return readOrder(text, "order.yaml", articles).order;
}

function derivationsOf(order: Order): readonly Derivation[] {
  const made = order.article.make(order.values);
  const sections = made.pieces.flatMap((p) => p.sections.map((s) => derivationOf(p.id, s.estimate)));
  return [
    ...made.sizes.map((q) => derivationOf("", q)),
    ...made.pieces.flatMap((p) => p.sizes.map((q) => derivationOf(p.id, q))),
    ...sections,
  ];
}

type Setting = { readonly key: string; readonly name: string; readonly value: number; readonly kind: string };

/** The measured values of an order that a maker may set, by the names explanations give them. */
function settingsOf(order: Order): readonly Setting[] {
  // What is set of a die moves no piece.
  const sections = order.article.sections.filter((section) => section.path !== "die");
  return sections.flatMap((section: Section) => {
    const resolved = new Map(
      order.sections.find((s) => s.path === section.path)!.dimensions.map((d) => [d.key, d]),
    );
    return Object.entries(section.table).flatMap(([name, d]) => {
      const key = `${section.path}.${orderKey(name)}`;
      const value = resolved.get(key)?.value;
      if (d.handed || !isMeasured(d) || d.kind === "count" || typeof value !== "number" || value === 0)
        return [];
      return [
        { key, name: `${section.label} ${orderKey(name).replaceAll("-", " ")}`.trim(), value, kind: d.kind },
      ];
    });
  });
}

const idOf = (d: Derivation): string => `${d.piece}: ${d.result}`;

/** Sizes that a change of one value moves and whose explanation doesn't name it. */
function unnamed(text: string, before: readonly Derivation[], s: Setting): readonly string[] {
  return CHANGES.flatMap((factor) => {
    const value =
      s.kind === "angle"
        ? `${((s.value * factor * 180) / Math.PI).toFixed(6)} deg`
        : `${(s.value * factor).toFixed(6)}${UNITS[s.kind] ?? ""}`;
    const order = orderOf(editOrder(text, s.key, value));
    if (!order) return [];
    const after = new Map(derivationsOf(order).map((d) => [idOf(d), d.value]));
    return before
      .filter((d) => after.has(idOf(d)) && Math.abs(after.get(idOf(d))! - d.value) > 1e-9)
      .filter((d) => !d.steps.some((step) => step.name === s.name))
      .map((d) => `${idOf(d)} moves with ${s.key} and doesn't name "${s.name}"`);
  });
}

describe.each(orderFiles)("$name", ({ text }) => {
  test("every size names what it changes with", () => {
    const order = orderOf(text)!;
    const before = derivationsOf(order);
    expect([...new Set(settingsOf(order).flatMap((s) => unnamed(text, before, s)))]).toEqual([]);
  });
});

test("an explanation that hides a value is found", () => {
  const { text } = orderFiles.find((o) => o.name === "juniper-headstall.yaml")!;
  const order = orderOf(text)!;
  const before = derivationsOf(order);
  const width = settingsOf(order).find((s) => s.key === "straps.width")!;
  expect(unnamed(text, before, width)).toEqual([]);
  const hiding = before.map((d) => ({ ...d, steps: d.steps.filter((s) => s.name !== width.name) }));
  expect(unnamed(text, hiding, width)).not.toEqual([]);
});
