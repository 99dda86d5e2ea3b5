#!/usr/bin/env node
import { Command, CommanderError } from "commander";
import { ENGINE_VERSION, readPaper } from "../job.ts";
import { begin } from "./begin.ts";
import { explain } from "./explain.ts";
import { facts } from "./facts.ts";
import { type MakeOptions, make } from "./make.ts";
import { type Ending, refused } from "./terminal.ts";

// The command line. Status: 0 done; 1 measures contradict each other or a check found an error; 2 not understood.

type PaperWords = { readonly paper?: string; readonly printed?: string; readonly endsOnly?: boolean };

/** Reads the words about paper and printer; each fault in a sentence. */
function paperOptions(
  words: PaperWords,
):
  | { readonly ok: true; readonly options: Partial<MakeOptions> }
  | { readonly ok: false; readonly message: string } {
  const paper = words.paper === undefined ? undefined : readPaper(words.paper);
  if (paper && !paper.ok)
    return {
      ok: false,
      message: `--paper: ${paper.problem}; allowed: ${paper.allowed}. To mend: ${paper.mend}`,
    };
  const ends = words.endsOnly ? { endsOnly: true } : {};
  return {
    ok: true,
    options: {
      ...(paper ? { paper: paper.paper } : {}),
      ...(words.printed === undefined ? {} : { printed: words.printed }),
      ...ends,
    },
  };
}

function finish(ending: Ending): void {
  if (ending.out.length > 0) process.stdout.write(`${ending.out.join("\n")}\n`);
  if (ending.err.length > 0) process.stderr.write(`${ending.err.join("\n")}\n`);
  process.exitCode = ending.status;
}

function program(): Command {
  const whittaw = new Command("whittaw")
    .description("Measures in, true-scale cutting templates out, for a saddler's bench.")
    .version(ENGINE_VERSION)
    .exitOverride()
    .showHelpAfterError("(whittaw --help lists the commands)");
  whittaw
    .command("make")
    .description("make templates from orders")
    .argument("<order...>", "order files")
    .option("--out <dir>", "folder that gets one folder for each order", "out")
    .option("--paper <name>", "letter, legal, tabloid, a4, a3, or a roll: 'roll 610 mm'")
    .option("--printed <width x height>", "what the bars of the printer check measured, in mm: 179.2x239.5")
    .option("--ends-only", "print straight straps as two ends with a break")
    .option("--even-so", "write templates that have errors, stamped so")
    .option("--json", "report for a program")
    .action(async (orders: string[], o: PaperWords & { out: string; evenSo?: boolean; json?: boolean }) => {
      const read = paperOptions(o);
      finish(
        read.ok
          ? await make(orders, {
              ...read.options,
              out: o.out,
              evenSo: o.evenSo ?? false,
              json: o.json ?? false,
            })
          : refused(read.message),
      );
    });
  whittaw
    .command("check")
    .description("only check orders; nothing is written")
    .argument("<order...>", "order files")
    .option("--json", "report for a program")
    .action(async (orders: string[], o: { json?: boolean }) =>
      finish(await make(orders, { json: o.json ?? false })),
    );
  whittaw
    .command("explain")
    .description("say how each size of a piece came about")
    .argument("<order>", "order file")
    .argument("[piece]", "one piece, e.g. cheek; left out: the whole article")
    .action((order: string, piece?: string) => finish(explain(order, piece)));
  whittaw
    .command("begin")
    .description("write a new order file with every value explained")
    .argument("<article>", "one-ear-headstall or strap")
    .option("--to <file>", "the order file to write; left out: print it")
    .option("--sheet", "also write a measuring sheet to print and fill in")
    .option("--paper <name>", "paper of the measuring sheet", "letter")
    .action(async (article: string, o: { to?: string; sheet?: boolean; paper?: string }) =>
      finish(await begin(article, o)),
    );
  whittaw
    .command("facts")
    .description("print the built-in tables and their sources")
    .argument("[table]", "one table; left out: the list")
    .option("--json", "for a program")
    .action((table: string | undefined, o: { json?: boolean }) => finish(facts(table, o.json ?? false)));
  return whittaw;
}

try {
  await program().parseAsync();
} catch (e) {
  if (!(e instanceof CommanderError)) throw e;
  // Help and version come as errors of their own that mean no harm.
  process.exitCode = e.exitCode === 0 ? 0 : 2;
}
