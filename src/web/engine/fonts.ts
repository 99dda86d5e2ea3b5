import regular from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed.ttf?url";
import bold from "dejavu-fonts-ttf/ttf/DejaVuSansCondensed-Bold.ttf?url";
import type { Fonts } from "../../job.ts";

async function bytesOf(url: string): Promise<Uint8Array> {
  const answer = await fetch(url).catch(() => undefined);
  if (!answer?.ok)
    throw new Error(
      "The letters for the files could not be loaded. To mend: open the page once with its server or network at hand, then try again",
    );
  return new Uint8Array(await answer.arrayBuffer());
}

let read: Promise<Fonts> | undefined;

/** The fonts that are embedded in every PDF, fetched when the first one is made. */
export function fonts(): Promise<Fonts> {
  read ??= Promise.all([bytesOf(regular), bytesOf(bold)]).then(([font, heavy]) => ({ font, bold: heavy }));
  // Tried again by the next call, should it have failed.
  read.catch(() => {
    read = undefined;
  });
  return read;
}
