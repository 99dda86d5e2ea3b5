import axe from "axe-core";
import type { CDPSession, Locator, Page } from "playwright-core";
import { describe, expect, test } from "vitest";
import { makeJob } from "../../src/job.ts";
import { openOrderFile, orderText } from "./orders.ts";
import { bench, type Opened } from "./support.ts";

// The leather on the page, in a browser: what is seen and touched against the job's own figures.

const { open } = bench();

/** Two readings of a pixel place are the same within this, CSS px: the screen's own rounding. */
const SAME_PX = 0.75;

const jobOf = (name: string) => {
  const result = makeJob(orderText(name), `${name}.yaml`);
  if (!result.made) throw new Error(`${name} is not made`);
  return result.job;
};
const headstall = jobOf("juniper-headstall");
const pieceOf = (id: string) => headstall.made.pieces.find((p) => p.id === id)!;

async function opened(name = "juniper-headstall", options: Parameters<typeof open>[0] = {}): Promise<Opened> {
  const all = await open(options);
  await openOrderFile(all.page, `${name}.yaml`, orderText(name));
  await all.page.locator(".drawing .piece").first().waitFor();
  return all;
}

type Spot = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Where an element is painted, however thick its line: the box of its shape. */
const spotOf = (locator: Locator): Promise<Spot> =>
  locator.evaluate((node) => {
    const shape = node as SVGGraphicsElement;
    const { x, y, width, height } = shape.getBBox();
    const matrix = shape.getScreenCTM()!;
    const corners = [new DOMPoint(x, y), new DOMPoint(x + width, y + height)].map((p) =>
      p.matrixTransform(matrix),
    );
    const [xs, ys] = [corners.map((p) => p.x), corners.map((p) => p.y)];
    const [left, top] = [Math.min(...xs), Math.min(...ys)];
    return { x: left, y: top, width: Math.max(...xs) - left, height: Math.max(...ys) - top };
  });

const edgeOf = (page: Page, piece: string): Locator => page.locator(`.piece[data-piece="${piece}"] > .hide`);
const middle = ({ x, y, width, height }: Spot): readonly [number, number] => [x + width / 2, y + height / 2];

/** A frame has been drawn since. */
const drawn = (page: Page): Promise<void> =>
  page.evaluate(
    () => new Promise<void>((done) => requestAnimationFrame(() => requestAnimationFrame(() => done()))),
  );

const press = (page: Page, name: string): Promise<void> =>
  page.locator(".leather").getByRole("button", { name, exact: true }).click();
const look = (page: Page, way: string): Promise<void> =>
  page.getByRole("radio", { name: way, exact: true }).check();
const showAlone = (page: Page, name: string) =>
  page.getByRole("combobox", { name: "Show", exact: true }).selectOption({ label: name });

/** Opens a piece's list of parts, if it is not, and gives back the button of a part. */
async function partButton(page: Page, piece: string, says: RegExp | string): Promise<Locator> {
  const list = page
    .locator(".parts")
    .filter({ has: page.locator("summary", { hasText: `Parts of ${piece} (` }) });
  if (!(await list.evaluate((d) => (d as HTMLDetailsElement).open))) await list.locator("summary").click();
  return list.getByRole("button", { name: says }).first();
}

describe("looking nearer", () => {
  test("keys, buttons and the wheel change the size about its place; 0 shows all again", async () => {
    const { page } = await opened();
    const edge = edgeOf(page, "crown");
    const first = await spotOf(edge);
    await page.locator(".drawing").focus();
    await page.keyboard.press("+");
    await page.keyboard.press("+");
    await drawn(page);
    expect((await spotOf(edge)).width / first.width).toBeCloseTo(1.25 ** 2, 2);
    await page.keyboard.press("-");
    await press(page, "Smaller");
    await drawn(page);
    expect((await spotOf(edge)).width).toBeCloseTo(first.width, 0);
    const [x, y] = [first.x + 5, first.y + first.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.wheel(0, -300);
    await drawn(page);
    const near = await spotOf(edge);
    expect(near.width).toBeGreaterThan(first.width * 1.3);
    expect((x - near.x) / near.width).toBeCloseTo((x - first.x) / first.width, 2);
    await page.locator(".drawing").focus();
    await page.keyboard.press("0");
    await drawn(page);
    expect((await spotOf(edge)).x).toBeCloseTo(first.x, 0);
  });

  test("the leather follows the hand, and the arrow keys", async () => {
    const { page } = await opened();
    const edge = edgeOf(page, "cheek");
    const before = await spotOf(edge);
    const box = (await page.locator(".drawing").boundingBox())!;
    await page.mouse.move(box.x + 200, box.y + 100);
    await page.mouse.down();
    await page.mouse.move(box.x + 240, box.y + 130, { steps: 4 });
    await page.mouse.up();
    await drawn(page);
    const after = await spotOf(edge);
    expect(Math.abs(after.x - before.x - 40)).toBeLessThan(SAME_PX);
    expect(Math.abs(after.y - before.y - 30)).toBeLessThan(SAME_PX);
    await page.locator(".drawing").focus();
    await page.keyboard.press("ArrowRight");
    await drawn(page);
    expect((await spotOf(edge)).x).toBeLessThan(after.x - 10);
  });

  test("two fingers pull it larger", async () => {
    const { page, context } = await opened("juniper-headstall", { hasTouch: true });
    const before = await spotOf(edgeOf(page, "crown"));
    const box = (await page.locator(".drawing").boundingBox())!;
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    const fingers: CDPSession = await context.newCDPSession(page);
    const touch = (type: "touchStart" | "touchMove" | "touchEnd", apart: number) =>
      fingers.send("Input.dispatchTouchEvent", {
        type,
        touchPoints: type === "touchEnd" ? [] : [-apart, apart].map((dx, id) => ({ x: x + dx, y, id })),
      });
    await touch("touchStart", 50);
    for (const apart of [60, 80, 100]) await touch("touchMove", apart);
    await touch("touchEnd", 100);
    await drawn(page);
    expect((await spotOf(edgeOf(page, "crown"))).width / before.width).toBeCloseTo(2, 1);
  });
});

describe("the leather itself", () => {
  test("pieces have the job's proportions, all at one scale", async () => {
    const { page } = await opened();
    const cheek = await spotOf(edgeOf(page, "cheek"));
    const crown = await spotOf(edgeOf(page, "crown"));
    const lengths = new Map(headstall.made.pieces.map((p) => [p.id, p.sizes[0]!.value]));
    expect(cheek.width / crown.width).toBeCloseTo(lengths.get("cheek")! / lengths.get("crown")!, 3);
  });

  test("turned over, a piece is mirrored where it lies, and it is said", async () => {
    const { page } = await opened();
    await (await partButton(page, "Cheek", /^hole|hole/)).click();
    await drawn(page);
    const ring = page.locator(".drawing .ring");
    const [edge, at] = [await spotOf(edgeOf(page, "cheek")), middle(await spotOf(ring))];
    await press(page, "Turn over");
    await drawn(page);
    const [turnedEdge, turnedAt] = [await spotOf(edgeOf(page, "cheek")), middle(await spotOf(ring))];
    expect(Math.abs(turnedAt[0] - turnedEdge.x - (edge.x + edge.width - at[0]))).toBeLessThan(SAME_PX);
    expect(Math.abs(turnedAt[0] - at[0])).toBeGreaterThan(20);
    expect(Math.abs(turnedAt[1] - turnedEdge.y - (at[1] - edge.y))).toBeLessThan(SAME_PX);
    expect(await page.locator(".leather-side").textContent()).toMatch(/flesh side.*mirrored/i);
    expect(await page.getByRole("img", { name: /flesh side, mirrored/ }).count()).toBe(1);
  });

  test("a touch on a hole picks it: it is named, ringed, and pressed in its list", async () => {
    const { page } = await opened();
    const button = await partButton(page, "Crown", /hole/);
    const says = (await button.textContent())!;
    await button.click();
    await drawn(page);
    const before = await spotOf(edgeOf(page, "crown"));
    const [x, y] = middle(await spotOf(page.locator(".drawing .ring")));
    await press(page, "Let go");
    await drawn(page);
    expect(await page.locator(".drawing .ring").count()).toBe(0);
    await page.locator(".drawing").scrollIntoViewIfNeeded();
    const now = await spotOf(edgeOf(page, "crown"));
    await page.mouse.click(now.x + x - before.x + 4, now.y + y - before.y - 4);
    await page.locator(".picked-title", { hasText: says }).waitFor();
    expect(await button.getAttribute("aria-pressed")).toBe("true");
    expect(await page.locator(".drawing .halo").count()).toBe(1);
  });

  test("the sizes are drawn over the very piece", async () => {
    const { page } = await opened();
    await showAlone(page, "Cheek");
    await press(page, "Sizes on it");
    await page.locator(".drawing .words").first().waitFor();
    const said = (await page.locator(".drawing").textContent())!;
    expect(said).toContain("cut 2: 1 as drawn, 1 turned over");
    const [edge, line] = [
      await spotOf(edgeOf(page, "cheek")),
      await spotOf(page.locator(".drawing .lines .layer-cut.line-01-2").last()),
    ];
    expect(Math.abs(edge.x - line.x)).toBeLessThan(SAME_PX);
    expect(Math.abs(edge.width - line.width)).toBeLessThan(SAME_PX);
  });
});

describe("measuring", () => {
  const millimetres = (said: string): number => Number(/\(([\d.]+) mm\)/.exec(said)![1]);
  const crown = pieceOf("crown");
  const holes = crown.holes.filter((h) => h.use === "buckle");
  const [a, b] = [holes[0]!, holes.at(-1)!];
  const length = Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1]);

  test("from hole to hole by the list, to the tenth of a millimetre", async () => {
    const { page } = await opened();
    await press(page, "Measure");
    await partButton(page, "Crown", /hole/);
    const list = page.locator(".parts").first().getByRole("button");
    const order = crown.holes;
    for (const hole of [a, b]) await list.nth(order.indexOf(hole)).click();
    const said = page.locator(".leather-said", { hasText: "Measured" });
    await said.waitFor();
    expect(Math.abs(millimetres((await said.textContent())!) - length)).toBeLessThanOrEqual(0.1);
    // The line is drawn in the next frame.
    await expect.poll(() => page.locator(".drawing .measured").count()).toBe(1);
  });

  test("by touch, the ends laid to the holes that were meant, on either side", async () => {
    const { page } = await opened();
    await showAlone(page, "Crown");
    await drawn(page);
    const box = crown.outline;
    const xs = [box.start, ...box.segments.map((s) => s.to)].map(([x]) => x);
    const [minX, maxX] = [Math.min(...xs), Math.max(...xs)];
    await press(page, "Turn over");
    await press(page, "Measure");
    await page.locator(".drawing").scrollIntoViewIfNeeded();
    await drawn(page);
    const edge = await spotOf(edgeOf(page, "crown"));
    const scale = edge.width / (maxX - minX);
    // A finger is not exact: 3 px off.
    for (const { at } of [a, b])
      await page.mouse.click(edge.x + (maxX - at[0]) * scale + 3, edge.y + edge.height / 2 - 2);
    const said = page.locator(".leather-said", { hasText: "Measured" });
    await said.waitFor();
    expect(Math.abs(millimetres((await said.textContent())!) - length)).toBeLessThanOrEqual(0.1);
  });
});

describe("by keyboard and in words", () => {
  test("a part is reached and picked without a mouse", async () => {
    const { page } = await opened();
    await page.locator(".parts summary").first().focus();
    await page.keyboard.press("Enter");
    await page.locator(".parts li").first().waitFor();
    await page.keyboard.press("Tab");
    const says = await page.evaluate(() => document.activeElement?.textContent ?? "");
    await page.keyboard.press("Enter");
    expect(await page.locator(".picked-title").textContent()).toBe(says);
  });

  test("the table of sizes holds each size of each piece, with what it comes from", async () => {
    const { page } = await opened();
    for (const piece of headstall.made.pieces) {
      const table = page.getByRole("table", { name: new RegExp(`^${piece.name}: cut `) });
      expect(await table.getByRole("row").count()).toBe(piece.sizes.length + 1);
    }
    const names = await page.locator(".sizes tbody th").allTextContents();
    await page.locator(".sizes th button").first().click();
    expect(await page.locator(".picked-title").textContent()).toContain(names[0]);
    expect(await page.locator(".drawing .halo").count()).toBe(1);
  });
});

describe("ways to look", () => {
  test("on paper there are as many sheets as the job has, and the first sheet", async () => {
    const { page } = await opened();
    await look(page, "on paper");
    const said = page.locator(".leather-said", { hasText: /^\d+ sheets/ });
    await said.waitFor();
    const figures = page.locator(".gallery-sheets figure");
    expect(await said.textContent()).toBe(`${await figures.count()} sheets`);
    expect(await figures.count()).toBeGreaterThan(headstall.layout.sheets.length);
    await figures.first().locator("text").first().waitFor();
    expect(await figures.first().textContent()).toContain("One-ear headstall");
  });

  test("folded, each turn-back has its picture, said in words too", async () => {
    const { page } = await opened();
    await look(page, "folded");
    await page.locator(".gallery-folded figure path").first().waitFor();
    const turnBacks = headstall.made.pieces.flatMap((p) => p.turnBacks);
    expect(await page.locator(".gallery-folded figure").count()).toBe(turnBacks.length);
    expect(
      await page.locator(".gallery-folded").getByRole("img").first().getAttribute("aria-label"),
    ).not.toBe("");
  });

  test("life size: matched by a card, a piece is as many pixels long as the slider says", async () => {
    const { page } = await opened();
    await showAlone(page, "Cheek");
    await look(page, "life size");
    await page.locator(".calibrate .warns").waitFor();
    const slider = page.getByRole("slider", { name: /card/ });
    await slider.fill("4.5");
    await slider.press("ArrowRight");
    const pxPerMm = 4.505;
    expect(await slider.getAttribute("aria-valuetext")).toContain("4.505 px");
    expect(await page.locator(".calibrate .warns").count()).toBe(0);
    const card = (await page.locator(".card").boundingBox())!;
    // ISO/IEC 7810 ID-1: 85.60 × 53.98 mm (from memory).
    expect(Math.abs(Math.max(card.width, card.height) - 85.6 * pxPerMm)).toBeLessThan(SAME_PX);
    expect(Math.abs(Math.min(card.width, card.height) - 53.98 * pxPerMm)).toBeLessThan(SAME_PX);
    const edge = await spotOf(edgeOf(page, "cheek"));
    const length = pieceOf("cheek").sizes[0]!.value;
    expect(Math.abs(edge.width - length * pxPerMm)).toBeLessThan(SAME_PX);
  });
});

/** Writes the order's text anew, as whoever writes it by hand does. */
async function rewrite(page: Page, text: string): Promise<void> {
  await page.locator(".raw summary").click();
  await page.locator(".raw textarea").fill(text);
}

describe("when the order changes", () => {
  test("a piece that is shown, picked and measured may vanish", async () => {
    const { page } = await opened();
    await showAlone(page, "Ear piece, right ear");
    await (await partButton(page, "Ear piece, right ear", /./)).click();
    await press(page, "Measure");
    await (await partButton(page, "Ear piece, right ear", /./)).click();
    await rewrite(page, orderText("heron-bag-strap"));
    await page.locator('.piece[data-piece="ear-piece"]').waitFor({ state: "detached" });
    await page.locator(".drawing .piece").first().waitFor();
    expect(await page.getByRole("combobox", { name: "Show", exact: true }).inputValue()).toBe("");
    expect(await page.locator(".picked-title, .leather-broken, .drawing .end").count()).toBe(0);
  });

  const longer = orderText("juniper-headstall").replace("41 1/2", "43 1/2");

  test("the edge as it was is shown for a moment, and then no more", async () => {
    const { page } = await opened();
    await rewrite(page, longer);
    await page.locator(".drawing .ghost").first().waitFor({ state: "attached" });
    await page.locator(".drawing .ghost").first().waitFor({ state: "detached" });
  });

  test("whoever wants no motion sees none", async () => {
    const { page } = await opened("juniper-headstall", { reducedMotion: "reduce" });
    await page.evaluate(() => {
      const seen = { ghosts: 0 };
      Object.assign(window, { seen });
      new MutationObserver(() => {
        seen.ghosts += document.querySelectorAll(".ghost").length;
      }).observe(document.querySelector(".drawing")!, { childList: true, subtree: true, attributes: true });
    });
    const before = await edgeOf(page, "crown").getAttribute("d");
    await rewrite(page, longer);
    await page.waitForFunction(
      (d) => document.querySelector('.piece[data-piece="crown"] > .hide')?.getAttribute("d") !== d,
      before,
    );
    await drawn(page);
    expect(await page.evaluate(() => (window as unknown as { seen: { ghosts: number } }).seen.ghosts)).toBe(
      0,
    );
  });
});

describe("for everybody", () => {
  test.each(["light", "dark"] as const)(
    "no rule of axe is broken in any way to look, %s",
    async (colorScheme) => {
      const { page } = await opened("juniper-headstall", { colorScheme });
      await (await partButton(page, "Cheek", /hole/)).click();
      await page.evaluate(axe.source);
      for (const way of ["flat", "on paper", "folded", "life size"]) {
        await look(page, way);
        await page.locator(".leather :is(.piece, figure)").first().waitFor();
        const broken = await page.evaluate(async () => {
          const { violations } = await (window as unknown as { axe: typeof axe }).axe.run(".leather");
          return violations.map(({ id, nodes }) => `${id}: ${nodes.map((n) => n.html).join(" ")}`);
        });
        expect(broken).toEqual([]);
      }
    },
  );
});
