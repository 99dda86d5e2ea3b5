import { spawn } from "node:child_process";

const COMMANDS: Readonly<Record<string, readonly string[]>> = {
  darwin: ["open"],
  win32: ["rundll32", "url.dll,FileProtocolHandler"],
};

/** Opens an address in the maker's own browser; false when this machine has no way to. */
export function openBrowser(url: string): Promise<boolean> {
  const [command, ...words] = COMMANDS[process.platform] ?? ["xdg-open"];
  const child = spawn(command!, [...words, url], { stdio: "ignore", detached: true });
  child.unref();
  return new Promise((resolve) => {
    child.once("error", () => resolve(false));
    child.once("spawn", () => resolve(true));
  });
}
