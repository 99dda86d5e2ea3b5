/** The little of bezier-js that tests use; the package brings no types. */
declare module "bezier-js" {
  export class Bezier {
    constructor(...coordinates: number[]);
    length(): number;
    get(t: number): { readonly x: number; readonly y: number };
  }
}
