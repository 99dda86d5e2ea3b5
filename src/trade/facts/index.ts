import { dieFacts } from "./dies.ts";
import { hardwareFacts } from "./hardware.ts";
import { hideFacts } from "./hides.ts";
import { bridleSizeFacts, headstallSizeFacts } from "./horses.ts";
import { leatherFacts } from "./leather.ts";
import { needleFacts } from "./needles.ts";
import { paperFacts } from "./papers.ts";
import { punchFacts } from "./punches.ts";
import { stitchFacts } from "./stitches.ts";
import type { FactTable } from "./table.ts";
import { thingFacts } from "./things.ts";
import { threadFacts } from "./threads.ts";

export {
  type FactColumn,
  type FactRow,
  type FactTable,
  type Standing,
  sayCell,
  standingOf,
} from "./table.ts";

/** The built-in tables, in the order in which `facts` lists them. */
export const factTables: readonly FactTable[] = [
  leatherFacts,
  punchFacts,
  stitchFacts,
  threadFacts,
  needleFacts,
  hardwareFacts,
  headstallSizeFacts,
  bridleSizeFacts,
  paperFacts,
  hideFacts,
  thingFacts,
  dieFacts,
];
