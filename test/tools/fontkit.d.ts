/** The little of fontkit that the scripts and tests use; the package brings no types. */
declare module "fontkit" {
  export type Glyph = {
    readonly id: number;
    readonly advanceWidth: number;
    readonly bbox: {
      readonly minX: number;
      readonly minY: number;
      readonly maxX: number;
      readonly maxY: number;
    };
  };
  export type Font = {
    readonly fullName: string;
    readonly version: string;
    readonly unitsPerEm: number;
    readonly ascent: number;
    readonly descent: number;
    hasGlyphForCodePoint(codePoint: number): boolean;
    glyphForCodePoint(codePoint: number): Glyph;
  };
  export function create(bytes: Uint8Array): Font;
}
