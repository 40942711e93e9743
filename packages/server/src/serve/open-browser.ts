import { spawn } from "node:child_process";

const commands: Readonly<Partial<Record<NodeJS.Platform, readonly string[]>>> = {
  darwin: ["open"],
  win32: ["rundll32", "url.dll,FileProtocolHandler"],
};

/**
 * Opens an address in the user's browser. Where there is none nothing happens: the address is printed as well.
 * While the browser starts, other users of the machine can read the address in the list of processes.
 */
export function openBrowser(address: string): void {
  const [command, ...args] = commands[process.platform] ?? ["xdg-open"];
  const child = spawn(command!, [...args, address], { detached: true, stdio: "ignore" });
  child.on("error", () => undefined);
  child.unref();
}
