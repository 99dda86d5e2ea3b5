// The browser in which the page is tried.
import { existsSync } from "node:fs";

const TRIED = [
  "/usr/bin/chromium",
  "/usr/bin/chromium-browser",
  "/usr/bin/google-chrome",
  "/Applications/Chromium.app/Contents/MacOS/Chromium",
  "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
  "C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe",
];

/** Its program, or undefined when none is there. */
export const chromiumPath = () => TRIED.find((path) => existsSync(path));
