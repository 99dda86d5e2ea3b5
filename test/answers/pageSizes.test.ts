import { expect, test } from "vitest";
import { pageAnswer } from "../../src/answers/pageAnswer.ts";
import type { PageView } from "../../src/answers/pageData.ts";
import { pageEdit } from "../../src/answers/pageEdit.ts";
import { articles } from "../../src/articles/index.ts";
import { readOrder } from "../../src/order/read.ts";
import { orderFiles } from "../support/orders.ts";

const fileNamed = (name: string) => orderFiles.find((f) => f.name === name)!;

function viewOf(text: string): PageView {
  const answer = pageAnswer(text, "t.yaml");
  if (!answer.ok) throw new Error(answer.faults.map((f) => f.says).join(" "));
  return answer.view;
}

/** Every size by piece and name; undefined where the order can't be made. */
function sizesOf(text: string): ReadonlyMap<string, number> | undefined {
  const { order } = readOrder(text, "t.yaml", articles);
  const made = order?.article.make(order.values);
  return (
    made &&
    new Map(
      [{ id: "", sizes: made.sizes }, ...made.pieces].flatMap((p) =>
        p.sizes.map((q): [string, number] => [`${p.id}/${q.name}`, q.value]),
      ),
    )
  );
}

type Sizes = ReadonlyMap<string, number>;

/**
 * The sizes of the order with that value a little larger or smaller, and with it much so, where the order can
 * be made then. A large step may let another one of several values decide, so it only shows what does move.
 */
function nudged(
  text: string,
  key: string,
  value: string,
): { little: readonly Sizes[]; much: readonly Sizes[] } {
  const found = /^(-?\d+(?:\.\d+)?)(?: (mm|oz|deg))?$/.exec(value);
  if (!found) return { little: [], much: [] };
  const [number, unit] = [Number(found[1]), found[2] ? ` ${found[2]}` : ""];
  const sizesAt = (n: number): readonly Sizes[] => {
    const edited = pageEdit(text, key, `${Number(n.toFixed(4))}${unit}`);
    const sizes = edited.ok ? sizesOf(edited.value) : undefined;
    return sizes ? [sizes] : [];
  };
  const little = sizesAt(number * 1.002);
  return {
    little: little.length > 0 ? little : sizesAt(number * 0.998),
    much: [number * 1.2, number * 0.8, number + 1].flatMap(sizesAt),
  };
}

const MOVED = 1e-7;
/** Of the fields so many are tried: each asks for the order to be made five times. */
const EVERY = 3;

test.each(["heron-bag-strap.yaml", "miniature.yaml"])(
  "%s: what a size came from is what moves it",
  (name) => {
    const { text } = fileNamed(name);
    const view = viewOf(text);
    const before = sizesOf(text)!;
    const all = [{ id: "", sizes: view.sizes }, ...view.pieces].flatMap((p) =>
      p.sizes.map((s) => ({ id: `${p.id}/${s.name}`, ...s })),
    );
    const measured = view.groups.flatMap((g) => g.fields).filter((f) => f.kind === "measured");
    const fields = measured.filter((_, i) => i % EVERY === 0);
    let [tried, told, moving] = [0, 0, 0];
    for (const f of fields) {
      const { little, much } = nudged(text, f.key, f.text);
      if (little.length === 0) continue;
      tried++;
      for (const size of all) {
        const moves = (some: readonly Sizes[]): boolean =>
          some.some((sizes) => {
            const value = sizes.get(size.id);
            return value !== undefined && Math.abs(value - before.get(size.id)!) > MOVED;
          });
        const claimed = size.from.includes(f.key);
        if (moves(little)) expect(size.from, `${size.id} moves with ${f.key}`).toContain(f.key);
        if (!claimed) continue;
        expect(f.feeds).toContain(size.name);
        told++;
        if (moves([...little, ...much])) moving++;
      }
    }
    expect(tried).toBeGreaterThan(10);
    // Counts and rounded sizes need not move with a nudge; nearly all others do.
    expect(moving / told).toBeGreaterThan(0.8);
  },
);

test("a value that others follow says which, and they do follow", () => {
  const { text } = fileNamed("heron-bag-strap.yaml");
  const view = viewOf(text);
  const fields = view.groups.flatMap((g) => g.fields);
  const leather = fields.find((f) => f.key === "leather.strap.thickness")!;
  const keys = new Set(fields.map((f) => f.key));
  const followers = leather.feeds.filter((k) => keys.has(k));
  expect(followers.length).toBeGreaterThan(0);
  const edited = pageEdit(text, leather.key, "3.3 mm");
  const after = viewOf(edited.ok ? edited.value : "").groups.flatMap((g) => g.fields);
  const moved = fields
    .filter((f) => !f.given && after.find((g) => g.key === f.key)?.text !== f.text)
    .map((f) => f.key);
  for (const key of moved) expect(followers).toContain(key);
  for (const f of fields.filter((g) => g.given)) expect(leather.feeds).not.toContain(f.key);
});

test("how a size came about begins with what was given and ends with the size", () => {
  for (const { text } of orderFiles.slice(0, 5)) {
    const view = viewOf(text);
    for (const size of [...view.sizes, ...view.pieces.flatMap((p) => p.sizes)]) {
      expect(
        size.chain.some((l) => l.startsWith(`${size.name} = ${size.says}`)),
        size.name,
      ).toBe(true);
      if (size.from.length > 1) expect(size.chain.length).toBeGreaterThan(1);
    }
  }
});

test("lines and parts of a piece share their names, and parts lie in its box", () => {
  for (const { text } of orderFiles) {
    for (const { lines, parts, box } of viewOf(text).pieces) {
      const ids = new Set(lines.map(({ item }) => item.id));
      for (const part of parts) {
        if (!part.id.startsWith("corner.")) expect(ids, part.id).toContain(part.id);
        expect(part.says).toMatch(/[a-z]/);
        expect(part.at[0]).toBeGreaterThanOrEqual(box.minX - 1e-6);
        expect(part.at[0]).toBeLessThanOrEqual(box.maxX + 1e-6);
      }
      expect(new Set(parts.map((p) => p.id)).size).toBe(parts.length);
    }
  }
});
