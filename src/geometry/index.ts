export { anticlockwise, signedArea } from "./area.ts";
export { boundsOf, unionBox } from "./bounds.ts";
export { containsPath, containsPoint } from "./contains.ts";
export { type CornerTurn, cornerTurns } from "./corners.ts";
export { crossings, selfCrossings } from "./crossing.ts";
export { distanceBetween, distanceToPath, type Nearest, nearestOnPath } from "./distance.ts";
export { flatten } from "./flatten.ts";
export { curvatureAt, pathLength, pointAt, subPath, tangentAt } from "./length.ts";
export { offsetPath } from "./offset.ts";
export * from "./path.ts";
export { intersect, type Region, subtract, unite } from "./region.ts";
export {
  mirroredInX,
  mirroredInY,
  moved,
  type Placement,
  placed,
  placedPoint,
  reversed,
  turned,
} from "./transform.ts";
