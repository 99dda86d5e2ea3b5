import { pathData } from "./curves.ts";
import type { FlatItem, Point, Stroke, Words } from "./shapes.ts";

// A drawing as plain data: what elements there are to be. Colours and widths are the style sheet's, by class.

export type Spec = {
  readonly tag: "g" | "path" | "text" | "circle" | "clipPath" | "defs" | "rect" | "title";
  readonly attrs: Readonly<Record<string, string>>;
  readonly text?: string;
  readonly inside?: readonly Spec[];
};

/** A group of specs. */
export const group = (attrs: Spec["attrs"], inside: readonly Spec[]): Spec => ({ tag: "g", attrs, inside });

const num = (n: number): string => `${Math.round(n * 1000) / 1000 || 0}`;
const DEGREES = 180 / Math.PI;

/** "line-01-2 layer-cut fill-black": a line type's full stop would end a class's name. */
const strokeClass = ({ layer, line, fill }: Stroke): string =>
  `line-${line.replace(".", "-")} layer-${layer}${fill ? ` fill-${fill}` : ""}`;

const ANCHORS = { left: "start", centre: "middle", right: "end" } as const;
const MIRRORED_ANCHORS = { left: "end", centre: "middle", right: "start" } as const;

/** Words in a group whose y runs up; in a mirrored one they fill the same box and stay readable. */
export function wordsSpec({ at, angle, align, size, text, layer, bold }: Words, mirrored: boolean): Spec {
  const turn = angle === 0 ? "" : ` rotate(${num(angle * DEGREES)})`;
  return {
    tag: "text",
    attrs: {
      class: `words layer-${layer}${bold ? " bold" : ""}`,
      transform: `translate(${num(at[0])} ${num(at[1])})${turn} scale(${mirrored ? "-1" : "1"} -1)`,
      "text-anchor": (mirrored ? MIRRORED_ANCHORS : ANCHORS)[align],
      "font-size": num(size),
    },
    text,
  };
}

/** Neighbours of one look are one element; a filled path covers what lies below, so it stays by itself. */
function runsOf(items: readonly FlatItem["item"][], mirrored: boolean): readonly Spec[] {
  const specs: Spec[] = [];
  let run: { look: string; data: string[] } | undefined;
  const close = (): void => {
    if (run) specs.push({ tag: "path", attrs: { class: run.look, d: run.data.join("") } });
    run = undefined;
  };
  for (const item of items) {
    if (item.kind === "words") {
      close();
      specs.push(wordsSpec(item, mirrored));
      continue;
    }
    const look = strokeClass(item);
    if (run?.look !== look || item.fill) close();
    run ??= { look, data: [] };
    run.data.push(pathData(item.path));
  }
  close();
  return specs;
}

type Clip = FlatItem["clips"][number];
const clipData = (clip: Clip): string => `M${clip.map(([x, y]) => `${num(x)} ${num(y)}`).join("L")}Z`;

/**
 * The elements of a picture's lines and words, in their order, y up. `ids` begins the names of its clips,
 * which must differ between the drawings of a page.
 */
export function itemSpecs(items: readonly FlatItem[], ids: string, mirrored = false): readonly Spec[] {
  const names = new Map<string, string>();
  const nameOf = (clip: Clip): string => {
    const data = clipData(clip);
    if (!names.has(data)) names.set(data, `${ids}-clip-${names.size + 1}`);
    return names.get(data)!;
  };
  const drawn: Spec[] = [];
  let run: FlatItem[] = [];
  const close = (): void => {
    const first = run[0];
    if (!first) return;
    const inside = runsOf(
      run.map(({ item }) => item),
      mirrored,
    );
    const nested = first.clips.reduceRight<readonly Spec[]>(
      (inner, clip) => [group({ "clip-path": `url(#${nameOf(clip)})` }, inner)],
      inside,
    );
    drawn.push(...nested);
    run = [];
  };
  const keyOf = ({ clips }: FlatItem): string => clips.map(clipData).join();
  for (const item of items) {
    if (run[0] && run[0].clips !== item.clips && keyOf(run[0]) !== keyOf(item)) close();
    run.push(item);
  }
  close();
  const shapes = [...names].map(
    ([d, id]): Spec => ({ tag: "clipPath", attrs: { id }, inside: [{ tag: "path", attrs: { d } }] }),
  );
  return shapes.length === 0 ? drawn : [{ tag: "defs", attrs: {}, inside: shapes }, ...drawn];
}

/** A path of that class. */
export const pathSpec = (look: string, d: string): Spec => ({ tag: "path", attrs: { class: look, d } });

/** A ring round a point; its size on the screen is the style sheet's. */
export const ringSpec = (look: string, [x, y]: Point): Spec => ({
  tag: "circle",
  attrs: { class: look, cx: num(x), cy: num(y) },
});
