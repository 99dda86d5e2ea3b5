/** A slow device may take this long to begin writing; then the bytes are let go. */
const KEPT_MS = 20_000;

/** Hands a file to the person, as the browser saves files. */
export function download(
  name: string,
  bytes: Uint8Array<ArrayBuffer> | string,
  type = "application/octet-stream",
): void {
  const url = URL.createObjectURL(new Blob([bytes], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), KEPT_MS);
}
