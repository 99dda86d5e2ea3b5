import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "yaml";
import { beginOrder } from "../../src/order/begin.ts";
import { editOrder } from "../../src/order/edit.ts";
import { readOrder } from "../../src/order/read.ts";
import { sampleArticle } from "../support/sampleArticle.ts";

describe("one value changes, and all else stays", () => {
  test.each<[string, string, string, string | undefined, string]>([
    ["a value", "a: 1 # one\nb: 2\n", "a", "3", "a: 3 # one\nb: 2\n"],
    [
      "a value far down",
      "a:\n    b:\n        c: 1   # x\n\n# end\n",
      "a.b.c",
      "5/8 in",
      "a:\n    b:\n        c: 5/8 in   # x\n\n# end\n",
    ],
    ["a quoted value", "a: '1'   # x\n", "a", "2", "a: 2   # x\n"],
    ["a value that must be quoted", "a: 1\n", "a", "Wren: bay", 'a: "Wren: bay"\n'],
    ["a value in brackets", "a: { b: 1,  c: 2 } # x\n", "a.b", "3, or 4", 'a: { b: "3, or 4",  c: 2 } # x\n'],
    ["a value on the next line", "a:\n  41 1/2\nb: 2\n", "a", "42", "a:\n  42\nb: 2\n"],
    ["a value of several lines", "a: >-\n  x\n  y\nb: 2\n", "a", "z", "a: z\nb: 2\n"],
    ["a value at the end of a text without a line end", "a: 1", "a", "2", "a: 2"],
    ["an empty value", "a: # write here\nb: 2\n", "a", "1", "a: 1 # write here\nb: 2\n"],
    ["an empty value in brackets", "a: { b:, c }\n", "a.b", "1", "a: { b: 1, c }\n"],
    ["an empty value without a colon", "a: { b:, c }\n", "a.c", "1", "a: { b:, c: 1 }\n"],
    ["a value between CR LF", "a: 1 # x\r\nb: 2\r\n", "a", "3", "a: 3 # x\r\nb: 2\r\n"],
    ["a value in JSON", '{"a":{"b":"1"}}', "a.b", "2", '{"a":{"b":2}}'],
    ["the same value", "a: '1'\n", "a", "1", "a: 1\n"],
  ])("%s", (_, text, path, value, edited) => {
    expect(editOrder(text, path, value)).toBe(edited);
  });
});

describe("a value that is not there is added", () => {
  test.each<[string, string, string, string, string]>([
    [
      "behind the others",
      "a:\n   b: 1 # x\n\n# of d\nd: 2\n",
      "a.c",
      "3",
      "a:\n   b: 1 # x\n   c: 3\n\n# of d\nd: 2\n",
    ],
    ["at the top level", "a: 1 # x\n# end\n", "b", "2", "a: 1 # x\nb: 2\n# end\n"],
    ["with its sections", "a: 1\n", "b.c.d", "2", "a: 1\nb:\n  c:\n    d: 2\n"],
    [
      "with a section in a section",
      "a:\n  b: { c: 1 }\n",
      "a.d.e",
      "2",
      "a:\n  b: { c: 1 }\n  d:\n    e: 2\n",
    ],
    ["in brackets", "a: { b: 1 } # x\n", "a.c", "2", "a: { b: 1, c: 2 } # x\n"],
    ["in brackets over several lines", "a: {\n  b: 1 # x\n}\n", "a.c", "2", "a: {\n  b: 1, c: 2 # x\n}\n"],
    ["in brackets with a last comma", "a: { b: 1, }\n", "a.c", "2", "a: { b: 1, c: 2, }\n"],
    ["in empty brackets", "a: {}\n", "a.b.c", "1", "a: { b: { c: 1 } }\n"],
    ["in empty brackets with a space", "a: { }\n", "a.b", "1", "a: { b: 1 }\n"],
    ["in an empty section", "a: # x\nb: 2\n", "a.c", "1", "a: # x\n  c: 1\nb: 2\n"],
    [
      "in an empty section in a section",
      "a:\n    b:\nc: 2\n",
      "a.b.d",
      "1",
      "a:\n    b:\n      d: 1\nc: 2\n",
    ],
    ["in an empty section in brackets", "a: { b: }\n", "a.b.c", "1", "a: { b: { c: 1 } }\n"],
    ["in an empty section in brackets without a colon", "a: { b }\n", "a.b.c", "1", "a: { b: { c: 1 } }\n"],
    ["in an empty text", "", "a.b", "1", "a:\n  b: 1\n"],
    ["in a text of comments", "# x", "a", "1", "# x\na: 1\n"],
    ["after a last line without an end", "a: 1", "b", "2", "a: 1\nb: 2\n"],
    ["before the end mark", "a: 1\n...\n", "b", "2", "a: 1\nb: 2\n...\n"],
    ["between CR LF", "a:\r\n  b: 1\r\nc: 2\r\n", "a.d", "3", "a:\r\n  b: 1\r\n  d: 3\r\nc: 2\r\n"],
    [
      "after a value of several lines",
      "a:\n  b: |\n    x\n    y\n  \nc: 2\n",
      "a.d",
      "3",
      "a:\n  b: |\n    x\n    y\n  d: 3\n  \nc: 2\n",
    ],
    [
      "under its own comment",
      "a:\n  b: 1\n  # what c is\n  #c: 3\n  # what d is\n  #d: 4\n",
      "a.c",
      "5",
      "a:\n  b: 1\n  # what c is\n  #c: 3\n  c: 5\n  # what d is\n  #d: 4\n",
    ],
    [
      "under its own comment in an empty section",
      "a:\n    # c: 3\nb: 2\n",
      "a.c",
      "5",
      "a:\n    # c: 3\n    c: 5\nb: 2\n",
    ],
    ["after a list", "a:\n  b:\n    - 1\n\nc: 2\n", "a.d", "3", "a:\n  b:\n    - 1\n  d: 3\n\nc: 2\n"],
    [
      "after a list of sections",
      "a:\n  b:\n    - x: 1\n      y: 2 # z\n\nc: 2\n",
      "a.d",
      "3",
      "a:\n  b:\n    - x: 1\n      y: 2 # z\n  d: 3\n\nc: 2\n",
    ],
    [
      "not under another section's comment",
      "a:\n  b: 1\nx:\n  y: 1\n  #c: 3\n",
      "a.c",
      "5",
      "a:\n  b: 1\n  c: 5\nx:\n  y: 1\n  #c: 3\n",
    ],
    [
      "not under a deeper section's comment",
      "a:\n  b:\n    x: 1\n    #c: 3\n  #c: 4\n",
      "a.c",
      "5",
      "a:\n  b:\n    x: 1\n    #c: 3\n  #c: 4\n  c: 5\n",
    ],
    [
      "not amid another value's lines",
      "a:\n  b:\n    x: 1\n  #c: 3\n    y: 1\n",
      "a.c",
      "5",
      "a:\n  b:\n    x: 1\n  #c: 3\n    y: 1\n  c: 5\n",
    ],
  ])("%s", (_, text, path, value, edited) => {
    expect(editOrder(text, path, value)).toBe(edited);
  });
});

describe("a value is taken out", () => {
  test.each<[string, string, string, string]>([
    ["with its line", "a: 1\n# of b\nb: 2 # x\nc: 3\n", "b", "a: 1\n# of b\nc: 3\n"],
    ["from a section, which stays", "a:\n  b: 1\nc: 2\n", "a.b", "a:\nc: 2\n"],
    ["first in brackets", "a: { b: 1, c: 2 }\n", "a.b", "a: { c: 2 }\n"],
    ["last in brackets", "a: { b: 1, c: 2 }\n", "a.c", "a: { b: 1 }\n"],
    ["amid brackets", "a: { b: 1, c: 2, d: 3 }\n", "a.c", "a: { b: 1, d: 3 }\n"],
    ["alone in brackets", "a: { b: 1 }\n", "a.b", "a: { }\n"],
    ["alone with a comma", "a: { b: 1, }\n", "a.b", "a: { }\n"],
    [
      "in brackets over lines, whose comments stay",
      "a: {\n  b: 1, # x\n  c: 2, # y\n  d: 3 # z\n}\n",
      "a.c",
      "a: {\n  b: 1 # x\n  , # y\n  d: 3 # z\n}\n",
    ],
    ["of several lines", "a: |\n  x\n  y\nb: 2\n", "a", "b: 2\n"],
    ["on the next line", "a:\n  1\nb: 2\n", "a", "b: 2\n"],
    ["empty", "a:\nb: 2\n", "a", "b: 2\n"],
    ["at the end of a text without a line end", "a: 1\nb: 2", "b", "a: 1\n"],
    ["between CR LF", "a: 1\r\nb: 2\r\n", "a", "b: 2\r\n"],
    ["that is not there", "a: 1\n", "b.c", "a: 1\n"],
  ])("%s", (_, text, path, edited) => {
    expect(editOrder(text, path, undefined)).toBe(edited);
  });
});

describe("a text comes back as it was", () => {
  test.each([
    ["an anchor", "a: &x 1\nb: *x\n", "a", "2"],
    ["a name twice", "a: 1\na: 2\n", "a", "3"],
    ["a slip", "a: 1\n  b: 2\n", "a", "3"],
    ["a second document", "a: 1\n---\nb: 2\n", "a", "3"],
    ["a list at the top", "- a\n", "a", "3"],
    ["a path to a section", "a: { b: 1 }\n", "a", "3"],
    ["a path to a section, to be taken out", "a:\n  b: 1\n", "a", undefined],
    ["a path through a value", "a: 1\n", "a.b", "3"],
    ["a path through a list", "a: [1]\n", "a.b", "3"],
    ["a value that can't be read", "a: 1\n", "a", "two\nlines"],
    ["no path", "a: 1\n", "", "2"],
  ])("%s", (_, text, path, value) => {
    expect(editOrder(text, path, value)).toBe(text);
  });
});

test("a new order is filled in under its own explanations", () => {
  const text = beginOrder(sampleArticle);
  const paths = {
    paper: "a4",
    "measures.height": "14.2 hands",
    "hardware.fixing": "binding screw",
    "hardware.buckle.bar": "3 mm",
    "pieces.strap.holes": "7",
    "pieces.keeper.breadth": "12 mm",
  };
  const edited = Object.entries(paths).reduce((t, [path, value]) => editOrder(t, path, value), text);
  const added = edited.split("\n").filter((line) => !text.split("\n").includes(line));
  expect(added).toEqual([
    "paper: a4",
    "  height: 14.2 hands",
    "  fixing: binding screw",
    "    bar: 3 mm",
    "    holes: 7",
    "    breadth: 12 mm",
  ]);
  const at = edited.split("\n").indexOf("    holes: 7");
  expect(edited.split("\n")[at - 1]).toBe("    #holes: 5");
  expect(readOrder(edited, "new.yaml", [sampleArticle]).faults).toEqual([]);
  expect(Object.keys(paths).reduce((t, path) => editOrder(t, path, undefined), edited)).toBe(text);
});

// Orders of any layout. Every value and every comment is written with a word of its own, so that a test
// can see which are still there.
type Layout = {
  readonly indent: number;
  readonly brackets: boolean;
  readonly quote: "" | '"' | "'";
  readonly gap: string;
  readonly notes: number;
};
type Drawn = { readonly text: string; readonly comments: readonly string[] };
const SECTIONS = { a: ["p", "q"], b: ["p", "r", "s"], "b.x": ["p", "t"], c: ["q"], "c.y": ["u"] } as const;
const PATHS = ["m", "n", ...Object.entries(SECTIONS).flatMap(([s, names]) => names.map((n) => `${s}.${n}`))];

const layouts: fc.Arbitrary<Layout> = fc.record({
  indent: fc.integer({ min: 1, max: 4 }),
  brackets: fc.boolean(),
  quote: fc.constantFrom("", '"', "'"),
  gap: fc.constantFrom(" ", "  ", "    "),
  notes: fc.integer({ min: 0, max: 15 }),
});

function draw(paths: readonly string[], l: Layout, end: string, lastEnd: boolean): Drawn {
  const comments: string[] = [];
  const note = (path: string, bit: number, before: string): string => {
    if ((l.notes & bit) === 0) return "";
    comments.push(`${before === "" ? "own" : "behind"}-${path}-${bit}`);
    return `${before}# ${comments.at(-1)}`;
  };
  const value = (path: string) => `${l.quote}v-${path}${l.quote}`;
  const lines: string[] = [];
  const own = (path: string, bit: number, pad: string) => {
    const text = note(path, bit, "");
    if (text !== "") lines.push("", `${pad}${text}`);
  };
  const put = (path: string, pad: string) => {
    own(path, 1, pad);
    lines.push(`${pad}${path.split(".").at(-1)}:${l.gap}${value(path)}${note(path, 2, "  ")}`);
  };
  const section = (name: string, pad: string) => {
    const inner = pad + " ".repeat(l.indent);
    const inside = paths.filter((p) => p.startsWith(`${name}.`));
    const mine = inside.filter((p) => p.split(".").length === name.split(".").length + 1);
    const deeper = [
      ...new Set(inside.filter((p) => !mine.includes(p)).map((p) => p.split(".").slice(0, -1).join("."))),
    ];
    if (inside.length === 0) return;
    own(name, 4, pad);
    if (l.brackets && deeper.length === 0) {
      const items = mine.map((p) => `${p.split(".").at(-1)}: ${value(p)}`).join(",".concat(l.gap));
      lines.push(`${pad}${name.split(".").at(-1)}: { ${items} }${note(name, 8, " ")}`);
      return;
    }
    lines.push(`${pad}${name.split(".").at(-1)}:${note(name, 8, " ")}`);
    for (const p of mine) put(p, inner);
    for (const d of deeper) section(d, inner);
  };
  for (const p of ["m", "n"].filter((n) => paths.includes(n))) put(p, "");
  for (const s of ["a", "b", "c"]) section(s, "");
  return { text: lines.join(end) + (lastEnd ? end : ""), comments };
}

const orders = fc
  .tuple(fc.subarray(PATHS, { minLength: 1 }), layouts, fc.constantFrom("\n", "\r\n"), fc.boolean())
  .map(([paths, layout, end, lastEnd]) => ({ paths, ...draw(paths, layout, end, lastEnd) }));
const ALL_PATHS = [...PATHS, "d.z", "a.w.z"];
const anyPath = fc.constantFrom(...ALL_PATHS);
const anyValue = fc.constantFrom("5/8 in", "yes", "a, b", "x: y", "#1", "null", "'", '"', "{", "é", "");

/** What yaml itself reads, as paths and values; an empty section is nothing. */
function readBack(text: string): Record<string, string> {
  const flat: [string, string][] = [];
  const walk = (value: unknown, path: string): void => {
    if (typeof value === "string") flat.push([path, value]);
    else
      for (const [k, v] of Object.entries((value ?? {}) as object)) walk(v, path === "" ? k : `${path}.${k}`);
  };
  walk(parse(text, { schema: "failsafe" }), "");
  return Object.fromEntries(flat.filter(([path, value]) => value !== "" || ALL_PATHS.includes(path)));
}
const commonStart = (a: string, b: string): number => {
  let n = 0;
  while (n < a.length && n < b.length && a[n] === b[n]) n++;
  return n;
};
const reversed = (s: string) => [...s].reverse().join("");
/** True when `longer` is `shorter` with one stretch put in. */
const onlyAdds = (shorter: string, longer: string): boolean =>
  commonStart(shorter, longer) + commonStart(reversed(shorter), reversed(longer)) >= shorter.length;

describe("in orders of any layout", () => {
  const runs = { seed: 11, numRuns: 250 };

  test("the layouts are sound orders", () => {
    fc.assert(
      fc.property(orders, ({ text, paths }) => {
        expect(readBack(text)).toEqual(Object.fromEntries(paths.map((p) => [p, `v-${p}`])));
      }),
      runs,
    );
  });

  test("a value set is read back, and every other byte stays", () => {
    fc.assert(
      fc.property(orders, anyPath, anyValue, ({ text, paths }, path, value) => {
        const edited = editOrder(text, path, value);
        expect(readBack(edited)).toEqual({ ...readBack(text), [path]: value });
        if (!paths.includes(path)) {
          expect(onlyAdds(text, edited)).toBe(true);
          return;
        }
        const word = new RegExp(`["']?v-${path.replaceAll(".", "\\.")}(?![.\\w])["']?`).exec(text)!;
        const [before, after] = [text.slice(0, word.index), text.slice(word.index + word[0].length)];
        expect(edited.startsWith(before)).toBe(true);
        expect(edited.endsWith(after)).toBe(true);
      }),
      runs,
    );
  });

  test("a value taken out is gone, with the comment behind it alone", () => {
    fc.assert(
      fc.property(orders, anyPath, ({ text, comments }, path) => {
        const edited = editOrder(text, path, undefined);
        const { [path]: _, ...rest } = readBack(text);
        expect(readBack(edited)).toEqual(rest);
        expect(onlyAdds(edited, text)).toBe(true);
        const gone = comments.filter((c) => !edited.split(/\s/).includes(c));
        expect([[], [`behind-${path}-2`]]).toContainEqual(gone);
      }),
      runs,
    );
  });

  test("a value put in and taken out again leaves the text as it was, where its section stands", () => {
    fc.assert(
      fc.property(orders, fc.constantFrom(...PATHS), anyValue, ({ text, paths }, path, value) => {
        const section = path.split(".").slice(0, -1).join(".");
        const stands = section === "" || paths.some((p) => p.startsWith(`${section}.`));
        fc.pre(!paths.includes(path) && stands && text.endsWith("\n"));
        expect(editOrder(editOrder(text, path, value), path, undefined)).toBe(text);
      }),
      runs,
    );
  });
});
