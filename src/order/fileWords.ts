/** What a file is called in messages about it. */
export type FileWords = {
  /** "order" */
  readonly noun: string;
  /** "an order" */
  readonly one: string;
  /** Said of a file that holds none. */
  readonly none: string;
  /** How to begin one, where nothing of it is there. */
  readonly begin: string;
};

export const ORDER_WORDS: FileWords = {
  noun: "order",
  one: "an order",
  none: "there is no order in this file",
  begin: 'begin with a line that names what is ordered, as in "article: one-ear headstall"',
};

export const SHOP_WORDS: FileWords = {
  noun: "shop file",
  one: "a shop file",
  none: "nothing of a shop stands in this file",
  begin: 'begin with a line that names your shop, as in "shop: Fernhollow Saddlery"',
};
