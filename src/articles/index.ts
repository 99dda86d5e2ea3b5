import { bag } from "./bag.ts";
import { withBench } from "./benchSections.ts";
import type { ArticleDefinition } from "./definition.ts";
import { withDie } from "./dieSection.ts";
import { headstall } from "./headstall.ts";
import { plainStrap } from "./strap.ts";

/** Every article that can be ordered. */
export const articles: readonly ArticleDefinition[] = [headstall, plainStrap, bag].map((a) =>
  withDie(withBench(a)),
);
