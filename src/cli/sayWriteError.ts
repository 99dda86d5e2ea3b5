const WHY: Readonly<Record<string, string>> = {
  EACCES: "you may not write there",
  EPERM: "you may not write there",
  ENOENT: "its folder is not there or can't be made",
  ENOTDIR: "a file stands where a folder is needed",
  EEXIST: "something of that name is there already",
  EISDIR: "a folder stands where a file is to be written",
  EROFS: "that disk can only be read",
  ENOSPC: "the disk is full",
};

/** Why something can't be written, in words; the system's own where there are none. */
export function sayWriteError(what: string, e: unknown, mend: string): string {
  const code = (e as NodeJS.ErrnoException).code;
  const why = (code === undefined ? undefined : WHY[code]) ?? code ?? String(e);
  return `${what} can't be written: ${why}. To mend: ${mend}`;
}
