import type { Box, Path, Point } from "../geometry/path.ts";
import type { Placement } from "../geometry/transform.ts";

// What is drawn, whatever the format: millimetres, y up, origin at the lower left of the picture.

/**
 * Line types by ISO 128-2, number and thickness (.1 thin, .2 thick):
 * 01 continuous, 02 dashed, 03 dashed spaced, 04 long dash dot, 05 long dash double dot, 07 dotted,
 * 08 long dash short dash.
 */
export type LineType = "01.1" | "01.2" | "02.1" | "03.1" | "04.1" | "05.1" | "07.1" | "08.1";

/** Layers by meaning; SVG groups and PDF layers carry these names. */
export type Layer = "cut" | "stitch" | "fold" | "hole" | "skive" | "mark" | "text" | "sheet";

export type Stroke = {
  readonly kind: "stroke";
  readonly layer: Layer;
  readonly line: LineType;
  readonly path: Path;
  readonly id?: string;
  /** Closed paths may be filled: black for what is punched out, white to clear what lies below. */
  readonly fill?: "black" | "white";
};

export type Words = {
  readonly kind: "words";
  readonly layer: Layer;
  /** Where the base line starts, is centred or ends. */
  readonly at: Point;
  /** Font size in mm (the em, not the capital's height). */
  readonly size: number;
  readonly text: string;
  readonly align: "left" | "centre" | "right";
  /** Direction of the base line, radians. */
  readonly angle: number;
  readonly bold?: boolean;
  readonly id?: string;
};

/** Items drawn in their own frame, then placed; `clip` is in the group's own frame. */
export type Group = {
  readonly kind: "group";
  readonly id?: string;
  readonly placement: Placement;
  readonly clip?: Box;
  readonly items: readonly Item[];
};

export type Item = Stroke | Words | Group;

export type Picture = {
  readonly title: string;
  readonly width: number;
  readonly height: number;
  readonly items: readonly Item[];
};
