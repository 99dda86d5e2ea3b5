import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";

const path = (name: string): string => fileURLToPath(import.meta.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));

/** The fonts that outputs embed: their files and their bytes. */
export const fontFiles = [path("DejaVuSansCondensed"), path("DejaVuSansCondensed-Bold")] as const;
export const font = new Uint8Array(readFileSync(fontFiles[0]));
export const bold = new Uint8Array(readFileSync(fontFiles[1]));
