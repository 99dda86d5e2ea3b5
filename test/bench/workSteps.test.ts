import { describe, expect, test } from "vitest";
import { articles } from "../../src/articles/index.ts";
import { type Draft, served, type WorkInput } from "../../src/bench/draft.ts";
import { edgingTool } from "../../src/bench/edgeSteps.ts";
import { stepOrder } from "../../src/bench/stepOrder.ts";
import { threadList } from "../../src/bench/threadList.ts";
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
  units: "in",
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
    const own = steps.filter((s) => s.id !== "prick.lining" && !s.id.startsWith("mould."));
    expect(amounts(own, "prick")).toBe(each(stitchHoles));
    const flat = steps.filter((s) => s.does === "punchHole" && !s.id.startsWith("punch.folded"));
    expect(amounts(flat, "punchHole")).toBe(each((p) => p.holes.length - stitchHoles(p)));
    const slots = steps.filter((s) => s.id !== "slot.lining");
    expect(amounts(slots, "punchSlot")).toBe(each((p) => p.cutouts.length));
    expect(amounts(own, "fold")).toBe(each((p) => p.folds.length));
    expect(amounts(steps, "skive")).toBe(each((p) => p.zones.filter((z) => z.kind === "skive").length));
    // Two layers with rows of their own meet in a seam and in a keeper's ends; a turn-back's rows are on one leg.
    const rows = each((p) => sum(p.seams.filter((s) => s.turnBack !== undefined).map((s) => s.stitches)));
    const met = each((p) =>
      p.id.startsWith("patch-")
        ? 0
        : sum(p.seams.filter((s) => s.turnBack === undefined).map((s) => s.stitches)),
    );
    const said = steps
      .filter((s) => s.does === "stitch")
      .map((s) =>
        /^(\d+) stitche?s?(?: and (\d+) sewn back)?;/
          .exec(s.setting)!
          .slice(1)
          .map((n) => Number(n ?? 0)),
      );
    expect(sum(said.map(([stitches]) => stitches!))).toBe(rows + met / 2);
    // Time is counted for what the list of thread says is sewn.
    const thread = threadList(made, shopWith({}), 1);
    expect(sum(said.map(([stitches]) => stitches!))).toBe(thread.stitches);
    expect(sum(said.map(([, back]) => back!))).toBe(sum(thread.rows.map((r) => r.times * r.backStitches)));
    expect(amounts(steps, "stitch")).toBe(sum(said.flat()));
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
/** Other words in the first step of a kind that has them. */
const saying = (steps: readonly Draft[], kind: WorkKind, words: RegExp, by: string): readonly Draft[] => {
  const found = steps.find((s) => s.does === kind && words.test(s.says))!;
  return steps.map((s) => (s === found || by === "" ? { ...s, says: s.says.replace(words, by) } : s));
};
const is = (kind: WorkKind) => (s: Draft) => s.does === kind;

describe("the rules are seen to be broken", () => {
  test.each<[string, string, (steps: readonly Draft[]) => readonly Draft[]]>([
    ["lancet", "cut first", (s) => late(s, is("cutStrap"))],
    ["lancet", "damp right before its work", (s) => early(s, is("case"))],
    ["lancet", "damp before it is bent: join.fold", (s) => late(s, is("case"))],
    ["lancet", "damp before it is bent: tool", (s) => s.filter((x) => x.id !== "damp.tool.cheek")],
    [
      "wren-flap-purse",
      "damp before it is bent: fold.back",
      (s) => s.filter((x) => x.id !== "damp.fold.back"),
    ],
    [
      "juniper-headstall",
      "damp before it is bent: join.fold the cheek round the bit ring",
      (s) => s.filter((x) => !(x.does === "case" && x.says.includes("bit ring"))),
    ],
    ["wren-flap-purse", "dry before glueing: gusset", (s) => saying(s, "fold", /; let it dry.*/, "")],
    ["juniper-headstall", "skive before holes", (s) => late(s, is("skive"))],
    ["juniper-headstall", "skive before slots: cheek", (s) => early(s, is("punchSlot"))],
    ["wren-flap-purse", "mark before skiving", (s) => late(s, is("mark"))],
    ["wren-flap-purse", "groove before pricking", (s) => late(s, is("groove"))],
    ["wren-flap-purse", "true before edging what is sewn", (s) => late(s, (x) => x.id === "true")],
    ["wren-flap-purse", "true before finishing: gusset", (s) => late(s, (x) => x.id === "true")],
    ["wren-flap-purse", "stitch before truing: gusset", (s) => early(s, (x) => x.id === "true")],
    ["wren-flap-purse", "true the sewn edges: gusset", (s) => s.filter((x) => x.id !== "true")],
    ["wren-flap-purse", "fold before moulding: gusset", (s) => early(s, (x) => x.id === "mould.gusset")],
    ["wren-flap-purse", "mould before stitching: gusset", (s) => late(s, (x) => x.id === "mould.gusset")],
    ["wren-flap-purse", "mould before glueing: gusset", (s) => late(s, (x) => x.id === "mould.gusset")],
    ["wren-flap-purse", "mould the gusset", (s) => s.filter((x) => x.id !== "mould.gusset")],
    ["wren-flap-purse", "fold before glueing: back", (s) => late(s, (x) => x.id === "fold.back")],
    ["child-turned-purse", "trim the lining once it is in", (s) => early(s, (x) => x.id === "trim.lining")],
    ["child-turned-purse", "lining's holes before its seams", (s) => late(s, (x) => x.id === "prick.lining")],
    [
      "child-turned-purse",
      "lining's holes before its seams",
      (s) => s.filter((x) => x.id !== "prick.lining"),
    ],
    [
      "child-turned-purse",
      "edge with the lining: front",
      (s) => early(s, (x) => x.id.startsWith("edge.sewn")),
    ],
    [
      "wren-flap-purse",
      "ring of the shoulder strap is taken 3 times, not 2",
      (s) => saying(s, "fold", /in the fold: 1 ring/, "in the fold: 2 rings"),
    ],
    [
      "wren-flap-purse",
      "hangs on what took it: ring of the shoulder strap",
      (s) => saying(s, "fold", / that hang on the .*;/, ";"),
    ],
    [
      "wren-flap-purse",
      "hangs on what took it: ring of the shoulder strap",
      (s) => early(s, (x) => x.says.includes("that hang on")),
    ],
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
    ["rowan-tool-tote", "edge free edges before stitching", (s) => late(s, (x) => /^edge\.No/.test(x.id))],
    ["travel-bag", "trim before truing", (s) => late(s, (x) => x.id === "trim")],
    ["travel-bag", "stitch before edging what is sewn", (s) => early(s, (x) => x.id.startsWith("edge.sewn"))],
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
    // Two edges lie along the seams: they are trued and edged as one each, the rest of each piece by itself.
    const [sewn] = shell.filter((s) => s.id.startsWith("edge.sewn"));
    const [trued] = shell.filter((s) => s.id === "true");
    // A dipped top: the chords that lie high up and between the two sides.
    const top = (id: string): number => {
      const chords = ring(made.pieces.find((p) => p.id === id)!.outline);
      const high = Math.max(...chords.map(([a]) => a[1]));
      const side = Math.max(...chords.filter(([a]) => a[1] > high - 1).map(([a]) => a[0]));
      const isTop = ([x, y]: readonly [number, number]): boolean =>
        y > high - 60 && Math.abs(x) < side + 1e-6;
      const slopes = chords.filter(
        ([a, b]) => isTop(a) && isTop(b) && Math.abs(a[0] - b[0]) > Math.abs(a[1] - b[1]),
      );
      return sum(slopes.map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1])));
    };
    const seams = of("front") - top("front") + of("back") - top("back");
    expect(trued!.amount).toBeCloseTo(sewn!.amount, 9);
    expect(trued!.amount * 1000).toBeCloseTo(seams, 0);
    const tops = top("front") + top("back");
    const free = steps.filter((s) => s.does === "edge" && s !== sewn);
    expect(amounts(free, "edge")).toBeCloseTo((tops + 2 * width + 2 * of("handle")) / 1000, 2);
  });

  test("edges that lie inside a turned bag are neither edged nor finished", () => {
    const { made, steps } = job("child-turned-purse");
    const of = (id: string) => around(made.pieces.find((p) => p.id === id)!.outline);
    const front = made.pieces.find((p) => p.id === "front")!;
    const seam = front.seams.find((s) => s.joins !== undefined)!;
    const along = seam.stitches * seam.pitch;
    const shell = steps.filter((s) => s.id === "finish");
    expect(steps.map((s) => s.id)).not.toContain("true");
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
    const trimmed = steps.filter((s) => s.id !== "true");
    expect(amounts(trimmed, "trim")).toBeCloseTo((around(outline) - ends) / 1000, 3);
  });
});

describe("what the templates say is on the sheet", () => {
  const saysOf = (name: string): string =>
    job(name)
      .steps.map((s) => s.says)
      .join("\n");

  test.each(jobs)("$name: bends, lines to groove, wet corners and linings", ({ made, steps }) => {
    const words = steps.map((s) => s.says).join("\n");
    for (const p of made.pieces) {
      const has = (note: string): boolean => p.notes.some((n) => n.includes(note));
      const on = (kind: WorkKind, said: RegExp) =>
        steps.filter((s) => s.does === kind && s.pieces.includes(p.id) && said.test(s.says));
      for (const note of p.notes) {
        const radius = /to an inner radius of ([\d.]+) mm/.exec(note)?.[1];
        if (radius !== undefined)
          expect(on("fold", new RegExp(`radius of .*\\b${radius} mm`)), note).toHaveLength(1);
      }
      expect(on("groove", /flesh side/), p.id).toHaveLength(has("groove the flesh side first") ? 1 : 0);
      if (has("wet the corners and mould them")) expect(on("fold", /^Mould the corners/)).toHaveLength(1);
      if (has("make its stitch holes through")) expect(on("prick", /^Make the stitch holes/)).toHaveLength(1);
      if (has("bent as in use")) expect(on("glue", /bent as in use/)).toHaveLength(1);
      if (p.seams.some((s) => s.groove)) expect(on("groove", /stitch lines/).length).toBeGreaterThan(0);
    }
    expect(words).not.toMatch(/\b\d+ places?[ ,)](?!of)/);
    for (const { id, name } of made.pieces)
      if (id.includes("-") && id !== name.toLowerCase()) expect(words).not.toMatch(new RegExp(`\\b${id}\\b`));
    for (const s of steps)
      if (/notches/.test(s.says))
        expect([s.says, s.tool]).toEqual([expect.stringContaining("flesh side"), "scratch awl"]);
  });

  test("bends sharper than the leather is thick are grooved first; a hem is folded, dried, then glued", () => {
    const text = orderText("sagging-pouch")
      .replace("body: { thickness: 2 mm }", "body: { thickness: 5-6 oz }")
      .replace("flap-edge: round", "flap-edge: round, front-fold: 2.3 mm, back-fold: 2.3 mm")
      .replace("top-width: 30 }", "top-width: 30 }\n  pocket: { top: hemmed, width: 84, height: 80 }");
    const made = madeOf(text);
    expect(made.pieces.flatMap((p) => p.notes).join()).toContain("groove the flesh side first");
    const { steps } = stepOrder(draftSteps(inputOf(made)));
    expect(brokenRules(steps, made)).toEqual([]);
    const at = (says: string): number => steps.findIndex((s) => s.says.startsWith(says));
    expect(at("Groove the flesh side of the back with flap")).toBeGreaterThan(at("Mark"));
    expect(steps[at("Groove the flesh side")]!.says).toMatch(/flap's back fold; flap's front fold$/);
    expect(at("Damp the back with flap along its folds")).toBeGreaterThan(at("Groove the flesh side"));
    const hem = [
      "Damp the pocket",
      "Fold the pocket: fold of the hem",
      "Glue down the hem",
      "Stitch pocket to back",
    ].map(at);
    expect(hem[0]).toBeGreaterThan(0);
    expect(hem).toEqual([...hem].sort((a, b) => a - b));
  });

  test("lines in awl slits are grooved, as their legend says; not those that lie inside a turned bag", () => {
    expect(saysOf("wren-flap-purse")).toContain(
      "Groove the stitch lines of the front, back with flap and gusset",
    );
    expect(saysOf("child-turned-purse")).not.toMatch(/Groove the stitch lines of the .*front/);
    expect(saysOf("travel-bag")).not.toContain("Groove the stitch lines");
  });

  test("edges of a lining that no seam holds are glued only; dyed leather is buffed when dry", () => {
    expect(saysOf("child-turned-purse")).toContain("where no seam holds them they are glued only");
    expect(saysOf("heron-bag-strap")).toContain("let it dry, then buff it");
  });

  test("lengths are said in the order's units, with millimetres beside inches", () => {
    const { made } = job("juniper-headstall");
    const cut = (units: WorkInput["units"]) =>
      workSteps(inputOf(made, { units })).find((s) => s.does === "cutStrap")!;
    expect(cut("in").says).toContain("5/8 in (15.9 mm) wide, of strap leather, 9 oz (3.57 mm)");
    expect(cut("mm").says).toContain("15.9 mm wide, of strap leather, 3.57 mm");
    expect([cut("in").setting, cut("mm").setting]).toEqual(["5/8 in (15.9 mm)", "15.9 mm"]);
  });

  test("an order of five takes five times the rings, and each is said to hang once", () => {
    const { made } = job("wren-flap-purse");
    const folds = workSteps(inputOf(made, { quantity: 5 })).filter(
      (s) => /round the ring/.test(s.says) && s.does === "fold",
    );
    expect(folds.map((s) => /in the folds: (.*); let/.exec(s.says)![1])).toEqual([
      "5 rings",
      "5 rings",
      "the rings that hang on the buckle strap and billet strap",
    ]);
  });

  test("the bit hangs on the crown first, where the off cheek is in one with it", () => {
    expect(saysOf("bramble-headstall")).toMatch(
      /in the fold: 1 bit;[\s\S]*the bit that hangs on the crown and off cheek;/,
    );
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
    // Two cheeks with two rows of 7 stitches, two running keepers with 2; each row is sewn back 2 at both ends.
    expect(sum(minutes("stitch") as number[])).toBeCloseTo(0.5 * (2 * 2 * (7 + 4) + 2 * (2 + 4)), 9);
    expect(minutes("setUp")).toEqual([12]);
    expect(minutes("punchHole")).toEqual([0, 0]);
    expect(minutes("fold").every((m) => m === undefined)).toBe(true);
    expect(stepsMinutes(steps)).toBeCloseTo(12 + 28, 9);
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
