import type { Made } from "../model/article.ts";
import type { Finding } from "../model/finding.ts";
import type { Units } from "../model/say.ts";
import type { Layout } from "../model/sheet.ts";

/** What a rule needs besides the data: the units that its words are in. */
export type Context = { readonly units: Units };

/** A rule on the pieces and how they meet. It sees data alone and gives findings. */
export type Rule = {
  readonly name: string;
  /** What it asks for, in one line. */
  readonly means: string;
  check(job: Made, context: Context): readonly Finding[];
};

/** A rule on the sheets that the pieces are printed on. */
export type SheetRule = {
  readonly name: string;
  readonly means: string;
  check(job: Made, layout: Layout, context: Context): readonly Finding[];
};

/** A finding before it carries its rule's name. */
export type Remark = Omit<Finding, "rule">;

/** A rule from its name, its meaning and how it looks at a job. */
export const rule = (
  name: string,
  means: string,
  look: (job: Made, context: Context) => readonly Remark[],
): Rule => ({ name, means, check: (job, context) => look(job, context).map((r) => ({ rule: name, ...r })) });

export const sheetRule = (
  name: string,
  means: string,
  look: (job: Made, layout: Layout, context: Context) => readonly Remark[],
): SheetRule => ({
  name,
  means,
  check: (job, layout, context) => look(job, layout, context).map((r) => ({ rule: name, ...r })),
});
