import { createReadStream } from "node:fs";
import { readFile, realpath, stat } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { extname, join, resolve, sep } from "node:path";

const kinds: Readonly<Record<string, string>> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".webmanifest": "application/manifest+json",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".woff2": "font/woff2",
  ".ttf": "font/ttf",
};

/** The page's own policy, as its first meta element states it; what only a header can say is added. */
export function policyOf(page: string): string {
  const stated = /<meta http-equiv="Content-Security-Policy" content="([^"]*)"/.exec(page)?.[1];
  const policy = stated?.replaceAll("&#39;", "'").replaceAll("&quot;", '"') ?? "default-src 'self'";
  return `${policy}; frame-ancestors 'none'`;
}

/**
 * The file below `folder` that an address asks for; null when it asks for anything else. No address leads out of the
 * folder: not by dots, not by encoded ones, not through a link.
 */
export async function fileFor(folder: string, address: string): Promise<string | null> {
  let path: string;
  try {
    path = decodeURIComponent(new URL(address, "http://pintle.invalid").pathname);
  } catch {
    return null;
  }
  if (path.includes("\0") || path.includes("\\")) return null;
  const wanted = resolve(folder, `.${path.endsWith("/") ? `${path}index.html` : path}`);
  try {
    const [real, root] = [await realpath(wanted), await realpath(folder)];
    if (!real.startsWith(root + sep)) return null;
    return (await stat(real)).isFile() ? real : null;
  } catch {
    return null;
  }
}

/** Serves the built workbench, and nothing else, to whoever may reach the address. */
export async function createStaticServer(folder: string): Promise<Server> {
  const policy = policyOf(await readFile(join(folder, "index.html"), "utf8"));
  return createServer((request, response) => {
    void answer(folder, policy, request, response);
  });
}

async function answer(
  folder: string,
  policy: string,
  request: IncomingMessage,
  response: ServerResponse,
): Promise<void> {
  response.setHeader("Content-Security-Policy", policy);
  response.setHeader("X-Content-Type-Options", "nosniff");
  response.setHeader("Referrer-Policy", "no-referrer");
  response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
  if (request.method !== "GET" && request.method !== "HEAD") {
    response.writeHead(405, { Allow: "GET, HEAD" }).end();
    return;
  }
  const file = await fileFor(folder, request.url ?? "/");
  if (file === null) {
    response.writeHead(404, { "Content-Type": "text/plain; charset=utf-8" }).end("There is nothing here.\n");
    return;
  }
  response.setHeader("Content-Type", kinds[extname(file)] ?? "application/octet-stream");
  // Files under assets/ carry a hash of their content in their name.
  const isHashed = file.startsWith(join(await realpath(folder), "assets") + sep);
  response.setHeader("Cache-Control", isHashed ? "public, max-age=31536000, immutable" : "no-cache");
  response.writeHead(200);
  if (request.method === "HEAD") {
    response.end();
    return;
  }
  createReadStream(file)
    .on("error", () => response.destroy())
    .pipe(response);
}
