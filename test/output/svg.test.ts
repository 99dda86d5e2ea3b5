import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { arc, openPath, polyline, rectanglePath } from "../../src/geometry/path.ts";
import { svg } from "../../src/output/svg.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { hostile, stroke, testPicture, words } from "../support/picture.ts";
import { inkShare, renderSvg } from "../support/render.ts";

const page = (items: Picture["items"]): Picture => ({ title: "page", width: 40, height: 30, items });

describe("the file", () => {
  const text = svg(testPicture);

  test("has its size in millimetres and its coordinates in the same", () => {
    expect(text).toContain(`width="215.9mm" height="279.4mm" viewBox="0 0 215.9 279.4"`);
  });

  test("groups by meaning, in one order, and keeps ids", () => {
    const groups = [...text.matchAll(/<g id="(\w+)"/g)].map((m) => m[1]);
    expect(groups).toEqual(["skive", "fold", "stitch", "mark", "cut", "hole", "sheet", "text"]);
    for (const id of ["square", "cheek.outline", "cheek.hole-1", "cheek-off.slot", "part.fold"])
      expect(text).toContain(`id="${id}"`);
  });

  test("has every id once", () => {
    const ids = [...text.matchAll(/ id="([^"]*)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("refers to nothing outside itself and runs nothing", () => {
    expect(text).not.toMatch(/href|<script|<style|<image|@import|url\((?!#)|<!DOCTYPE|<foreignObject/);
    expect(text.replaceAll("http://www.w3.org/2000/svg", "")).not.toMatch(/https?:/);
  });

  test("writes plain numbers of 3 decimals at most", () => {
    const numbers = [
      ...text.matchAll(/ (?:d|x|y|viewBox|stroke-width|textLength|transform)="([^"]*)"/g),
    ].flatMap((m) => m[1]!.match(/-?[\d.]+(?:e[-+]?\d+)?/gi) ?? []);
    expect(numbers.length).toBeGreaterThan(300);
    expect(numbers.filter((n) => !/^-?\d+(\.\d{1,3})?$/.test(n) || n === "-0")).toEqual([]);
  });

  test("is the same twice", () => {
    expect(svg(testPicture)).toBe(text);
  });
});

test("y runs up in the picture and down in the file, and arcs stay arcs that bulge the same way", () => {
  const over = openPath([10, 10], [arc([20, 10], [15, 10], false)]);
  const text = svg(page([stroke("cut", "01.1", over)]));
  expect(text).toContain(`d="M10 20A5 5 0 0 1 15 15A5 5 0 0 1 20 20"`);
});

test("ids are made safe and told apart, from each other and from the layers", () => {
  const line = polyline([
    [0, 0],
    [1, 1],
  ]);
  const ids = ["cut", `x"><script>`, "hole", "hole", "1st", "clip-1"];
  const group = {
    kind: "group",
    placement: { at: [0, 0], angle: 0 },
    clip: { minX: 0, minY: 0, maxX: 9, maxY: 9 },
    items: ids.map((id) => stroke("cut", "01.1", line, { id })),
  } as const;
  const found = [...svg(page([group])).matchAll(/ id="([^"]*)"/g)].map((m) => m[1]);
  expect(found).toEqual(["clip-1", "cut", "cut-2", "x---script-", "hole-2", "hole-3", "_1st", "clip-1-2"]);
});

test("words carry the length that the PDF gives them, and are escaped", () => {
  const text = svg(page([words(`<b>"&'`, [5, 5], { bold: true, align: "right", angle: Math.PI / 2 })]));
  expect(text).toContain(`&lt;b&gt;&quot;&amp;&#39;</text>`);
  const [, turn, x, length] = /rotate\((\S+)\)" x="(\S+)" .* textLength="(\S+)"/.exec(text) ?? [];
  expect(turn).toBe("-90");
  expect(Number(x)).toBe(-Number(length));
  expect(text).toContain(`font-weight="bold"`);
});

describe("hostile texts", () => {
  // resvg reads strictly: a file that is not well-formed makes it throw.
  test.each([...hostile, "a\ufffeb\uffff", "two  spaces ", "\u{1F40E}"])(
    "%j stands in a file that can be read, and adds no element",
    (said) => {
      const text = svg({ ...page([words(said, [2, 2])]), title: said });
      expect(inkShare(renderSvg(text, 40))).toBeGreaterThan(0);
      expect(text.match(/<[a-zA-Z]+/g)).toEqual(["<svg", "<title", "<g", "<text"]);
    },
  );

  test("any text at all", () => {
    const any = fc.array(fc.oneof(fc.nat(0x10ffff), fc.integer({ min: 0xd800, max: 0xdfff }), fc.nat(0xff)), {
      maxLength: 10,
    });
    fc.assert(
      fc.property(any, any, (a, b) => {
        const [said, id] = [String.fromCodePoint(...a), String.fromCodePoint(...b)];
        const text = svg({
          ...page([words(said, [2, 2], { id }), stroke("cut", "01.1", rectanglePath([1, 1], 5, 5), { id })]),
          title: said,
        });
        expect(inkShare(renderSvg(text, 20))).toBeGreaterThan(0);
      }),
      { seed: 4, numRuns: 40 },
    );
  });

  test("the reader does complain when something is left unescaped", () => {
    const broken = svg(page([words("page", [2, 2])])).replace(">page<", ">pa&ge<");
    expect(() => renderSvg(broken, 20)).toThrow();
  });
});
