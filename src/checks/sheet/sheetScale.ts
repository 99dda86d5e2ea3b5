import type { Layout, Sheet } from "../../model/sheet.ts";
import { SAFE_MARGIN_MM } from "../../trade/paper.ts";
import { MARGIN } from "../measure/dimensions.ts";
import { BAD_SHEETS, say, sayLength, sayShare } from "../measure/words.ts";
import { type Context, type Remark, sheetRule } from "../rule.ts";

/** A printer strays less than this; more, and the viewer has scaled the page. */
export const LARGEST_STRAY = 0.03;
/** Page measures agree within this. */
const PAGE_MM = 0.01;

type About = { readonly layout: Layout; readonly context: Context };

const fault = (place: string, message: string, value: string, limit: string, mend = BAD_SHEETS): Remark => ({
  severity: "error",
  piece: "",
  place,
  message,
  value,
  limit,
  mend,
});

function factorStrays({ layout }: About): readonly Remark[] {
  return (["x", "y"] as const).flatMap((axis) => {
    const off = Math.abs(layout.factor[axis] - 1);
    if (off <= LARGEST_STRAY) return [];
    const edge = axis === "x" ? "short" : "long";
    return [
      fault(
        "printer",
        `Along the paper's ${edge} edge the print is ${sayShare(off)} off its size: the viewer has scaled the page.`,
        sayShare(off),
        `at most ${sayShare(LARGEST_STRAY)}`,
        "Print again at actual size (100 %), measure the bars and give --printed anew.",
      ),
    ];
  });
}

/** The page is the paper, upright or on its side; a roll's page ends where its drawing does. */
function otherPaper(sheet: Sheet, { layout, context }: About): readonly Remark[] {
  const { paper } = layout;
  const [width, height] =
    sheet.landscape && !paper.roll ? [paper.height, paper.width] : [paper.width, paper.height];
  const fits =
    Math.abs(sheet.page.width - width) <= PAGE_MM &&
    (paper.roll ? sheet.page.height <= height + PAGE_MM : Math.abs(sheet.page.height - height) <= PAGE_MM);
  if (fits) return [];
  const size = (w: number, h: number): string => `${sayLength(w, context)} × ${sayLength(h, context)}`;
  return [
    fault(
      `sheet ${sheet.name}`,
      `The page of sheet ${sheet.name} is not a page of ${paper.name}.`,
      size(sheet.page.width, sheet.page.height),
      size(width, height),
    ),
  ];
}

/** What a sheet shows is sent as millimetres ÷ factor; sent and printed it lies between the margins. */
function runsOver(sheet: Sheet, { layout, context }: About): readonly Remark[] {
  const { window, page, origin, name } = sheet;
  const { margin, factor } = layout;
  const scale = sheet.landscape ? [factor.y, factor.x] : [factor.x, factor.y];
  const shown = [window.maxX - window.minX, window.maxY - window.minY];
  const pages = [page.width, page.height];
  return (["width", "height"] as const).flatMap((way, i) => {
    const [show, whole, from] = [shown[i]!, pages[i]!, origin[i]!];
    const sent = show / scale[i]!;
    if (!(show > 0))
      return [
        fault(
          `sheet ${name}`,
          `Sheet ${name} shows a part of no ${way}.`,
          sayLength(show, context),
          "more than nothing",
        ),
      ];
    const room = whole - 2 * margin;
    const inside =
      from >= margin - PAGE_MM && from + sent <= whole - margin + PAGE_MM && show <= room + PAGE_MM;
    if (inside) return [];
    return [
      fault(
        `sheet ${name}`,
        `Sheet ${name} shows ${sayLength(show, context)} in its ${way}, from ${sayLength(from, context)} on the page: more than the ${sayLength(room, context)} between its margins.`,
        sayLength(Math.max(sent, show), context),
        `at most ${sayLength(room, context)}`,
      ),
    ];
  });
}

function narrowMargin({ layout, context }: About): readonly Remark[] {
  if (layout.margin >= SAFE_MARGIN_MM - PAGE_MM) return [];
  const [is, safe] = [say(layout.margin, "length", context), say(SAFE_MARGIN_MM, "length", context)];
  return [
    {
      severity: "caution",
      piece: "",
      place: "margin",
      message: `The margin is ${is}; many printers cut off what lies nearer the edge than ${safe}.`,
      value: is,
      limit: `at least ${safe}`,
      mend: `Set a wider margin (${MARGIN}).`,
    },
  ];
}

/** Every sheet prints true size within the margins of its paper, the printer's correction counted. */
export const sheetScale = sheetRule(
  "sheet-scale",
  "every sheet prints at true size within its paper's margins",
  (_, layout, context) => {
    const about = { layout, context };
    const sheets = layout.sheets.flatMap((sheet) => [...otherPaper(sheet, about), ...runsOver(sheet, about)]);
    return [...factorStrays(about), ...narrowMargin(about), ...sheets];
  },
);
