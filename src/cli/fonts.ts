import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import type { Fonts } from "../job.ts";

const require = createRequire(import.meta.url);
const read = (name: string): Uint8Array =>
  new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));

/** The fonts that are embedded in every PDF. */
export const fonts = (): Fonts => ({
  font: read("DejaVuSansCondensed"),
  bold: read("DejaVuSansCondensed-Bold"),
});
