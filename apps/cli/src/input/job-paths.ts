import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";

/** Folders stand for the `.json` files right inside them, by name; everything else passes as it is. */
export async function jobPaths(paths: readonly string[]): Promise<string[]> {
  const groups = await Promise.all(paths.map(oneOrMany));
  return groups.flat();
}

async function oneOrMany(path: string): Promise<string[]> {
  if (path === "-") return [path];
  // What cannot be looked at is kept, so that reading it later says why.
  const isFolder = await stat(path).then(
    (found) => found.isDirectory(),
    () => false,
  );
  if (!isFolder) return [path];
  const names = await readdir(path).catch(() => null);
  if (names === null) return [path];
  return names
    .filter((name) => name.endsWith(".json") && !name.startsWith("."))
    .sort()
    .map((name) => join(path, name));
}
