import {
  articleNamed,
  articles,
  beginOrder,
  type Fonts,
  pageAnswer,
  pageEdit,
  pageFindings,
  pageFolded,
  pagePiece,
  pageSheets,
  pageUnits,
} from "../../job.ts";
import type { Engine } from "./engine.ts";
import { filesOf, shopOf } from "./files.ts";

const beside = (text: string, shop: string | undefined) => {
  const found = shopOf(text, shop);
  return found ? { shop: found } : {};
};

/** The engine as the page calls it, in whatever runs it; the fonts are asked for when a file is made. */
export const engineWith = (fonts: () => Promise<Fonts>): Engine => ({
  articles: async () => articles.map(({ name, slug, means }) => ({ name, slug, means })),
  begin: async (slug) => {
    const found = articleNamed(slug);
    if (!found.ok) throw new Error(found.message);
    return beginOrder(found.article);
  },
  look: async (text, file, shop) => pageAnswer(text, file, beside(text, shop)),
  findings: async (text, file, shop) => pageFindings(text, file, beside(text, shop)),
  edit: async (text, key, value) => pageEdit(text, key, value),
  units: async (text, units) => pageUnits(text, units),
  piece: async (text, file, id) => pagePiece(text, file, id),
  sheets: async (text, file, printing) => pageSheets(text, file, printing),
  folded: async (text, file) => pageFolded(text, file),
  files: (text, file, shop, kind, asked) => filesOf(text, file, shop, kind, asked, fonts),
});
