#!/usr/bin/env node
import { createRequire } from "node:module";
import { Command, CommanderError } from "commander";
import type { DieWords } from "./die.ts";
import type { MakeWords } from "./make.ts";
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
    .argument("<piece...>", "pieces, e.g. cheek")
    .option("--out <dir>", "folder that gets one folder for each order", "out")
    .option("--paper <name>", "letter, legal, tabloid, a4, a3, or a roll: 'roll 610 mm'")
    .option("--rule-edge", "also both faces of the rule in the DXF, in a layer of their own")
    .option("--nest", "also two of each piece on one board")
    .option("--no-inside-first", "let a plotter cut the outline before what lies inside")
    .option("--even-so", "write dies that have errors, stamped so")
    .option("--json", "report for a program")
    .action(async (order: string, pieces: string[], words: DieWords) => {
      const { die } = await import("./die.ts");
      finish(await die(order, pieces, words));
    });
}

function addBegin(whittaw: Command): void {
  whittaw
    .command("begin")
    .description("write a new order file with every value explained")
    .argument("<article>", "one-ear-headstall, strap or bag")
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

function program(): Command {
  const whittaw = new Command("whittaw")
    .description("Measures in, true-scale cutting templates out, for a saddler's bench.")
    .version(version)
    .exitOverride()
    .showHelpAfterError("(whittaw --help lists the commands)");
  for (const add of [addMake, addCheck, addExplain, addDie, addBegin, addFacts]) add(whittaw);
  return whittaw;
}

try {
  await program().parseAsync();
} catch (e) {
  if (!(e instanceof CommanderError)) throw e;
  // Help and version come as errors of their own that mean no harm.
  process.exitCode = e.exitCode === 0 ? 0 : 2;
}
