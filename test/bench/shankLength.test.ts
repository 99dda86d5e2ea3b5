import { describe, expect, test } from "vitest";
import { shankOf, shankWords } from "../../src/bench/shankLength.ts";
import type { Fitting } from "../../src/model/fitting.ts";
import type { HardwareRate } from "../../src/model/shop.ts";
import { shankRange } from "../../src/trade/shankLength.ts";
import { madeOf, orderText } from "../support/madeOf.ts";

const fitting = (kind: Fitting["kind"], stack: number, shank = 5): Fitting => ({
  kind,
  name: kind,
  count: 4,
  details: [],
  through: { shank, stack },
  pieces: ["cheek"],
  serves: [],
});
const rate = (...lengths: readonly number[]): HardwareRate => ({
  bySize: [],
  lengths,
  lengthsFrom: "a list made up for this",
  spares: 0,
});

describe("what lengths do", () => {
  test("a 1/4 in solid rivet is at most 3/8 in longer than what it goes through", () => {
    // jmodela.coffeecup.com/rivets.html, worked: 1/4 in rivet, 3/8 in beyond the stack.
    const { to } = shankRange("rivet", 25.4 / 4, 10);
    expect(to - 10).toBeCloseTo(25.4 * 0.375, 9);
  });

  test("a screw's barrel is shorter than the leather, a rivet's shank longer", () => {
    for (const stack of [2, 5.6, 12]) {
      const [screw, rivet] = [shankRange("binding screw", 5, stack), shankRange("rivet", 5, stack)];
      // The trade's rule: less 0.3 to 0.8 mm, so that it pinches.
      expect([stack - screw.to, stack - screw.from].map((x) => x.toFixed(6))).toEqual([
        "0.300000",
        "0.800000",
      ]);
      expect(rivet.from).toBeGreaterThan(stack);
      expect(rivet.to).toBeGreaterThan(rivet.from);
    }
  });
});

describe("which of the shop's lengths is taken", () => {
  test("the one that lies between; both ends count", () => {
    // 6 mm of leather: 5.2 to 5.7 mm.
    expect(shankOf(fitting("binding screw", 6), rate(4, 5, 5.5, 6))?.chosen).toBe(5.5);
    expect(shankOf(fitting("binding screw", 6), rate(5.2))?.chosen).toBe(5.2);
    expect(shankOf(fitting("binding screw", 6), rate(5.7))?.chosen).toBe(5.7);
    expect(shankOf(fitting("binding screw", 6), rate(5.1, 5.8))?.chosen).toBeUndefined();
  });

  test("of several the one nearest to the middle, whatever their order", () => {
    for (const lengths of [
      [11, 12, 13],
      [13, 12, 11],
    ])
      expect(shankOf(fitting("rivet", 6), rate(...lengths))?.chosen).toBe(12);
  });

  test("none for what has no shank", () => {
    expect(shankOf({ ...fitting("rivet", 6), kind: "press stud" }, rate(6))).toBeUndefined();
    const { through, ...bare } = fitting("rivet", 6);
    expect(through).toBeDefined();
    expect(shankOf(bare, rate(12))).toBeUndefined();
  });

  const words = (kind: "binding screw" | "rivet", lengths: readonly number[]): string =>
    shankWords(kind, shankOf(fitting(kind, 6), rate(...lengths))!, lengths).join(" | ");

  test("where none does, the next longer is told and what to do with it", () => {
    expect(words("binding screw", [5, 8, 6])).toMatch(/5\.2 to 5\.7 mm; the next longer is 6 mm: file/);
    expect(words("rivet", [10, 16, 20])).toMatch(/11 to 13\.5 mm; the next longer is 16 mm: nip/);
    expect(words("binding screw", [4, 5])).toMatch(/long enough: buy one of 5\.2 to 5\.7 mm/);
    expect(words("binding screw", [])).toBe("buy a length of 5.2 to 5.7 mm");
    expect(words("binding screw", [5.5])).toBe("");
  });
});

test("the template and the list say the same length", () => {
  const made = madeOf(orderText("juniper-headstall"));
  const screws = made.fittings!.find((f) => f.kind === "binding screw")!;
  const { from, to } = shankOf(screws, rate())!;
  const note = made.pieces.find((p) => p.id === "cheek")!.notes.find((n) => n.includes("barrel"))!;
  const [least, most] = note
    .match(/([\d.]+) to ([\d.]+) mm long/)!
    .slice(1)
    .map(Number);
  expect(from).toBeCloseTo(least!, 0.9);
  expect(Math.abs(to - most!)).toBeLessThan(0.051);
  expect(Math.abs(from - least!)).toBeLessThan(0.051);
});
