import fc from "fast-check";
import { beforeAll, describe, expect, test } from "vitest";
import { polyline, rectanglePath } from "../../src/geometry/path.ts";
import { pdf } from "../../src/output/pdf.ts";
import type { Picture } from "../../src/picture/picture.ts";
import { drawable } from "../../src/picture/words.ts";
import { bold, font } from "../support/fonts.ts";
import { hostile, stroke, testPicture, words } from "../support/picture.ts";
import { inkShare, renderPdfPage, withPdf } from "../support/render.ts";

const options = { font, bold, title: testPicture.title, subject: "one-ear headstall", id: "a1b2c3" };
const small: Picture = {
  title: "small",
  width: 120,
  height: 60,
  items: [stroke("cut", "01.2", rectanglePath([10, 10], 50, 30))],
};
const text = (bytes: Uint8Array): string => new TextDecoder("latin1").decode(bytes);

let bytes: Uint8Array;
beforeAll(async () => {
  bytes = await pdf([testPicture, small], options);
});

describe("as pdfjs reads it", () => {
  test("pages have the pictures' sizes", async () => {
    const sizes = await withPdf(bytes, async (file) =>
      Promise.all([1, 2].map(async (n) => (await file.getPage(n)).view)),
    );
    expect(sizes[0]).toEqual([0, 0, 612, 792]);
    expect(sizes[1]![2]).toBeCloseTo((120 * 72) / 25.4, 5);
    expect(sizes[1]![3]).toBeCloseTo((60 * 72) / 25.4, 5);
  });

  test("the viewer is asked not to scale and to pick paper by the page's size", async () => {
    const preferences = await withPdf(bytes, (file) => file.getViewerPreferences());
    expect(preferences).toMatchObject({ PrintScaling: "None", PickTrayByPDFSize: true });
  });

  test("every text comes back, hostile ones as plain words", async () => {
    const found = await withPdf(
      bytes,
      async (file) => (await (await file.getPage(1)).getTextContent()).items,
    );
    const read = found.map((item) => ("str" in item ? item.str : "")).join("\n");
    for (const wanted of [
      ...hostile,
      "Ηνιοχική Ελένη",
      "Уздечка для Ёлки, Љубица",
      "Straße Čapek Łukasz ½ ¾ → ≤ 41½ in",
    ]) {
      expect(read).toContain(drawable(wanted).text);
    }
    expect(read).not.toMatch(/[\u202a-\u202e\u2066-\u2069]/);
  });

  test("title, subject, order and fixed dates stand in its information", async () => {
    const { info } = await withPdf(bytes, (file) => file.getMetadata());
    expect(info).toMatchObject({
      Title: testPicture.title,
      Subject: "one-ear headstall",
      CreationDate: "D:20000101000000Z",
      Custom: { Order: "a1b2c3" },
    });
  });

  test("layers are named by meaning, and hold what belongs to them", async () => {
    const names = await withPdf(bytes, async (file) =>
      Array.from(await file.getOptionalContentConfig(), ([, { name }]) => name),
    );
    expect(names).toEqual(["skive", "fold", "stitch", "mark", "cut", "hole", "sheet", "text"]);
    const share = async (hidden: readonly string[]) => inkShare(await renderPdfPage(bytes, 1, 50, hidden));
    const all = await share([]);
    for (const name of names) expect(await share([name])).toBeLessThan(all);
    expect(await share(names)).toBe(0);
  });
});

describe("the bytes", () => {
  test("are the same twice, and differ by the order", async () => {
    expect(Buffer.compare(Buffer.from(await pdf([testPicture, small], options)), Buffer.from(bytes))).toBe(0);
    const other = await pdf([testPicture, small], { ...options, id: "other" });
    const id = (file: Uint8Array) => /\/ID \[<(\w+)>/.exec(text(file))?.[1];
    expect(id(bytes)).toMatch(/^\w{32}$/);
    expect(id(other)).not.toBe(id(bytes));
  });

  test("are not compressed, carry both fonts, no scripts and no second, unescaped copy of the title", () => {
    const raw = text(bytes);
    expect(raw.startsWith("%PDF-1.7")).toBe(true);
    expect(raw).not.toMatch(/FlateDecode|\/JavaScript|\/JS\b|\/OpenAction|\/URI|<rdf/);
    expect(raw.match(/\/FontFile2/g)).toHaveLength(2);
    expect(raw).toContain("+DejaVuSansCondensed-Bold");
  });

  test("a font that no words use is left out", async () => {
    expect(text(await pdf([small], options))).not.toMatch(/FontFile/);
  });

  test("keep every coordinate to 0.001 mm", async () => {
    const xs = [0.001, 1.588, 12.345, 99.999, 1234.567, 5000.001];
    const items = [stroke("cut", "01.2", polyline(xs.map((x) => [x, 5000.001 - x])))];
    const raw = text(await pdf([{ title: "", width: 5010, height: 5010, items }], options));
    const found = [...raw.matchAll(/^(\S+) (\S+) [ml]$/gm)].map(([, x, y]) =>
      [Number(x), Number(y)].map((pt) => (pt * 25.4) / 72),
    );
    expect(found).toHaveLength(xs.length);
    for (const [i, [x, y]] of found.entries()) {
      expect(x).toBeCloseTo(xs[i]!, 5);
      expect(y).toBeCloseTo(5010 - 5000.001 + xs[i]!, 5);
    }
    expect(raw).not.toMatch(/\d[eE][-+]\d/);
  });
});

test("what lies outside a clip is not drawn", async () => {
  const bar = stroke("cut", "01.2", rectanglePath([0, 0], 40, 10), { fill: "black" });
  const group = (clip: { minX: number; minY: number; maxX: number; maxY: number }, angle: number) =>
    ({
      kind: "group",
      placement: { at: [30, 20], angle },
      clip,
      items: [bar, words("clipped", [12, 2], { size: 5 })],
    }) as const;
  const share = async (clip: Parameters<typeof group>[0], angle: number) =>
    inkShare(await renderPdfPage(await pdf([{ ...small, items: [group(clip, angle)] }], options), 1, 100)) *
    120 *
    60;
  expect(await share({ minX: -1, minY: -1, maxX: 41, maxY: 11 }, 0.5)).toBeCloseTo(400, -1);
  expect(await share({ minX: 5, minY: 2, maxX: 15, maxY: 7 }, 0.5)).toBeCloseTo(50, 0);
});

test("white fill clears what lies below, black fill is exactly as large as its path", async () => {
  const black = stroke("mark", "01.1", rectanglePath([10, 10], 40, 40), { fill: "black" });
  const white = stroke("hole", "01.1", rectanglePath([20, 20], 10, 10), { fill: "white" });
  const ink = async (items: Picture["items"]) =>
    inkShare(await renderPdfPage(await pdf([{ ...small, items }], options), 1, 254)) * 120 * 60;
  expect(await ink([black])).toBeCloseTo(1600, 0);
  // The white square's own thin line covers the rim: 10 mm from middle to middle leaves 9.75 mm white.
  expect(await ink([black, white])).toBeCloseTo(1600 - 9.75 ** 2, 0);
});

test("any text at all makes a PDF that opens", async () => {
  const any = fc.array(fc.oneof(fc.nat(0x10ffff), fc.integer({ min: 0xd800, max: 0xdfff }), fc.nat(0x2ff)), {
    maxLength: 10,
  });
  await fc.assert(
    fc.asyncProperty(any, any, async (codes, title) => {
      const [said, name] = [String.fromCodePoint(...codes), String.fromCodePoint(...title)];
      const file = await pdf([{ ...small, items: [words(said, [10, 10])] }], {
        ...options,
        title: name,
        subject: said,
      });
      expect(await withPdf(file, async (opened) => opened.numPages)).toBe(1);
    }),
    { seed: 9, numRuns: 20 },
  );
});

test("no pages, and a page longer than readers take, are refused", async () => {
  await expect(pdf([], options)).rejects.toThrow(/at least one page/);
  await expect(pdf([{ ...small, height: 5081 }], options)).rejects.toThrow(/too large/);
});
