// What a die's file for machines holds, whatever the format: lines and arcs in layers by meaning.
import type { Die } from "../../die/die.ts";
import type { DieFeature } from "../../die/feature.ts";
import { fitArcs } from "../../die/fitArcs.ts";
import type { Nest } from "../../die/nest.ts";
import { ruleFaces } from "../../die/ruleBody.ts";
import type { RulePath } from "../../die/rulePaths.ts";
import { anticlockwise } from "../../geometry/area.ts";
import { boundsOf } from "../../geometry/bounds.ts";
import { type Box, type Path, type Point, rectanglePath } from "../../geometry/path.ts";
import { type Placement, placed, placedPoint } from "../../geometry/transform.ts";
import { SQUARE_MM } from "../sheet/square.ts";

type CutLayer =
  | "die-outline"
  | "die-slots"
  | "die-tubes"
  | "rule-faces"
  | "by-hand"
  | "check-square"
  | "board"
  | "words";

/** Paths have lines and arcs only; mm, y up, in the piece's own frame. */
export type CutItem =
  | { readonly kind: "path"; readonly layer: CutLayer; readonly path: Path }
  | { readonly kind: "circle"; readonly layer: CutLayer; readonly centre: Point; readonly radius: number }
  | {
      readonly kind: "words";
      readonly layer: CutLayer;
      readonly at: Point;
      readonly height: number;
      readonly text: string;
    };

const LETTERS_MM = 4;
/** From base line to base line, and between what is drawn, the check square and the words, mm. */
const LINE_MM = 7;
const APART_MM = 10;

const RULE_LAYERS = { outline: "die-outline", slot: "die-slots", tube: "die-tubes" } as const;

type Asked = {
  /** Also both faces of each rule. */
  readonly ruleEdge: boolean;
  /** Lines of text that stand beside the check square. */
  readonly words: readonly string[];
};

const pathItem = (layer: CutLayer, path: Path): CutItem => ({ kind: "path", layer, path });

function middleOf(path: Path): Point {
  const { minX, minY, maxX, maxY } = boundsOf(path);
  return [(minX + maxX) / 2, (minY + maxY) / 2];
}

function ruleItem({ kind, path, diameter }: RulePath): CutItem {
  const layer = RULE_LAYERS[kind];
  if (diameter === undefined) return pathItem(layer, path);
  return { kind: "circle", layer, centre: middleOf(path), radius: diameter / 2 };
}

/** Offsets of lines and arcs are lines and arcs; what is a curve all the same is fitted by arcs. */
function faceItems(rule: RulePath, { settings }: Die): readonly CutItem[] {
  const { leather, waste } = ruleFaces(rule, settings);
  return [...leather, ...waste].map((face) => pathItem("rule-faces", fitArcs(face).path));
}

function byHandItems({ kind, at, size, paths }: DieFeature): readonly CutItem[] {
  const round = kind === "round hole" || kind === "staple hole";
  if (round && size && "diameter" in size)
    return [{ kind: "circle", layer: "by-hand", centre: at, radius: size.diameter / 2 }];
  return paths.map((path) => pathItem("by-hand", fitArcs(path).path));
}

const rulesOf = (die: Die, { ruleEdge }: Asked): readonly CutItem[] => [
  ...die.rules.map(ruleItem),
  // A tube is bought by its bore, which is drawn: it has no faces of rule.
  ...(ruleEdge
    ? die.rules.filter((r) => r.diameter === undefined).flatMap((rule) => faceItems(rule, die))
    : []),
];

/** The 50 mm square below what is drawn, and the words to its right. */
function besides({ minX, minY }: Box, { words }: Asked): readonly CutItem[] {
  const low = minY - APART_MM - SQUARE_MM;
  const text = (line: string, i: number): CutItem => ({
    kind: "words",
    layer: "words",
    at: [minX + SQUARE_MM + APART_MM, low + SQUARE_MM - LETTERS_MM - i * LINE_MM],
    height: LETTERS_MM,
    text: line,
  });
  return [
    pathItem("check-square", rectanglePath([minX, low], SQUARE_MM, SQUARE_MM)),
    ...[...words, "The square measures 50 mm."].map(text),
  ];
}

/** One die: its rules and tubes, what is made by hand afterwards, a square to measure, and words. */
export const cutItems = (die: Die, asked: Asked): readonly CutItem[] => [
  ...rulesOf(die, asked),
  ...die.features.filter(({ made }) => made === "by hand afterwards").flatMap(byHandItems),
  ...besides(boundsOf(die.rules[0]!.path), asked),
];

function laid(item: CutItem, placement: Placement): CutItem {
  if (item.kind === "words") return { ...item, at: placedPoint(item.at, placement) };
  if (item.kind === "circle") return { ...item, centre: placedPoint(item.centre, placement) };
  const path = placed(item.path, placement);
  return { ...item, path: path.closed && item.layer !== "rule-faces" ? anticlockwise(path) : path };
}

/** The board of a nested die: the box round both outlines with the margin that the order asks for. */
export const boardOf = ({ box }: Nest, margin: number): Box => ({
  minX: box.minX - margin,
  minY: box.minY - margin,
  maxX: box.maxX + margin,
  maxY: box.maxY + margin,
});

/** Two of the die on one board: both sets of rules, the board's edge, a square to measure, and words. */
export function pairItems(die: Die, nest: Nest, asked: Asked): readonly CutItem[] {
  const board = boardOf(nest, die.settings.boardMargin.value);
  const rules = rulesOf(die, asked);
  return [
    ...rules,
    ...rules.map((item) => laid(item, nest.second)),
    pathItem(
      "board",
      rectanglePath([board.minX, board.minY], board.maxX - board.minX, board.maxY - board.minY),
    ),
    ...besides(board, asked),
  ];
}
