// The layers of a DXF file and their line types. Only what is steel is drawn in an unbroken line.
import type { CutLayer } from "../picture/die/cutLayers.ts";

export type DxfLayer = CutLayer;

type LineType = {
  readonly says: string;
  /** mm: a line, a gap below 0, a dot as 0. */
  readonly lengths: readonly number[];
};

/**
 * Names, orders and lengths as in ISO 128-2 for lines 0.25 mm wide (from memory): a dash is 12 widths, a long
 * one 24, a gap 3, a wide gap 18. FINE ones, of our own, are for awl slits, notches and holes: a longer pattern
 * would not fit in.
 */
export const LINE_TYPES = {
  Continuous: { says: "", lengths: [] },
  DASHED: { says: "__ __ __ __", lengths: [3, -0.75] },
  DASHED_SPACED: { says: "__     __     __", lengths: [3, -4.5] },
  LONG_DASH_DOT: { says: "____ . ____ . ____", lengths: [6, -0.75, 0, -0.75] },
  LONG_DASH_TWO_DOTS: { says: "____ . . ____ . . ____", lengths: [6, -0.75, 0, -0.75, 0, -0.75] },
  LONG_DASH_THREE_DOTS: {
    says: "____ . . . ____ . . . ____",
    lengths: [6, -0.75, 0, -0.75, 0, -0.75, 0, -0.75],
  },
  DOTTED: { says: ". . . . . . . .", lengths: [0, -0.75] },
  LONG_DASH_SHORT_DASH: { says: "____ _ ____ _ ____", lengths: [6, -0.75, 1.5, -0.75] },
  LONG_DASH_TWO_SHORT_DASHES: { says: "____ _ _ ____ _ _ ____", lengths: [6, -0.75, 1.5, -0.75, 1.5, -0.75] },
  DASH_DOT: { says: "__ . __ . __ . __", lengths: [3, -0.75, 0, -0.75] },
  DASH_TWO_DOTS: { says: "__ . . __ . . __", lengths: [3, -0.75, 0, -0.75, 0, -0.75] },
  TWO_DASHES_DOT: { says: "__ __ . __ __ .", lengths: [3, -0.75, 3, -0.75, 0, -0.75] },
  FINE_DASHES: { says: "_ _ _ _ _ _", lengths: [0.5, -0.3] },
  FINE_DASH_DOT: { says: "_ . _ . _ . _", lengths: [0.5, -0.3, 0, -0.3] },
  FINE_DASH_TWO_DOTS: { says: "_ . . _ . . _", lengths: [0.5, -0.3, 0, -0.3, 0, -0.3] },
} as const satisfies Readonly<Record<string, LineType>>;

type Look = {
  /** The number of the colour that viewers show it in: its own for each layer. */
  readonly colour: number;
  readonly line: keyof typeof LINE_TYPES;
};

/** In the order in which they are listed. Lines as on the drawing, where it has the kind. */
export const DXF_LAYERS: Readonly<Record<DxfLayer, Look>> = {
  CUT: { colour: 7, line: "Continuous" },
  CUT_SLOTS: { colour: 1, line: "Continuous" },
  CUT_TUBES: { colour: 5, line: "Continuous" },
  CUT_NOTCHES: { colour: 2, line: "Continuous" },
  RULE_FACES: { colour: 8, line: "LONG_DASH_TWO_SHORT_DASHES" },
  BOARD: { colour: 9, line: "LONG_DASH_TWO_DOTS" },
  HAND_SLOT: { colour: 30, line: "TWO_DASHES_DOT" },
  HAND_HOLE: { colour: 140, line: "FINE_DASH_DOT" },
  HAND_AWL: { colour: 3, line: "FINE_DASHES" },
  HAND_NOTCH: { colour: 34, line: "FINE_DASH_TWO_DOTS" },
  HAND_CREASE: { colour: 40, line: "DASHED_SPACED" },
  HAND_FOLD: { colour: 4, line: "DASHED" },
  HAND_SKIVE: { colour: 6, line: "DOTTED" },
  HAND_GLUE: { colour: 94, line: "DASH_TWO_DOTS" },
  HAND_TOOLING: { colour: 200, line: "DASH_DOT" },
  HAND_TRIM: { colour: 12, line: "LONG_DASH_SHORT_DASH" },
  CENTRE: { colour: 170, line: "LONG_DASH_DOT" },
  CHECK_50MM: { colour: 230, line: "LONG_DASH_THREE_DOTS" },
  TEXT: { colour: 252, line: "Continuous" },
};
