import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { type Draft, served, type WorkInput } from "../../src/bench/draft.ts";
import { edgingTool } from "../../src/bench/edgeSteps.ts";
import { stepOrder } from "../../src/bench/stepOrder.ts";
import { draftSteps, stepsMinutes, workOrder, workSteps } from "../../src/bench/workSteps.ts";
import { flatten } from "../../src/geometry/flatten.ts";
import type { Path } from "../../src/geometry/path.ts";
import type { Made } from "../../src/model/article.ts";
import type { Piece } from "../../src/model/piece.ts";
import { WORK_KINDS, type WorkKind } from "../../src/model/work.ts";
import { readOrder } from "../../src/order/read.ts";
import { anyOrder } from "../support/anyOrder.ts";
import { madeOf, orderText } from "../support/madeOf.ts";
import { orderFiles } from "../support/orders.ts";
import { randomFrom } from "../support/random.ts";
import { shopWith } from "../support/shops.ts";
import { brokenRules } from "../support/workRules.ts";

const FINISH: WorkInput["finish"] = { byDie: "", dye: "brown", edges: "burnished", edged: true, thread: "" };
const inputOf = (made: Made, over: Partial<WorkInput> = {}): WorkInput => ({
  made,
  shop: shopWith({}),
  finish: FINISH,
  quantity: 1,
  ...over,
});
const jobs = orderFiles.map(({ name, text }) => {
  const made = madeOf(text);
  const input = inputOf(made);
  return { name, made, input, steps: stepOrder(draftSteps(input)).steps };
});
const job = (name: string) => jobs.find((j) => j.name === `${name}.yaml`)!;
const amounts = (steps: readonly Pick<Draft, "does" | "amount">[], ...kinds: readonly WorkKind[]): number =>
  steps.filter((s) => kinds.includes(s.does)).reduce((sum, s) => sum + s.amount, 0);
const sum = (list: readonly number[]): number => list.reduce((a, b) => a + b, 0);

describe.each(jobs)("$name", ({ made, input, steps }) => {
  test("every part of every piece and every fitting is served by exactly one step", () => {
    const wanted = [
      ...made.pieces.flatMap((p) => [
        ...served("outline", p.id, "outline"),
        ...served("hole", p.id, ...p.holes.map((h) => h.id)),
        ...served("slot", p.id, ...p.cutouts.map((c) => c.id)),
        ...served("seam", p.id, ...p.seams.map((s) => s.id)),
        ...served("fold", p.id, ...p.folds.map((f) => f.id)),
        ...served("turn-back", p.id, ...p.turnBacks.map((t) => t.id)),
        ...served("zone", p.id, ...p.zones.map((z) => z.id)),
        ...served("mark", p.id, ...p.marks.map((m) => m.id)),
      ]),
      ...(made.fittings ?? []).flatMap((f) => served("fitting", "", f.name)),
    ];
    expect(steps.flatMap((s) => s.serves).sort()).toEqual([...wanted].sort());
  });

  test("each step of putting together is one step of the work", () => {
    const names = steps.map((s) => s.id).filter((id) => id.startsWith("join."));
    for (const a of made.assembly ?? []) expect(names.filter((n) => n === `join.${a.name}`)).toHaveLength(1);
    expect(new Set(steps.map((s) => s.id)).size).toBe(steps.length);
  });

  test("the trade's rules of order hold", () => expect(brokenRules(steps, made)).toEqual([]));

  test("no step waits for another in a circle, and each comes after what it names", () => {
    const order = workOrder(input);
    expect(order.findings).toEqual([]);
    const at = new Map(order.steps.map((s, i) => [s.id, i]));
    order.steps.forEach((s, i) => {
      for (const id of s.after) expect(at.get(id), `${s.says} after ${id}`).toBeLessThan(i);
    });
    expect(order.steps[0]!.does).toBe("setUp");
    expect(order.steps.at(-1)!.does).toBe("check");
  });

  test("every amount and piece is real, and is said in words", () => {
    for (const s of steps) {
      expect(s.amount, s.says).toBeGreaterThan(0);
      expect(Number.isFinite(s.amount)).toBe(true);
      expect(s.says).not.toMatch(/undefined|NaN|\bzone\.|\.\d+\b.*undefined/);
      expect(`${s.says} ${s.setting}`).not.toContain("  ");
      for (const id of s.pieces) expect(made.pieces.map((p) => p.id)).toContain(id);
    }
  });

  test("holes, slots, folds, skives and stitches agree with the pieces", () => {
    const each = (of: (p: Piece) => number): number => sum(made.pieces.map((p) => p.count * of(p)));
    const stitchHoles = (p: Piece) => p.holes.filter((h) => h.use === "stitch").length;
    expect(amounts(steps, "prick")).toBe(each(stitchHoles));
    const flat = steps.filter((s) => s.does === "punchHole" && !s.id.startsWith("punch.folded"));
    expect(amounts(flat, "punchHole")).toBe(each((p) => p.holes.length - stitchHoles(p)));
    const slots = steps.filter((s) => s.id !== "slot.lining");
    expect(amounts(slots, "punchSlot")).toBe(each((p) => p.cutouts.length));
    expect(amounts(steps, "fold")).toBe(each((p) => p.folds.length));
    expect(amounts(steps, "skive")).toBe(each((p) => p.zones.filter((z) => z.kind === "skive").length));
    // Two layers with rows of their own meet in a seam and in a keeper's ends; a turn-back's rows are on one leg.
    const own = each((p) => sum(p.seams.filter((s) => s.turnBack !== undefined).map((s) => s.stitches)));
    const met = each((p) =>
      p.id.startsWith("patch-")
        ? 0
        : sum(p.seams.filter((s) => s.turnBack === undefined).map((s) => s.stitches)),
    );
    expect(amounts(steps, "stitch")).toBe(own + met / 2);
  });

  test("fixings are as many as are bought, but for what hangs in a fold", () => {
    const hung = ["buckle", "ring", "bit"];
    const bought = (made.fittings ?? []).filter((f) => !hung.includes(f.kind));
    const hands = steps.filter((s) => s.does === "fix" && s.tool !== "hands");
    expect(amounts(hands, "fix")).toBe(sum(bought.map((f) => f.count)));
  });

  test("an order of five is five times the work, but for setting up and checking", () => {
    const five = workSteps({ ...input, quantity: 5 });
    for (const kind of WORK_KINDS.filter((k) => k !== "setUp" && k !== "check"))
      expect(amounts(five, kind), kind).toBeCloseTo(5 * amounts(steps, kind), 6);
    expect(amounts(five, "setUp", "check")).toBe(2);
  });
});

/** Planted disorder: the first step that passes goes to the front, or the last one to the end. */
const early = (steps: readonly Draft[], test: (s: Draft) => boolean): readonly Draft[] => {
  const found = steps.find(test)!;
  return [found, ...steps.filter((s) => s !== found)];
};
const late = (steps: readonly Draft[], test: (s: Draft) => boolean): readonly Draft[] => {
  const found = steps.filter(test).at(-1)!;
  return [...steps.filter((s) => s !== found), found];
};
const is = (kind: WorkKind) => (s: Draft) => s.does === kind;

describe("the rules are seen to be broken", () => {
  test.each<[string, string, (steps: readonly Draft[]) => readonly Draft[]]>([
    ["lancet", "cut first", (s) => late(s, is("cutStrap"))],
    ["lancet", "case before tooling", (s) => late(s, (x) => x.id === "case")],
    ["lancet", "tool before folding", (s) => late(s, is("tool"))],
    ["lancet", "tool before dyeing", (s) => early(s, is("dye"))],
    ["juniper-headstall", "holes flat before folding", (s) => late(s, is("prick"))],
    ["wren-flap-purse", "slots before folding", (s) => late(s, is("punchSlot"))],
    [
      "juniper-headstall",
      "skive before folding: cheek",
      (s) => early(s, (x) => x.id.startsWith("join.fold the cheek")),
    ],
    ["heron-bag-strap", "dye before finishing", (s) => late(s, is("dye"))],
    ["heron-bag-strap", "dye before hardware", (s) => late(s, is("dye"))],
    ["rowan-tool-tote", "edge before stitching", (s) => late(s, is("edge"))],
    ["travel-bag", "trim before edging", (s) => late(s, is("trim"))],
    [
      "travel-bag",
      "edge trimmed edges after stitching",
      (s) => early(s, (x) => x.id.startsWith("edge.trimmed")),
    ],
    ["heron-bag-strap", "edge before finishing", (s) => late(s, is("edge"))],
    ["heron-bag-strap", "fold before its stitching", (s) => late(s, is("fold"))],
    ["lancet", "punch the back leg once folded", (s) => early(s, (x) => x.id.startsWith("punch.folded"))],
    ["heron-bag-strap", "keeper caught before", (s) => late(s, is("fold"))],
    ["heron-bag-strap", "running keeper on before", (s) => late(s, (x) => x.says.startsWith("Slide"))],
    ["rowan-tool-tote", "glue before sewing", (s) => late(s, (x) => x.id.startsWith("glue."))],
    [
      "rowan-tool-tote",
      "back to gusset after front to gusset",
      (s) => early(s, (x) => x.id === "join.back to gusset"),
    ],
    ["rowan-tool-tote", "shuts it in", (s) => late(s, (x) => x.id.startsWith("join.handle"))],
  ])("%s: %s", (name, rule, plant) => {
    const { made, steps } = job(name);
    expect(brokenRules(plant(steps), made).join("; ")).toContain(rule);
  });
});

const CHORD_MM = 0.001;
const ring = (path: Path) => {
  const points = flatten(path, CHORD_MM);
  return points.map((p, i) => [p, points[(i + 1) % points.length]!] as const);
};
const around = (path: Path): number => sum(ring(path).map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1])));
const area = (path: Path): number => Math.abs(sum(ring(path).map(([a, b]) => a[0] * b[1] - b[0] * a[1]))) / 2;

describe("lengths and areas, by chords of the outlines", () => {
  test("metres cut by knife, square decimetres dyed and tooled", () => {
    const { made, steps } = job("lancet");
    const all = (ids: readonly string[], of: (p: Piece) => number): number =>
      sum(made.pieces.filter((p) => ids.includes(p.id)).map((p) => p.count * of(p)));
    expect(amounts(steps, "cutByKnife")).toBeCloseTo(
      all(["cheek", "ear-piece"], (p) => around(p.outline)) / 1000,
      4,
    );
    expect(amounts(steps, "dye")).toBeCloseTo(
      all(
        made.pieces.map((p) => p.id),
        (p) => area(p.outline),
      ) / 1e4,
      4,
    );
    const zones = (p: Piece) => sum(p.zones.filter((z) => z.kind === "tooling").map((z) => area(z.outline)));
    expect(amounts(steps, "tool")).toBeCloseTo(all(["cheek"], zones) / 1e4, 4);
  });

  test("a strap's edge is its outline less the feathered end's width; a keeper's its two long edges", () => {
    const { made, steps } = job("heron-bag-strap");
    const [strap, fixed, running] = ["strap", "keeper-fixed", "keeper-running"].map(
      (id) => made.pieces.find((p) => p.id === id)!,
    ) as [Piece, Piece, Piece];
    const edged = (id: string) =>
      amounts(
        steps.filter((s) => s.pieces.includes(id)),
        "edge",
      );
    expect(strap.sizes.map((q) => q.value)).toContain(25.4);
    expect(edged("strap")).toBeCloseTo((around(strap.outline) - 25.4) / 1000, 4);
    expect(edged("keeper-fixed")).toBeCloseTo(
      (2 * (fixed.sizes[0]!.value + running.sizes[0]!.value)) / 1000,
      6,
    );
  });

  test("edges that are sewn flush are finished once: front, back and the gusset's two ends", () => {
    const { made, steps } = job("rowan-tool-tote");
    const of = (id: string) => around(made.pieces.find((p) => p.id === id)!.outline);
    const gusset = made.pieces.find((p) => p.id === "gusset")!;
    const ys = flatten(gusset.outline, CHORD_MM).map((p) => p[1]);
    const width = Math.max(...ys) - Math.min(...ys);
    const shell = steps.filter((s) => s.pieces.includes("gusset"));
    expect(amounts(shell, "finish")).toBeCloseTo((of("front") + of("back") + 2 * width) / 1000, 2);
    expect(amounts(shell, "edge")).toBeCloseTo(of("gusset") / 1000, 4);
  });

  test("edges that lie inside a turned bag are neither edged nor finished", () => {
    const { made, steps } = job("child-turned-purse");
    const of = (id: string) => around(made.pieces.find((p) => p.id === id)!.outline);
    const front = made.pieces.find((p) => p.id === "front")!;
    const seam = front.seams.find((s) => s.joins !== undefined)!;
    const along = seam.stitches * seam.pitch;
    const shell = steps.filter((s) => s.id === "finish");
    const whole = of("front") + of("back") + of("gusset");
    // Four edges lie along a seam; the allowance goes round the corners outside it and on to the edges' ends.
    expect(shell[0]!.amount * 1000).toBeLessThan(whole - 4 * along);
    expect(shell[0]!.amount * 1000).toBeGreaterThan(whole - 4 * (along + (Math.PI + 4) * seam.inset));
  });

  test("flanges are trimmed along both their long edges: the outline less its two ends", () => {
    const { made, steps } = job("travel-bag");
    const { outline } = made.pieces.find((p) => p.id === "gusset")!;
    const points = flatten(outline, CHORD_MM);
    const xs = points.map((p) => p[0]);
    const width = (x: number): number => {
      const ys = points.filter((p) => Math.abs(p[0] - x) < 1).map((p) => p[1]);
      return Math.max(...ys) - Math.min(...ys);
    };
    const ends = width(Math.min(...xs)) + width(Math.max(...xs));
    expect(ends).toBeGreaterThan(40);
    expect(amounts(steps, "trim")).toBeCloseTo((around(outline) - ends) / 1000, 3);
  });
});

describe("what the order says", () => {
  const { made } = job("juniper-headstall");
  const kinds = (over: Partial<WorkInput["finish"]>): readonly WorkKind[] =>
    workSteps(inputOf(made, { finish: { ...FINISH, ...over } })).map((s) => s.does);

  test("raw edges have no finish, edges that aren't edged no edging, undyed leather no dye", () => {
    expect(kinds({})).toEqual(expect.arrayContaining(["finish", "edge", "dye"]));
    expect(kinds({ edges: "raw" })).not.toContain("finish");
    expect(kinds({ edged: false })).not.toContain("edge");
    expect(kinds({ dye: " " })).not.toContain("dye");
    const painted = workSteps(inputOf(made, { finish: { ...FINISH, edges: "painted" } }));
    expect(painted.find((s) => s.does === "finish")!.says).toMatch(/^Paint/);
  });

  test("pieces of the die are cut with it and no other way", () => {
    const steps = workSteps(inputOf(made, { finish: { ...FINISH, byDie: "cheek, keeper" }, quantity: 3 }));
    const die = steps.filter((s) => s.does === "cutByDie");
    expect(die.flatMap((s) => s.pieces)).toEqual(["cheek", "keeper-fixed", "keeper-running"]);
    expect(amounts(steps, "cutByDie")).toBe(18);
    expect(amounts(steps, "cutStrap")).toBe(3);
  });

  test("minutes are the shop's for one times the amount; none where it doesn't say", () => {
    const shop = shopWith({}, { minutes: { stitch: 0.5, punchHole: 0, setUp: 12 } });
    const steps = workSteps(inputOf(made, { shop }));
    const minutes = (kind: WorkKind) => steps.filter((s) => s.does === kind).map((s) => s.minutes);
    // Two cheeks with two rows of 7 stitches, two running keepers with 2.
    expect(sum(minutes("stitch") as number[])).toBeCloseTo(0.5 * (2 * 2 * 7 + 2 * 2), 9);
    expect(minutes("setUp")).toEqual([12]);
    expect(minutes("punchHole")).toEqual([0, 0]);
    expect(minutes("fold").every((m) => m === undefined)).toBe(true);
    expect(stepsMinutes(steps)).toBeCloseTo(12 + 16, 9);
    expect(stepsMinutes(workSteps(inputOf(made)))).toBe(0);
  });
});

test("thicker leather never has a smaller edging tool, and the thinnest none", () => {
  const sizes = Array.from({ length: 70 }, (_, i) => Number(edgingTool(i / 10)?.slice(4) ?? 0));
  expect(sizes).toEqual([...sizes].sort((a, b) => a - b));
  expect([sizes[0], sizes.at(-1)]).toEqual([0, 4]);
});

test("an article without pieces is set up and checked", () => {
  const empty: Made = { ...job("browband").made, pieces: [], joins: [], fittings: [], assembly: [] };
  expect(workSteps(inputOf(empty)).map((s) => s.does)).toEqual(["setUp", "check"]);
});

test("a circle in the order of putting together is an error and not endless", () => {
  const { made } = job("rowan-tool-tote");
  const assembly = made.assembly!.map((s) =>
    s.name === "front to gusset" ? { ...s, after: [...s.after, "back to gusset"] } : s,
  );
  const { steps, findings } = workOrder(inputOf({ ...made, assembly }));
  expect(findings).toHaveLength(1);
  expect(findings[0]!.message).toContain("Stitch back to gusset");
  expect(steps).toHaveLength(job("rowan-tool-tote").steps.length);
});

describe("any order in range", () => {
  test.each(articles.map((a) => [a.slug, a] as const))("%s: in order, by the rules", (slug, article) => {
    const random = randomFrom(slug.length);
    let made = 0;
    for (let i = 0; i < 12; i++) {
      const { order } = readOrder(anyOrder(article, random).text, "any.yaml", articles);
      if (!order) continue;
      made += 1;
      const input = inputOf(order.article.make(order.values));
      const { steps, findings } = stepOrder(draftSteps(input));
      expect(findings).toEqual([]);
      expect(brokenRules(steps, input.made)).toEqual([]);
      expect(new Set(steps.map((s) => s.id)).size).toBe(steps.length);
      const keys = steps.flatMap((s) => s.serves);
      expect(new Set(keys).size).toBe(keys.length);
      for (const s of steps) expect(Number.isFinite(s.amount) && s.amount >= 0, s.says).toBe(true);
    }
    expect(made).toBeGreaterThan(3);
  });
});

test("the same input gives the same steps", () => {
  const { input } = job("wren-flap-purse");
  expect(JSON.stringify(workSteps(input))).toBe(
    JSON.stringify(workSteps(inputOf(madeOf(orderText("wren-flap-purse"))))),
  );
});
