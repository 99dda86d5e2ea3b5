// bezier-js ships no types; these are the calls that the tests make.
declare module "bezier-js" {
  type XY = { x: number; y: number };
  export class Bezier {
    constructor(...coordinates: number[]);
    length(): number;
    get(t: number): XY;
    curvature(t: number): { k: number; r: number };
    offset(t: number, d: number): XY;
    project(point: XY): XY & { t: number; d: number };
    bbox(): { x: { min: number; max: number }; y: { min: number; max: number } };
    intersects(other: Bezier, threshold?: number): string[];
    selfintersects(threshold?: number): string[];
    split(t: number): { left: Bezier; right: Bezier };
    points: XY[];
  }
}
