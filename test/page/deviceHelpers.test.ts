import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { LARGEST_BYTES as ENGINES_LARGEST, readPaper } from "../../src/job.ts";
import { PAPERS as TRADE_PAPERS } from "../../src/trade/paper.ts";
import { bundleOf, readBundle, zipped } from "../../src/web/device/bundle.ts";
import { type KeptOrder, sayStoreError } from "../../src/web/device/database.ts";
import { freeName, safeName, stemOf } from "../../src/web/device/names.ts";
import { firstComment, isShopFile, LARGEST_BYTES, lineOf } from "../../src/web/device/textLines.ts";
import { isRoll, PAPERS, rollWidth } from "../../src/web/print/papers.ts";
import { sayWhen } from "../../src/web/start/sayWhen.ts";
import { orderText } from "./orders.ts";

// Names, bundles and first looks at texts: what needs no browser.

describe("names", () => {
  test.each([
    ["juniper.yaml", [], "juniper.yaml"],
    ["juniper.yaml", ["juniper.yaml"], "juniper-2.yaml"],
    ["juniper.yaml", ["juniper.yaml", "juniper-2.yaml"], "juniper-3.yaml"],
    ["juniper.yaml", ["Juniper.YAML"], "juniper-2.yaml"],
    ["a.b.yaml", ["a.b.yaml"], "a.b-2.yaml"],
    ["plain", ["plain"], "plain-2"],
    ["new\nline.yaml", ["new\nline.yaml"], "new\nline-2.yaml"],
  ])("%j beside %j is %j", (file, taken, free) => {
    expect(freeName(file, taken)).toBe(free);
  });

  test.each([
    ["juniper.yaml", "juniper.yaml"],
    ["juniper.yml", "juniper.yaml"],
    ["../../etc/passwd", "passwd.yaml"],
    ["C:\\orders\\wren.yaml", "wren.yaml"],
    ['a<b>"|?*:.yaml', "a-b------.yaml"],
    ["tab\there\u0000.yaml", "tab-here-.yaml"],
    ["right\u202Eto-left.yaml", "right-to-left.yaml"],
    ["..yaml", "order.yaml"],
    ["", "order.yaml"],
    [`${"x".repeat(500)}.yaml`, `${"x".repeat(120)}.yaml`],
    ["Jörg 🐎.yaml", "Jörg 🐎.yaml"],
  ])("%j is kept as %j", (path, name) => {
    expect(safeName(path)).toBe(name);
  });

  test("the stem is that of the command line's folder", () => {
    expect(stemOf("juniper.yaml")).toBe("juniper");
    expect(stemOf("a.b.yml")).toBe("a.b");
  });
});

describe("a text at first sight", () => {
  test("the lines that name an order, without quotes and comments", () => {
    const text = orderText("juniper-headstall");
    expect(lineOf(text, "for")).toBe("Juniper, bay mare, 15.1 hands");
    expect(lineOf(text, "shop")).toBe("shop.yaml");
    expect(lineOf('for: "a # b"  # c', "for")).toBe("a # b");
    expect(lineOf("for: 'x'", "for")).toBe("x");
    expect(lineOf("for: # nobody", "for")).toBe("");
    expect(lineOf("forward: x\n  for: y", "for")).toBe("");
    expect(lineOf("for: a#b\r\n", "for")).toBe("a#b");
  });

  test("orders and shop files are told apart", () => {
    expect(isShopFile(orderText("shop"))).toBe(true);
    for (const name of ["juniper-headstall", "wren-flap-purse", "heron-bag-strap"])
      expect(isShopFile(orderText(name))).toBe(false);
    expect(isShopFile("nothing of either")).toBe(false);
    expect(isShopFile("shop: a.yaml\n")).toBe(true);
  });

  test("the first comment says what it is", () => {
    expect(firstComment(orderText("rowan-tool-tote"))).toMatch(/^An open-top tote .* leather should\.$/);
    expect(firstComment("article: x\n# later")).toBe("");
    expect(firstComment("# all")).toBe("all");
  });

  test("the largest order and the papers are the engine's", () => {
    expect(LARGEST_BYTES).toBe(ENGINES_LARGEST);
    expect([...PAPERS]).toEqual(TRADE_PAPERS.map((p) => p.name));
    const roll = readPaper("roll 610 mm");
    expect(roll.ok && isRoll(roll.paper.name) && rollWidth(roll.paper.name)).toBe("610 mm");
    expect(PAPERS.some(isRoll)).toBe(false);
  });

  test("a moment is said by this device's clock", () => {
    expect(sayWhen(new Date(2026, 2, 1, 9, 5).getTime())).toBe("2026-03-01 09:05");
  });
});

const kept = (file: string, text: string, more: Partial<KeptOrder> = {}): KeptOrder => ({
  id: `id of ${file}`,
  file,
  text,
  changed: 1_000,
  revision: "r",
  history: { past: [], future: [] },
  ...more,
});
const NOW = 5_000;

describe("a bundle of orders", () => {
  const orders = [
    kept("juniper.yaml", "article: x\n", { shop: "shop: S\n", history: { past: ["a", "ü"], future: ["c"] } }),
    kept("juniper.yaml", "article: other\n"),
    kept("rates.yaml", "shop: not an order, but kept as one\n"),
  ];

  test("gives back every order with its shop and its history, and the shop file", () => {
    const bundle = readBundle(bundleOf(orders, { file: "shop.yaml", text: "labour:\n" }), NOW);
    expect(bundle.shop).toEqual({ file: "shop.yaml", text: "labour:\n" });
    expect(bundle.orders).toEqual(
      orders.map(({ id: _, revision: __, ...rest }, k) => ({
        ...rest,
        file: k === 1 ? "juniper-2.yaml" : rest.file,
      })),
    );
  });

  test("is a .zip that another program takes, with the texts to the byte, and always the same bytes", () => {
    const bytes = bundleOf(orders);
    expect(bundleOf(orders)).toEqual(bytes);
    const folder = mkdtempSync(join(tmpdir(), "whittaw-bundle-"));
    try {
      const path = join(folder, "b.zip");
      writeFileSync(path, bytes);
      const said = spawnSync(
        "python3",
        [
          "-c",
          "import sys,zipfile; z=zipfile.ZipFile(sys.argv[1]); assert z.testzip() is None; print('|'.join(z.namelist())); print(z.read('juniper.yaml').decode(), end='')",
          path,
        ],
        { encoding: "utf8" },
      );
      expect(said.stderr).toBe("");
      expect(said.stdout).toBe("juniper.yaml|juniper-2.yaml|rates.yaml|whittaw-orders.json\narticle: x\n");
    } finally {
      rmSync(folder, { recursive: true });
    }
  });

  test("orders zipped by hand are taken as new ones, by safe names", () => {
    const zip = zipSync({
      "../../up.yaml": strToU8("article: x\n"),
      "deep/er/shop.yml": strToU8("labour: 1\n"),
      "notes.txt": strToU8("no order"),
    });
    expect(readBundle(zip, NOW)).toEqual({
      orders: [{ file: "up.yaml", text: "article: x\n", changed: NOW, history: { past: [], future: [] } }],
      shop: { file: "shop.yaml", text: "labour: 1\n" },
    });
  });

  test.each([
    ["what is no .zip", strToU8("PK, but not really")],
    ["one without an order", zipped({ "a.txt": strToU8("x") })],
    ["an order that is too large", zipped({ "a.yaml": new Uint8Array(LARGEST_BYTES + 1) })],
    ["an order that is no text", zipped({ "a.yaml": Uint8Array.of(0xff, 0xfe) })],
  ])("refuses %s", (_, zip) => {
    expect(() => readBundle(zip, NOW)).toThrow();
  });

  test.each([
    "no json",
    "null",
    '{"orders":3}',
    '{"orders":[null,{"file":"a.yaml"},{"file":"a.yaml","changed":"x"},{"file":"a.yaml","changed":null}]}',
    '{"orders":[{"file":"a.yaml","changed":5000,"history":{"past":[1],"future":"x"},"shop":7}]}',
  ])("odd notes beside the orders do no harm: %s", (more) => {
    const zip = zipped({ "a.yaml": strToU8("article: x\n"), "whittaw-orders.json": strToU8(more) });
    expect(readBundle(zip, NOW).orders).toEqual([
      { file: "a.yaml", text: "article: x\n", changed: NOW, history: { past: [], future: [] } },
    ]);
  });
});

test.each([
  ["QuotaExceededError", /no room left/],
  ["SecurityError", /keeps nothing here/],
])("%s is said in words", (name, words) => {
  expect(sayStoreError(new DOMException("", name))).toMatch(words);
  expect(sayStoreError(new DOMException("", name), "Not read")).toMatch(/^Not read: /);
});
