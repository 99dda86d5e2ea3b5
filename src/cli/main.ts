#!/usr/bin/env node
import { createRequire } from "node:module";
import { Command, CommanderError } from "commander";
import type { BookWords } from "./book.ts";
import type { DieWords } from "./die.ts";
import type { GradeWords } from "./grade.ts";
import type { MakeWords } from "./make.ts";
import type { PageWords } from "./page.ts";
import type { Ending } from "./terminal.ts";

// The command line. Status: 0 done; 1 measures contradict each other or a check found an error; 2 not
// understood. Each command loads the engine only when it runs, so that help comes at once.

const { version } = createRequire(import.meta.url)("../../package.json") as { version: string };

function finish(ending: Ending): void {
  if (ending.out.length > 0) process.stdout.write(`${ending.out.join("\n")}\n`);
  if (ending.err.length > 0) process.stderr.write(`${ending.err.join("\n")}\n`);
  process.exitCode = ending.status;
}

function addMake(whittaw: Command): void {
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
    .action(async (orders: string[], words: MakeWords) => {
      const { makeFromWords } = await import("./make.ts");
      finish(await makeFromWords(orders, words));
    });
}

function addCheck(whittaw: Command): void {
  whittaw
    .command("check")
    .description("only check orders; nothing is written")
    .argument("<order...>", "order files")
    .option("--json", "report for a program")
    .action(async (orders: string[], o: { json?: boolean }) => {
      const { make } = await import("./make.ts");
      finish(await make(orders, { json: o.json ?? false }));
    });
}

function addExplain(whittaw: Command): void {
  whittaw
    .command("explain")
    .description("say how each size of a piece came about")
    .argument("<order>", "order file")
    .argument("[piece]", "one piece, e.g. cheek, or its die: die-cheek; left out: the whole article")
    .action(async (order: string, piece?: string) => {
      const { explain } = await import("./explain.ts");
      finish(explain(order, piece));
    });
}

function addDie(whittaw: Command): void {
  whittaw
    .command("die")
    .description("write drawings and files for ordering steel cutting dies")
    .argument("<order>", "order file")
    .argument("[piece...]", "pieces, e.g. cheek; left out: says which there are")
    .option("--out <dir>", "folder that gets one folder for each order", "out")
    .option("--paper <name>", "letter, legal, tabloid, a4, a3, or a roll: 'roll 610 mm'")
    .option("--rule-edge", "also both faces of the rule in the DXF, in a layer of their own")
    .option("--nest", "also two of each piece on one board")
    .option("--no-inside-first", "let a plotter cut the outline before what lies inside")
    .option("--even-so", "write dies that have errors, stamped so")
    .option("--replace", "replace drawings of the same revision that are not out yet")
    .option("--json", "report for a program")
    // What is no option of this command may be a setting of the order: it is told so.
    .allowUnknownOption()
    .action(async (order: string, pieces: string[], words: DieWords, command: Command) => {
      const typed = [order, ...pieces];
      const { isOption, noOption } = await import("./dieOption.ts");
      if (typed.some(isOption)) {
        finish(
          noOption(
            typed,
            command.options.map((o) => o.long ?? ""),
          ),
        );
        return;
      }
      const { die } = await import("./die.ts");
      finish(await die(order, pieces, words));
    });
}

function addBegin(whittaw: Command): void {
  whittaw
    .command("begin")
    .description("write a new order file with every value explained")
    .argument("<article>", "one-ear-headstall, strap or bag; or shop, for a new shop file")
    .option("--to <file>", "the order file to write; left out: print it")
    .option("--sheet", "also write a measuring sheet to print and fill in")
    .option("--paper <name>", "paper of the measuring sheet", "letter")
    .action(async (article: string, o: { to?: string; sheet?: boolean; paper?: string }) => {
      const { begin } = await import("./begin.ts");
      finish(await begin(article, o));
    });
}

function addFacts(whittaw: Command): void {
  whittaw
    .command("facts")
    .description("print the built-in tables and their sources")
    .argument("[table]", "one table; left out: the list")
    .option("--json", "for a program")
    .action(async (table: string | undefined, o: { json?: boolean }) => {
      const { facts } = await import("./facts.ts");
      finish(facts(table, o.json ?? false));
    });
}

function addCompare(whittaw: Command): void {
  whittaw
    .command("compare")
    .description("say what differs between two orders, or between an earlier job.json and today")
    .argument("<before>", "an order, or the job.json of an earlier one")
    .argument("[after]", "another; left out: the order in the job.json is made again")
    .option("--json", "for a program")
    .action(async (before: string, after: string | undefined, o: { json?: boolean }) => {
      const { compare } = await import("./compare.ts");
      finish(compare(before, after, o.json ?? false));
    });
}

function addBook(whittaw: Command): void {
  whittaw
    .command("book")
    .description("list a folder of orders: for whom, sizes, checks and price")
    .argument("<folder>", "folder with orders, and folders in it")
    .argument("[word...]", "only orders that hold every one of these words")
    .option("--csv", "as a table for a spreadsheet")
    .option("--json", "for a program")
    .action(async (folder: string, words: string[], o: BookWords) => {
      const { book } = await import("./book.ts");
      finish(book(folder, words, o));
    });
}

function addGrade(whittaw: Command): void {
  whittaw
    .command("grade")
    .description("make one order in several sizes and print what differs between them")
    .argument("<order>", "order file")
    .option("--sizes <names>", "sizes, parted by commas; left out: all of them")
    .option("--csv", "as a table for a spreadsheet")
    .option("--json", "for a program")
    .action(async (order: string, o: GradeWords) => {
      const { gradeOrder } = await import("./grade.ts");
      finish(gradeOrder(order, o));
    });
}

function addPage(whittaw: Command): void {
  whittaw
    .command("page")
    .description("serve the page for the browser on this machine, and open it")
    .option("--no-open", "only serve it")
    .action(async (o: PageWords) => {
      const { page } = await import("./page.ts");
      finish(await page(o));
    });
}

const COMMANDS = [
  addMake,
  addCheck,
  addExplain,
  addDie,
  addCompare,
  addBook,
  addGrade,
  addBegin,
  addFacts,
  addPage,
];

function program(): Command {
  const whittaw = new Command("whittaw")
    .description("Measures in, true-scale cutting templates out, for a saddler's bench.")
    .version(version)
    .exitOverride()
    .showHelpAfterError("(whittaw --help lists the commands)");
  for (const add of COMMANDS) add(whittaw);
  return whittaw;
}

try {
  await program().parseAsync();
} catch (e) {
  if (!(e instanceof CommanderError)) throw e;
  // Help and version come as errors of their own that mean no harm.
  process.exitCode = e.exitCode === 0 ? 0 : 2;
}
