// Writes what the repository publishes and the program makes: the schemas for editors and other programs,
// and the README's pictures. The tests compare them with what the program makes today.
import { mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import {
  articles,
  jobFiles,
  jobJsonSchema,
  makeJob,
  orderJsonSchema,
  shopJsonSchema,
} from "../../dist/job.js";

const require = createRequire(import.meta.url);
const font = (name) => new Uint8Array(readFileSync(require.resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));

export async function published() {
  const json = (value) => `${JSON.stringify(value, null, 2)}\n`;
  const schemas = articles.map((a) => [`templates/schemas/${a.slug}.schema.json`, json(orderJsonSchema(a))]);
  const juniper = await drawings("juniper-headstall", ["cheek"]);
  const wren = await drawings("wren-flap-purse", ["front", "back", "gusset"]);
  return [
    ...schemas,
    ["templates/schemas/shop.schema.json", json(shopJsonSchema())],
    ["templates/schemas/job.schema.json", json(jobJsonSchema())],
    ...juniper,
    ...wren,
  ];
}

/** Drawings of a template's pieces, as `fixtures/pictures/<customer>-<piece>.svg`. */
async function drawings(order, pieces) {
  const result = makeJob(readFileSync(`templates/${order}.yaml`, "utf8"), `${order}.yaml`);
  if (!result.made) throw new Error(`${order} can't be made`);
  const files = await jobFiles(result.job, {
    font: font("DejaVuSansCondensed"),
    bold: font("DejaVuSansCondensed-Bold"),
  });
  const [customer] = order.split("-");
  return pieces.map((piece) => [
    `fixtures/pictures/${customer}-${piece}.svg`,
    files.find((f) => f.path === `pieces/${piece}.svg`).data,
  ]);
}

if (process.argv[1].endsWith("publish.mjs")) {
  for (const [path, text] of await published()) {
    mkdirSync(path.split("/").slice(0, -1).join("/"), { recursive: true });
    writeFileSync(path, text);
    console.log(`wrote ${path}`);
  }
}
