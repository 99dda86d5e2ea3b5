import { expect, test } from "vitest";
import { pageAnswer } from "../../src/answers/pageAnswer.ts";
import type { Field, PagePiece, PageView } from "../../src/answers/pageData.ts";
import { pageEdit } from "../../src/answers/pageEdit.ts";
import { articles } from "../../src/articles/index.ts";
import { branchesOf, valuesUnder } from "../../src/order/branch.ts";
import { scalarText } from "../../src/order/scalar.ts";
import { topTable } from "../../src/order/top.ts";
import { orderFiles } from "../support/orders.ts";

const views = orderFiles.map(({ name, text }) => {
  const answer = pageAnswer(text, name);
  if (!answer.ok) throw new Error(`${name}: ${answer.faults.map((f) => f.says).join(" ")}`);
  return { name, text, view: answer.view };
});
const fieldsOf = (view: PageView): readonly Field[] => view.groups.flatMap((g) => g.fields);

test.each(views)("$name: every value that may be set has one field", ({ view }) => {
  const article = articles.find((a) => a.name === view.article)!;
  // What may be set is counted by the reader's own tree of names.
  const settable = valuesUnder(branchesOf(topTable(articles.map((a) => a.name)), article));
  const keys = fieldsOf(view).map((f) => f.key);
  expect([...keys].sort()).toEqual([...settable].sort());
  expect(new Set(keys).size).toBe(keys.length);
});

test.each(views)("$name: no two fields sound alike, and units are in the labels", ({ view }) => {
  const labels = fieldsOf(view).map((f) => f.label);
  expect(new Set(labels).size).toBe(labels.length);
  const unit = { in: /, inches$/, mm: /, millimetres$/, cm: /, centimetres$/ }[view.units];
  const margin = fieldsOf(view).find((f) => f.key === "margin");
  expect(margin?.label).toMatch(unit);
});

test.each(views)(
  "$name: a field shows what stands in the order, and only that counts as given",
  ({ text, view }) => {
    for (const f of fieldsOf(view).filter((field) => field.given)) {
      const last = f.key.split(".").at(-1);
      expect(text.replaceAll('"', "")).toContain(`${last}: ${f.text.replaceAll('"', "")}`);
    }
    for (const f of fieldsOf(view).filter(
      (field) => !field.given && !field.optional && field.kind === "measured",
    ))
      expect(f.text, f.key).toMatch(/\d/);
  },
);

test.each(views)("$name: setting a given value to its own text changes nothing", ({ text, view }) => {
  for (const f of fieldsOf(view).filter((field) => field.given))
    expect(pageEdit(text, f.key, f.text)).toEqual({ ok: true, value: text });
});

type Lines = { [name: string]: string | Lines };

/** All fields as an order's text. */
function written(view: PageView): string {
  const top: Lines = {};
  for (const f of fieldsOf(view)) {
    if (f.text === "") continue;
    const names = f.key.split(".");
    const last = names.pop()!;
    let at = top;
    for (const name of names) {
      at[name] ??= {};
      at = at[name] as Lines;
    }
    at[last] = f.text;
  }
  const lines = (some: Lines, indent: string): string =>
    Object.entries(some)
      .map(([k, v]) =>
        typeof v === "string"
          ? `${indent}${k}: ${scalarText(v, false)}\n`
          : `${indent}${k}:\n${lines(v, `${indent}  `)}`,
      )
      .join("");
  return lines(top, "");
}

/** A curve is clipped as often as its length asks, rounded up: a hair more of it may need one clip more. */
const whatStandsOn = ({ parts }: PagePiece): readonly string[] =>
  parts.map((p) => p.id).filter((id) => !id.includes(".clip."));

/** Defaults are written to 0.01 mm; a few of them add up in a length. */
const WRITTEN_MM = 0.15;

test.each(views)("$name: with every default written out the pieces are the same", ({ name, view }) => {
  const again = pageAnswer(written(view), name);
  if (!again.ok) throw new Error(again.faults.map((f) => f.says).join("\n"));
  expect(again.view.pieces.map((p) => p.id)).toEqual(view.pieces.map((p) => p.id));
  for (const [i, piece] of view.pieces.entries()) {
    const other = again.view.pieces[i]!;
    expect(whatStandsOn(other), piece.id).toEqual(whatStandsOn(piece));
    for (const side of ["minX", "maxX", "minY", "maxY"] as const)
      expect(Math.abs(other.box[side] - piece.box[side]), `${piece.id} ${side}`).toBeLessThan(WRITTEN_MM);
  }
});
