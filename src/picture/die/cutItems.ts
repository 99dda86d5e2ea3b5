// What a die's file for machines holds, whatever the format: lines and arcs in layers by meaning.
import type { Die } from "../../die/die.ts";
import type { DieFeature } from "../../die/feature.ts";
import { fitArcs } from "../../die/fitArcs.ts";
import type { Nest } from "../../die/nest.ts";
import { ruleFaces } from "../../die/ruleBody.ts";
import type { RulePath } from "../../die/rulePaths.ts";
import { anticlockwise } from "../../geometry/area.ts";
import { boundsOf, unionBox } from "../../geometry/bounds.ts";
import { type Box, type Path, type Point, polyline, rectanglePath } from "../../geometry/path.ts";
import { type Placement, placed, placedPoint } from "../../geometry/transform.ts";
import { polar } from "../../geometry/vector.ts";
import { clipped } from "../../layout/clip.ts";
import { grownBy } from "../piece/space.ts";
import { SQUARE_MM } from "../sheet/square.ts";
import { type CutLayer, HAND_LAYERS, RULE_LAYERS } from "./cutLayers.ts";
import { cutWords } from "./cutWords.ts";
import { withFieldEdges } from "./fieldEdges.ts";

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

const LETTERS_MM = 3;
/** From base line to base line, and between the check square and the words, mm. */
const LINE_MM = 5;
const APART_MM = 10;
/** From all that is drawn to the check square, mm: nobody takes it for a part of the die. */
export const CLEAR_MM = 25;
/** The centre line passes the outline by this much, mm. */
const CENTRE_BEYOND_MM = 4;

type Asked = {
  /** Also both faces of each rule. */
  readonly ruleEdge: boolean;
  /** The first lines of the text beside the check square: which piece, side and revision it is. */
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
  return [...leather, ...waste].map((face) => pathItem("RULE_FACES", fitArcs(face).path));
}

function byHandItems({ kind, at, size, paths }: DieFeature): readonly CutItem[] {
  if (kind === "outline") return [];
  const layer = HAND_LAYERS[kind];
  const round = kind === "round hole" || kind === "staple hole";
  if (round && size && "diameter" in size)
    return [{ kind: "circle", layer, centre: at, radius: size.diameter / 2 }];
  return paths.map((path) => pathItem(layer, fitArcs(path).path));
}

/** The line about which the die is its own mirror image; else the centre lines that the piece has. */
function centreItems({ axis, rules, piece }: Die): readonly CutItem[] {
  if (!axis)
    return piece.marks
      .filter(({ kind }) => kind === "centre")
      .map(({ path }) => pathItem("CENTRE", fitArcs(path).path));
  const box = grownBy(boundsOf(rules[0]!.path), CENTRE_BEYOND_MM);
  const far = box.maxX - box.minX + box.maxY - box.minY;
  const line = clipped([polar(axis.at, -far, axis.angle), polar(axis.at, far, axis.angle)], box);
  return line ? [pathItem("CENTRE", polyline(line))] : [];
}

const rulesOf = (die: Die, { ruleEdge }: Asked): readonly CutItem[] => [
  ...die.rules.map(ruleItem),
  // A tube is bought by its bore, which is drawn: it has no faces of rule.
  ...(ruleEdge
    ? die.rules.filter((r) => r.diameter === undefined).flatMap((rule) => faceItems(rule, die))
    : []),
];

function boxOf(item: CutItem): Box {
  if (item.kind === "path") return boundsOf(item.path);
  const [[x, y], r] = item.kind === "circle" ? [item.centre, item.radius] : [item.at, 0];
  return { minX: x - r, minY: y - r, maxX: x + r, maxY: y + r };
}

/** What is drawn, the 50 mm square well below all of it, and the words to the square's right. */
function withWords(items: readonly CutItem[], die: Die, { words }: Asked): readonly CutItem[] {
  const { minX, minY } = unionBox(items.map(boxOf));
  const low = minY - CLEAR_MM - SQUARE_MM;
  const text = (line: string, i: number): CutItem => ({
    kind: "words",
    layer: "TEXT",
    at: [minX + SQUARE_MM + APART_MM, low + SQUARE_MM - LETTERS_MM - i * LINE_MM],
    height: LETTERS_MM,
    text: line,
  });
  const layers = items.map(({ layer }) => layer);
  return [
    ...items,
    pathItem("CHECK_50MM", rectanglePath([minX, low], SQUARE_MM, SQUARE_MM)),
    ...[...words, ...cutWords(die, layers)].map(text),
  ];
}

/**
 * One die: its rules and tubes, what is made by hand afterwards, its centre line, a square to measure, and
 * words. Of a field only the edges that do not lie on the outline.
 */
export function cutItems(die: Die, asked: Asked): readonly CutItem[] {
  const byHand = withFieldEdges(die.features).filter(({ made }) => made === "by hand afterwards");
  const items = [...rulesOf(die, asked), ...byHand.flatMap(byHandItems), ...centreItems(die)];
  return withWords(items, die, asked);
}

function laid(item: CutItem, placement: Placement): CutItem {
  if (item.kind === "words") return { ...item, at: placedPoint(item.at, placement) };
  if (item.kind === "circle") return { ...item, centre: placedPoint(item.centre, placement) };
  const path = placed(item.path, placement);
  return { ...item, path: path.closed && item.layer !== "RULE_FACES" ? anticlockwise(path) : path };
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
  const edge = rectanglePath([board.minX, board.minY], board.maxX - board.minX, board.maxY - board.minY);
  const items = [...rules, ...rules.map((item) => laid(item, nest.second)), pathItem("BOARD", edge)];
  return withWords(items, die, asked);
}
