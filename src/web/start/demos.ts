import { firstComment, isShopFile, lineOf } from "../device/textLines.ts";

// The demo orders of an invented workshop, as they lie among the templates.

export type Demo = {
  readonly file: string;
  readonly text: string;
  readonly title: string;
  readonly says: string;
};

const TEXTS: Readonly<Record<string, string>> = import.meta.glob("../../../templates/*.yaml", {
  query: "?raw",
  import: "default",
  eager: true,
});

const all = Object.entries(TEXTS).map(([path, text]) => ({ file: path.split("/").at(-1) ?? path, text }));

/** What the demo orders are priced by. */
export const demoShop: string | undefined = all.find(({ text }) => isShopFile(text))?.text;

export const demos: readonly Demo[] = all
  .filter(({ text }) => !isShopFile(text))
  .map(({ file, text }) => ({ file, text, title: lineOf(text, "for"), says: firstComment(text) }));
