import { fileURLToPath } from "node:url";

/** The checkout's root, without a trailing slash. */
export const root = fileURLToPath(new URL("..", import.meta.url)).replace(/[\\/]$/, "");

/** npm moves to the package's root before it runs a script; file names on a command line are meant from where the person stood. */
export function enterCallersFolder() {
  const { INIT_CWD: callersFolder, npm_lifecycle_event: event } = process.env;
  if (callersFolder !== undefined && event === "pintle") process.chdir(callersFolder);
}
