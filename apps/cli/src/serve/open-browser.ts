import { spawn } from "node:child_process";

/** Opens an address in the browser of the person at this machine; quietly nothing where there is no screen. */
export function openBrowser(address: string): void {
  const { platform, env } = process;
  const hasScreen = platform !== "linux" || env.DISPLAY !== undefined || env.WAYLAND_DISPLAY !== undefined;
  if (!hasScreen || env.CI !== undefined) return;
  const [program, ...words] =
    platform === "darwin" ? ["open"] : platform === "win32" ? ["cmd", "/c", "start", ""] : ["xdg-open"];
  const child = spawn(program ?? "", [...words, address], { stdio: "ignore", detached: true });
  // Without such a program the printed address is all there is.
  child.on("error", () => {});
  child.unref();
}
