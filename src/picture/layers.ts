import type { Layer } from "./picture.ts";

/**
 * The order in which every output draws, and lists, the layers: what comes later lies on top. What is cut
 * lies over what is only marked; the sheet's own squares and rulers lie over the pieces, words over all.
 */
export const LAYERS: readonly Layer[] = ["skive", "fold", "stitch", "mark", "cut", "hole", "sheet", "text"];
