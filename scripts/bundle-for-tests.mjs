import { ensureBundle } from "./bundle.mjs";

/** Tests of the command line run the bundle as a child process, exactly as people do. */
export async function setup() {
  await ensureBundle();
}
