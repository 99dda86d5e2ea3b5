import { placeOf } from "./placeOf.ts";

/** The line of an order that gives the revision of its dies; undefined when none does. */
export const revisionLine = (text: string): number | undefined => placeOf(text, "die.revision")?.line;
