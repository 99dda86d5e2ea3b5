import { describe, expect, test } from "vitest";
import { sayFault } from "../../src/order/say.ts";
import { beginShop } from "../../src/order/shopBegin.ts";
import { NO_SHOP, readShop } from "../../src/order/shopRead.ts";

const text = beginShop();
const lines = text.split("\n");
const isSetting = (line: string) => /^ *#[^ #]/.test(line);
const without = (line: string) => line.replace("#", "");
const shopOf = (of: string) => {
  const { faults, shop } = readShop(of, "new.yaml");
  expect(faults.map((f) => sayFault(f, "new.yaml"))).toEqual([]);
  return shop!;
};

describe("a new shop file", () => {
  test("sets nothing: read back it is a shop without a file", () => {
    expect(shopOf(text)).toEqual({ ...NO_SHOP, file: "new.yaml" });
  });

  test("keeps to 100 columns, has no spaces at line ends, and ends with one line end", () => {
    for (const line of lines) {
      // A default list of lengths, or a size's measures, is one value on one line.
      if (!/^ *#(lengths|my-size):/.test(line)) expect(line.length, line).toBeLessThanOrEqual(100);
      expect(line).not.toMatch(/\s$/);
    }
    expect(text).toMatch(/[^\n]\n$/);
    expect(text).not.toMatch(/\n\n\n/);
  });

  test("reads without a fault with every # taken away, and then has everything", () => {
    const all = shopOf(lines.map((line) => (isSetting(line) ? without(line) : line)).join("\n"));
    expect(all).toMatchObject({ currency: { code: "GBP" }, perHour: "30.00", thread: { reel: 100_000 } });
    expect(Object.values(all.leathers).every((l) => l.price !== undefined && l.side !== undefined)).toBe(
      true,
    );
    expect(Object.values(all.hardware).every((h) => h.each !== undefined && h.bySize.length > 0)).toBe(true);
    expect(all.punches).toHaveLength(1);
    expect(new Set(all.sizes.map((s) => s.article)).size).toBe(3);
  });

  test("a price alone asks for the currency, and every other line reads alone", () => {
    const settings = lines.flatMap((line, i) => (isSetting(line) ? [i] : []));
    expect(settings.length).toBeGreaterThan(100);
    for (const at of settings) {
      const { faults } = readShop(lines.map((l, i) => (i === at ? without(l) : l)).join("\n"), "new.yaml");
      expect(
        faults.every((f) => f.key === "currency"),
        lines[at],
      ).toBe(true);
    }
  });

  test("hardware has examples of its own kind: a rivet isn't sold as a stud is", () => {
    const shown = ["rivet", "press-stud", "ring"].map(
      (kind) => new RegExp(`^  ${kind}:\\n    #each: .*\\n    #by-size: (.*)$`, "m").exec(text)?.[1],
    );
    expect(new Set(shown).size).toBe(3);
    expect(shown).not.toContain(undefined);
  });

  test("explains each line above it, like lines once", () => {
    const at = lines.indexOf("  #per-hour: 30.00");
    expect(lines.slice(at - 2, at)).toEqual([
      "  # Price of an hour's work.",
      "  # May be left blank. An example: put your own.",
    ]);
    expect(text.split("Price of one square foot, decimetre or metre of it.")).toHaveLength(2);
    expect(text).toContain("  # Rings; the lines are explained above.\n  ring:\n    #each: 3.20\n");
  });
});
