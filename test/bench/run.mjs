// Timings as ratios against something measured in the same run; nothing is asserted. Medians of repeated runs.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { PDFDocument } from "pdfkit";
import { toBytes } from "pdfkit/output";
import { chromium } from "playwright-core";
import { servePage } from "../../dist/cli/servePage.js";
import { jobFiles, makeJob, pageAnswer } from "../../dist/job.js";
import { chromiumPath } from "../tools/chromium.mjs";

const require = createRequire(import.meta.url);
const read = (name) => new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));
const fonts = { font: read("DejaVuSansCondensed"), bold: read("DejaVuSansCondensed-Bold") };
const text = readFileSync("templates/juniper-headstall.yaml", "utf8");

const median = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];

async function timed(runs, work) {
  await work();
  const times = [];
  for (let i = 0; i < runs; i++) {
    const start = performance.now();
    await work();
    times.push(performance.now() - start);
  }
  return median(times);
}

/** The template's drawing operators, written by pdfkit alone: what the same strokes cost without us. */
function operatorsOf(pdf) {
  const raw = new TextDecoder("latin1").decode(pdf);
  return [...raw.matchAll(/stream\n([\s\S]*?)\nendstream/g)]
    .map((m) => m[1])
    .filter((s) => / [ml]\n/.test(s));
}

async function rawPdfkit(pages) {
  const doc = new PDFDocument({ compress: false, autoFirstPage: false, font: null });
  doc.registerFont("regular", fonts.font);
  doc.registerFont("bold", fonts.bold);
  const bytes = toBytes(doc);
  for (const operators of pages) {
    doc.addPage({ size: [612, 792], margin: 0, font: "regular" });
    for (const line of operators.split("\n")) {
      const n = line.split(" ");
      const op = n.pop();
      if (op === "m") doc.moveTo(+n[0], +n[1]);
      else if (op === "l") doc.lineTo(+n[0], +n[1]);
      else if (op === "c") doc.bezierCurveTo(...n.map(Number));
      else if (op === "S") doc.stroke();
      else if (op === "TJ")
        doc.font("regular").fontSize(8).text("Strap leather, 9 oz", 50, 50, { lineBreak: false });
    }
  }
  doc.end();
  return bytes;
}

const FRAME_MS = 16;
const engine = await timed(40, () => makeJob(text, "juniper.yaml"));
console.log(
  `making a headstall (order to checked layout): ${engine.toFixed(1)} ms, ${(engine / FRAME_MS).toFixed(2)} of a frame of ${FRAME_MS} ms`,
);

const { job } = makeJob(text, "juniper.yaml");
const files = await timed(10, () => jobFiles(job, fonts));
console.log(`drawing and writing its files: ${files.toFixed(0)} ms`);
const made = await jobFiles(job, fonts);
const pages = operatorsOf(made.find((f) => f.path.startsWith("template")).data);
const raw = await timed(10, () => rawPdfkit(pages));
console.log(
  `the same strokes by pdfkit alone: ${raw.toFixed(0)} ms; ours takes ${(files / raw).toFixed(1)} times as long, with two PDFs, the SVGs, the labels' places and job.json`,
);

const start = (args) => {
  const began = performance.now();
  spawnSync(process.execPath, args, { stdio: "ignore" });
  return performance.now() - began;
};
const repeated = (args) => median(Array.from({ length: 7 }, () => start(args)));
const bare = repeated(["-e", "0"]);
const help = repeated(["dist/cli/main.js", "--help"]);
const check = repeated(["dist/cli/main.js", "check", "templates/juniper-headstall.yaml"]);
console.log(
  `start-up: whittaw --help ${(help / bare).toFixed(1)} times bare node (${help.toFixed(0)} and ${bare.toFixed(0)} ms); whittaw check of one order ${(check / bare).toFixed(1)} times`,
);

for (const order of ["juniper-headstall", "wren-flap-purse"]) {
  const words = readFileSync(`templates/${order}.yaml`, "utf8");
  const look = await timed(40, () => pageAnswer(words, `${order}.yaml`));
  console.log(
    `the page's view of ${order} after a keystroke: ${look.toFixed(1)} ms, ${(look / FRAME_MS).toFixed(2)} of a frame of ${FRAME_MS} ms`,
  );
}

/** What a first page of an empty browser costs, to tell the page's own time from the machine's, ms. */
async function pageStart() {
  const executablePath = chromiumPath();
  if (executablePath === undefined) return "no Chromium is installed, so the page's start was not measured";
  const server = await servePage("dist/page", 0);
  const url = `http://127.0.0.1:${server.address().port}/`;
  const browser = await chromium.launch({
    executablePath,
    args: ["--no-sandbox", "--disable-gpu", "--disable-quic", "--disable-background-networking"],
  });
  const opened = async (address, ready) => {
    const context = await browser.newContext();
    const page = await context.newPage();
    const began = performance.now();
    await page.goto(address);
    await page.waitForSelector(ready);
    const took = performance.now() - began;
    await context.close();
    return took;
  };
  const several = async (address, ready) => {
    const times = [];
    for (let i = 0; i < 5; i++) times.push(await opened(address, ready));
    return median(times);
  };
  const bare = await several("data:text/html,<button>bare</button>", "button");
  const usable = await several(url, "main button:enabled");
  await browser.close();
  server.close();
  server.closeAllConnections();
  return `the page, from nothing to its first button: ${usable.toFixed(0)} ms, ${(usable / bare).toFixed(1)} times a page of one button (${bare.toFixed(0)} ms)`;
}
console.log(await pageStart());
