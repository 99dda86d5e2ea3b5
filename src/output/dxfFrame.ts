// What a DXF file of release 2000 has besides its drawing: header, tables, blocks, objects.
import type { Box } from "../geometry/path.ts";
import { DXF_LAYERS, type DxfLayer, LINE_TYPES } from "./dxfLayers.ts";
import { at3, mm, type Pair, whole } from "./dxfPairs.ts";

export type Handles = () => string;

/** Handles in hexadecimal, from 1 upwards. */
export function handles(): Handles {
  let last = 0;
  return () => {
    last += 1;
    return last.toString(16).toUpperCase();
  };
}

export const section = (name: string, content: readonly Pair[]): readonly Pair[] => [
  [0, "SECTION"],
  [2, name],
  ...content,
  [0, "ENDSEC"],
];

export function header({ minX, minY, maxX, maxY }: Box, next: string): readonly Pair[] {
  return section("HEADER", [
    [9, "$ACADVER"],
    [1, "AC1015"],
    [9, "$DWGCODEPAGE"],
    [3, "ANSI_1252"],
    [9, "$INSUNITS"],
    whole(70, 4),
    [9, "$MEASUREMENT"],
    whole(70, 1),
    [9, "$LUNITS"],
    whole(70, 2),
    [9, "$LUPREC"],
    whole(70, 3),
    [9, "$EXTMIN"],
    ...at3([minX, minY]),
    [9, "$EXTMAX"],
    ...at3([maxX, maxY]),
    [9, "$HANDSEED"],
    [5, next],
  ]);
}

/** One entry of a table: its type, its class, its name, and the rest. */
type Row = {
  readonly handle: string;
  readonly kind: string;
  readonly name: string;
  readonly rest: readonly Pair[];
};

function table(name: string, kind: string, handle: string, rows: readonly Row[]): readonly Pair[] {
  const entry = (row: Row): readonly Pair[] => [
    [0, name],
    // A dimension style's handle has a code of its own.
    [name === "DIMSTYLE" ? 105 : 5, row.handle],
    [330, handle],
    [100, "AcDbSymbolTableRecord"],
    [100, row.kind],
    [2, row.name],
    ...row.rest,
  ];
  const styles: readonly Pair[] = kind === "AcDbDimStyleTable" ? [[100, kind], whole(71, rows.length)] : [];
  return [
    [0, "TABLE"],
    [2, name],
    [5, handle],
    [330, "0"],
    [100, "AcDbSymbolTable"],
    whole(70, rows.length),
    ...styles,
    ...rows.flatMap(entry),
    [0, "ENDTAB"],
  ];
}

/** What the viewer shows first: the middle of the drawing, all of it. */
function view({ minX, minY, maxX, maxY }: Box): readonly Pair[] {
  const height = Math.max(maxY - minY, (maxX - minX) / 1.5, 1);
  const corner = (a: number, b: number, x: number, y: number): readonly Pair[] => [mm(a, x), mm(b, y)];
  return [
    whole(70, 0),
    ...corner(10, 20, 0, 0),
    ...corner(11, 21, 1, 1),
    ...corner(12, 22, (minX + maxX) / 2, (minY + maxY) / 2),
    ...corner(13, 23, 0, 0),
    ...corner(14, 24, 10, 10),
    ...corner(15, 25, 10, 10),
    mm(16, 0),
    mm(26, 0),
    mm(36, 1),
    mm(17, 0),
    mm(27, 0),
    mm(37, 0),
    mm(40, height),
    mm(41, 1.5),
    mm(42, 50),
  ];
}

/** A line type by the lengths it repeats: a line, a gap below 0, a dot as 0. */
const lineType = (says: string, lengths: readonly number[]): readonly Pair[] => [
  whole(70, 0),
  [3, says],
  whole(72, 65),
  whole(73, lengths.length),
  mm(
    40,
    lengths.reduce((sum, length) => sum + Math.abs(length), 0),
  ),
  ...lengths.flatMap((length): readonly Pair[] => [mm(49, length), whole(74, 0)]),
];
const letters: readonly Pair[] = [
  whole(70, 0),
  mm(40, 0),
  mm(41, 1),
  mm(50, 0),
  whole(71, 0),
  mm(42, 2.5),
  [3, "txt"],
  [4, ""],
];
const layer = (colour: number, line: string): readonly Pair[] => [whole(70, 0), whole(62, colour), [6, line]];

export type Spaces = { readonly model: string; readonly paper: string };

/** The tables, with the layers that are given, and of line types all. */
export function tables(
  box: Box,
  layers: readonly DxfLayer[],
  next: Handles,
  spaces: Spaces,
): readonly Pair[] {
  const rows = (kind: string, all: readonly (readonly [string, readonly Pair[]])[]): readonly Row[] =>
    all.map(([name, rest]) => ({ handle: next(), kind, name, rest }));
  const layerRows = layers.map(
    (name) => [name, layer(DXF_LAYERS[name].colour, DXF_LAYERS[name].line)] as const,
  );
  const records: readonly Row[] = [
    { handle: spaces.model, kind: "AcDbBlockTableRecord", name: "*Model_Space", rest: [] },
    { handle: spaces.paper, kind: "AcDbBlockTableRecord", name: "*Paper_Space", rest: [] },
  ];
  const lineTypes = [
    ...["ByBlock", "ByLayer"].map((name) => [name, lineType("", [])] as const),
    ...Object.entries(LINE_TYPES).map(
      ([name, { says, lengths }]) => [name, lineType(says, lengths)] as const,
    ),
  ];
  return section("TABLES", [
    ...table("VPORT", "", next(), rows("AcDbViewportTableRecord", [["*Active", view(box)]])),
    ...table("LTYPE", "", next(), rows("AcDbLinetypeTableRecord", lineTypes)),
    ...table(
      "LAYER",
      "",
      next(),
      rows("AcDbLayerTableRecord", [["0", layer(7, "Continuous")], ...layerRows]),
    ),
    ...table("STYLE", "", next(), rows("AcDbTextStyleTableRecord", [["Standard", letters]])),
    ...table("VIEW", "", next(), []),
    ...table("UCS", "", next(), []),
    ...table("APPID", "", next(), rows("AcDbRegAppTableRecord", [["ACAD", [whole(70, 0)]]])),
    ...table(
      "DIMSTYLE",
      "AcDbDimStyleTable",
      next(),
      rows("AcDbDimStyleTableRecord", [["Standard", [whole(70, 0)]]]),
    ),
    ...table("BLOCK_RECORD", "", next(), records),
  ]);
}

export function blocks(next: Handles, spaces: Spaces): readonly Pair[] {
  const block = (name: string, owner: string, paper: readonly Pair[]): readonly Pair[] => {
    const common = (type: string): readonly Pair[] => [
      [0, type],
      [5, next()],
      [330, owner],
      [100, "AcDbEntity"],
      ...paper,
      [8, "0"],
    ];
    return [
      ...common("BLOCK"),
      [100, "AcDbBlockBegin"],
      [2, name],
      whole(70, 0),
      ...at3([0, 0]),
      [3, name],
      [1, ""],
      ...common("ENDBLK"),
      [100, "AcDbBlockEnd"],
    ];
  };
  return section("BLOCKS", [
    ...block("*Model_Space", spaces.model, []),
    ...block("*Paper_Space", spaces.paper, [whole(67, 1)]),
  ]);
}

export function objects(next: Handles): readonly Pair[] {
  const [root, group] = [next(), next()];
  const dictionary = (handle: string, owner: string, entries: readonly Pair[]): readonly Pair[] => [
    [0, "DICTIONARY"],
    [5, handle],
    [330, owner],
    [100, "AcDbDictionary"],
    whole(281, 1),
    ...entries,
  ];
  return section("OBJECTS", [
    ...dictionary(root, "0", [
      [3, "ACAD_GROUP"],
      [350, group],
    ]),
    ...dictionary(group, root, []),
  ]);
}
