import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { compareJobs, nothingDiffers } from "../../src/answers/compare.ts";
import { sayComparison } from "../../src/answers/sayComparison.ts";
import { readJobJson, type Summary, summaryOf } from "../../src/answers/summary.ts";
import { whyChanged } from "../../src/answers/whyChanged.ts";
import { makeJob } from "../../src/job.ts";
import type { Job } from "../../src/model/job.ts";
import { jobJson } from "../../src/output/json.ts";

const JUNIPER = readFileSync("templates/juniper-headstall.yaml", "utf8");
const SHOP = { file: "shop.yaml", text: readFileSync("templates/shop.yaml", "utf8") };
const INCH = 25.4;

function jobOf(text: string, shop = true): Job {
  const result = makeJob(text, "juniper.yaml", shop ? { shop: SHOP } : {});
  if (!result.made) throw new Error(JSON.stringify(result.faults));
  return result.job;
}
const side = (name: string, job: Job) => ({ name, summary: summaryOf(job) });
const juniper = jobOf(JUNIPER);
const OLD = jobJson(juniper);

/** job.json as it was kept, with something in it changed by hand. */
function keptWith(plant: (kept: Summary) => void): Summary {
  const data = JSON.parse(OLD) as Summary;
  plant(data);
  const read = readJobJson(JSON.stringify(data), "job.json");
  if (!read.ok) throw new Error(read.message);
  return read.summary;
}
// biome-ignore lint/suspicious/noExplicitAny: a kept file is changed as a hand would change it
type Loose = any;

describe("two orders", () => {
  test("an order beside itself differs in nothing, and beside its own job.json neither", () => {
    const same = compareJobs(side("a", juniper), side("b", jobOf(JUNIPER)));
    expect(nothingDiffers(same)).toBe(true);
    expect(sayComparison(same).join("\n")).toBe("a → b\n  nothing differs");
    const kept = compareJobs({ name: "job.json", summary: keptWith(() => {}) }, side("b", juniper));
    expect(nothingDiffers(kept)).toBe(true);
  });

  test("half an inch over the poll, on both sides of it: the crown is as much longer, the rest is not told", () => {
    const longer = compareJobs(side("a", juniper), side("b", jobOf(JUNIPER.replace("41 1/2", "42"))));
    expect(longer.given).toEqual([
      {
        what: "measures.over-poll",
        kind: "length",
        before: expect.closeTo(41.5 * INCH, 6),
        after: expect.closeTo(42 * INCH, 6),
        difference: expect.closeTo(INCH / 2, 6),
      },
    ]);
    const crown = longer.pieces.find((p) => p.piece === "crown");
    expect(crown?.changes.find((c) => c.what === "crown cut length")?.difference).toBeCloseTo(INCH / 2, 6);
    expect(longer.pieces.map((p) => p.piece)).not.toContain("cheek");
    expect(longer.hardware).toEqual([]);
    expect(sayComparison(longer).join("\n")).toMatch(
      /measures\.over-poll {2}41 1\/2 in \(1054\.1 mm\) {2}→ {2}42 in \(1066\.8 mm\) {2}\+ 1\/2 in \(12\.7 mm\)/,
    );
  });

  test("a larger buckle is told once as hardware, with its size and what its price changes", () => {
    const text = JUNIPER.replace("inside: 5/8", "inside: 3/4").replace("width: 5/8", "width: 3/4");
    const job = jobOf(text);
    const wider = compareJobs(side("a", juniper), side("b", job));
    expect(wider.hardware.map((h) => [h.kind, h.changes.map((c) => c.what)])).toEqual([["buckle", ["size"]]]);
    const total = wider.price.find((p) => p.what === "price");
    expect(total?.before).toBe(juniper.bench.price?.total);
    expect(total?.after).toBe(job.bench.price?.total);
    expect(total?.difference).toBe(total!.after! - total!.before!);
    // The parts that are told add up to the price that is told.
    const difference = (what: string): number => wider.price.find((p) => p.what === what)?.difference ?? 0;
    const parts = ["materials", "labour", "overhead", "margin", "rounding up", "tax"].map(difference);
    expect(parts.reduce((sum, d) => sum + d, 0)).toBe(difference("price"));
  });

  test("a piece that only one side has is named with its side; units are the first order's", () => {
    const mm =
      "units: mm\narticle: strap\nmeasures: { width: 25, keeper: no }\npieces: { strap: { length: 900 } }\n";
    const without = jobOf(mm, false);
    const with_ = jobOf(
      mm
        .replace("keeper: no", "keeper: yes")
        .replace("units: mm", "units: cm")
        .replace("25,", "2.5,")
        .replace("900", "90"),
      false,
    );
    const comparison = compareJobs(side("plain.yaml", without), side("kept.yaml", with_));
    const said = sayComparison(comparison).join("\n");
    expect(comparison.pieces.filter((p) => p.only).map((p) => [p.piece, p.only])).toEqual([
      ["keeper-fixed", "after"],
    ]);
    expect(said).toContain("Fixed keeper: only in kept.yaml");
    expect(said).toMatch(/units {2}mm {2}→ {2}cm/);
    expect(said).not.toMatch(/\d cm\b/);
  });

  test("where rounding takes up the difference, the price is told to be the same", () => {
    const longer = jobOf(JUNIPER.replace("41 1/2", "42"));
    expect(longer.bench.price?.cost).not.toBe(juniper.bench.price?.cost);
    expect(longer.bench.price?.total).toBe(juniper.bench.price?.total);
    const said = sayComparison(compareJobs(side("a", juniper), side("b", longer))).join("\n");
    expect(said).toMatch(/^ {2}price {2,}[\d.]+ GBP {2,}→ .* the same$/m);
  });

  test("without a price on one side there is one line and no difference", () => {
    const unpriced = jobOf(JUNIPER.replace("shop: shop.yaml", ""));
    const said = sayComparison(compareJobs(side("a.yaml", juniper), side("b.yaml", unpriced))).join("\n");
    expect(said).toContain("b.yaml has no price.");
    expect(said).toMatch(/price {2}[\d.]+ GBP {2}→ {2}–$/m);
  });
});

describe("an earlier job.json, its order made again", () => {
  const again = (kept: Summary) =>
    compareJobs({ name: "job.json", summary: kept }, side("made again", jobOf(JUNIPER, false)), {
      again: true,
      withoutShop: true,
    });

  test("unchanged, nothing differs though the shop isn't at hand, and that is said", () => {
    const said = sayComparison(again(keptWith(() => {}))).join("\n");
    expect(said).toContain("nothing differs");
    expect(said).toContain("price, spares and lengths in stock");
  });

  test("a shop that lays out other spares and lengths is no difference, unless it is asked for", () => {
    const text = SHOP.text
      .replace(/binding-screw: .*/, 'binding-screw: { lengths: "9 in", spares: 100 % }')
      .replace("shop: Fern", "shop: Other ");
    const result = makeJob(JUNIPER, "juniper.yaml", { shop: { file: "shop.yaml", text } });
    const read = readJobJson(result.made ? jobJson(result.job) : "", "job.json");
    if (!read.ok) throw new Error(read.message);
    expect(nothingDiffers(again(read.summary))).toBe(true);
    const asked = compareJobs({ name: "job.json", summary: read.summary }, side("b", juniper));
    expect(asked.hardware.map((h) => [h.kind, h.changes.map((c) => c.what)])).toEqual([
      ["binding screw", ["spares", "length of the shank", "details"]],
    ]);
  });

  test("a default that has changed since is named with both values and its source", () => {
    const NAME = "cheek feather";
    const kept = keptWith((k: Loose) => {
      for (const d of k.derivations) for (const s of d.steps) if (s.name === NAME) s.value = 0.75;
      const cheek = k.derivations.find((d: Loose) => d.piece === "cheek" && d.result === "cheek cut length");
      const planted = cheek.steps.some((s: Loose) => s.name === NAME && s.origin?.kind === "default");
      expect(planted).toBe(true);
      const size = k.pieces.find((p: Loose) => p.id === "cheek").sizes[0];
      expect(size.name).toBe("cheek cut length");
      size.value -= 1.5;
      k.engine = "0.0.9";
    });
    const c = again(kept);
    expect(c.pieces.map((p) => [p.piece, p.changes.map((x) => x.what)])).toEqual([
      ["cheek", ["cheek cut length"]],
    ]);
    expect(c.why).toHaveLength(1);
    expect(c.why[0]!.because).toMatch(/^cheek feather: the default was .*0\.75 mm.*, is now .* mm.* \(.+\)$/);
    expect(c.why[0]!.sizes).toEqual(["cheek: cheek cut length"]);
    expect(sayComparison(c)[0]).toContain("version 0.0.9 → ");
  });

  test("a default that decides nothing is not blamed", () => {
    const kept = keptWith((k: Loose) => {
      const crown = k.derivations.find((d: Loose) => d.result === "crown cut length");
      // It stands in the chain, in a choice that another value won.
      const open = crown.steps.find((st: Loose) => st.name === "cheek buckle open");
      expect(open.origin.kind).toBe("default");
      open.value += 0.1;
      k.pieces.find((p: Loose) => p.id === "crown").sizes[0].value += 1;
    });
    expect(
      again(kept)
        .why.map((w) => w.because)
        .join(),
    ).toMatch(/no step of how it came about differs/);
  });

  test("steps that share a name are compared in their places: none is blamed for another", () => {
    const step = (name: string, value: number, inputs: readonly string[]) => {
      const parts = inputs.map((i) => ({ name: i, value: 0, kind: "length" }));
      return { name, value, kind: "length", parts, inputs };
    };
    const chain = (last: number) => ({
      piece: "cheek",
      result: "whole",
      value: last,
      steps: [step("gap", 1, []), step("gap", 2, []), step("whole", last, ["gap"])],
    });
    expect(whyChanged(chain(9), chain(9), "mm")).toBeUndefined();
    expect(whyChanged(chain(8), chain(9), "mm")).toMatch(/^whole: /);
  });

  test("a formula that has changed is told in words, before and now", () => {
    const kept = keptWith((k: Loose) => {
      const crown = k.derivations.find((d: Loose) => d.result === "crown cut length");
      const last = crown.steps.at(-1);
      last.parts = [...last.parts, " + 5 mm"];
      last.value += 5;
      k.pieces.find((p: Loose) => p.id === "crown").sizes[0].value += 5;
    });
    const [why] = again(kept).why;
    expect(why?.because).toMatch(/^crown cut length: the formula was .+ \+ 5 mm, is now .+/);
  });

  test("an outline that no named size tells of is told by its length, width and area", () => {
    const kept = keptWith((k: Loose) => {
      k.pieces.find((p: Loose) => p.id === "crown").area += 50;
    });
    expect(again(kept).pieces).toMatchObject([{ piece: "crown", changes: [{ what: "area" }] }]);
  });

  test("a job.json without hardware and price says that they weren't compared", () => {
    const kept = keptWith((k: Loose) => {
      k.bench = undefined;
    });
    const said = sayComparison(again(kept)).join("\n");
    expect(said).toContain("hardware and price: the job.json doesn't hold them");
    expect(said).not.toContain("only in");
  });
});

describe("files that are no job.json", () => {
  const message = (text: string): string => {
    const read = readJobJson(text, "old.json");
    return read.ok ? "was read" : read.message;
  };
  test.each([
    ["broken", OLD.slice(0, 500), "broken"],
    ["empty", "", "broken"],
    ["something else", '{"name":"whittaw"}', "no job.json"],
    ["a list", "[]", "no job.json"],
    ["nothing", "null", "no job.json"],
    [
      "an older format",
      OLD.replace('"format": 2', '"format": 0'),
      "has format 0; this version reads formats 1 to 2",
    ],
    ["a newer format", OLD.replace('"format": 2', '"format": 99'), "use the newer version"],
    [
      "a size that is a word",
      OLD.replace(/"area": [\d.]+/, '"area": "wide"'),
      "something wrong in it, at pieces.0.area",
    ],
  ])("%s", (_, text, words) => {
    expect(message(text)).toContain(words);
    expect(message(text)).toContain("To mend: ");
  });

  test("what a kept text holds can't drive a terminal", () => {
    const kept = keptWith((k: Loose) => {
      k.order.forWhom = "x";
      k.pieces[0].name = "Crown\u001b[2J";
      k.pieces[0].id = "other";
    });
    const c = compareJobs({ name: "job.json", summary: kept }, side("b", juniper));
    const said = sayComparison(c).join("\n");
    expect(said).toContain("Crown[U+001B][2J: only in job.json");
    expect(said).not.toContain("\u001b");
  });
});

describe("why a price is another one", () => {
  const dearer = (from: string, to: string): Job => {
    expect(SHOP.text).toContain(from);
    const shop = { ...SHOP, text: SHOP.text.replace(from, to) };
    const result = makeJob(JUNIPER, "juniper.yaml", { shop });
    if (!result.made) throw new Error(JSON.stringify(result.faults));
    return result.job;
  };
  const rate = /per-hour: ([\d.]+)/.exec(SHOP.text)![1]!;
  const raised = `${Number(rate) + 10}.00`;
  const now = dearer(`per-hour: ${rate}`, `per-hour: ${raised}`);

  test("an hour's work is dearer: every line of work, by its rate alone, and no material", () => {
    const c = compareJobs(side("a", juniper), side("b", now));
    const works = now.bench.price!.labour.map((l) => l.what);
    const named = c.whyPrice.map((line) => line.split(":")[0]!);
    expect(works.every((w) => named.includes(w))).toBe(true);
    expect(now.bench.price!.materials.some((l) => named.includes(l.what))).toBe(false);
    const stitch = c.whyPrice.find((line) => line.startsWith("stitch:"));
    expect(stitch).toContain(`the rate was ${rate} an hour, is now ${raised} an hour`);
    expect(stitch).not.toContain("the amount");
    expect(sayComparison(c)).toContain(`  ${stitch}`);
  });

  test("a job.json tells its lines; the same price has no reason", () => {
    const kept = keptWith(() => {});
    expect(compareJobs({ name: "k", summary: kept }, side("b", now)).whyPrice).toEqual(
      compareJobs(side("a", juniper), side("b", now)).whyPrice,
    );
    expect(compareJobs({ name: "k", summary: kept }, side("b", juniper)).whyPrice).toEqual([]);
  });

  test("notes come last", () => {
    const c = compareJobs(side("a", juniper), side("b", juniper), { notes: ["name both"] });
    expect(sayComparison(c).slice(-2)).toEqual(["To know", "  name both"]);
  });
});
