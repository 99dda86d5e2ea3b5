// Whose drawing it is, of what, and what it is for.

/** The drawing's names, as they are printed. */
export type DieTitle = {
  readonly owner: string;
  readonly article: string;
  readonly forWhom: string;
  readonly piece: string;
  readonly number: string;
  readonly revision: string;
  readonly date: string;
  /** "left as drawn", "right: turned over". */
  readonly side: string;
  readonly hand: string;
  /** The drawing of two on one board that is ordered in its place: this one then only defines each of the two. */
  readonly board?: string;
  /** It is the board of two, which is made in place of single dies. */
  readonly instead?: boolean;
};
