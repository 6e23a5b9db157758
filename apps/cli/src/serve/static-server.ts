import { readFile, realpath, stat } from "node:fs/promises";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import { extname, join, resolve, sep } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

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

const brotli = promisify(brotliCompress);
const zip = promisify(gzip);
const compressible = new Set([".html", ".js", ".css", ".json", ".webmanifest", ".svg"]);

/** What is sent for a file; compressed once for each coding and kept. The built files are few and small. */
interface Sent {
  readonly body: Buffer;
  readonly coding: "br" | "gzip" | null;
}

/** Which coding a request takes; quality values of 0 are so rare here that naming one is taken as asking for it. */
function codingFor(file: string, accepted: string | undefined): Sent["coding"] {
  if (!compressible.has(extname(file))) return null;
  if (/\bbr\b/.test(accepted ?? "")) return "br";
  return /\bgzip\b/.test(accepted ?? "") ? "gzip" : null;
}

async function compressed(body: Buffer, coding: Sent["coding"]): Promise<Buffer> {
  if (coding === null) return body;
  // Quality 9 gives nearly all that 11 does, in a tenth of the time.
  return coding === "br" ? brotli(body, { params: { [constants.BROTLI_PARAM_QUALITY]: 9 } }) : zip(body);
}

/** Serves the built workbench, and nothing else, to whoever may reach the address. */
export async function createStaticServer(folder: string): Promise<Server> {
  const policy = policyOf(await readFile(join(folder, "index.html"), "utf8"));
  const kept = new Map<string, Promise<Buffer>>();
  const read = async (file: string, accepted: string | undefined): Promise<Sent> => {
    const coding = codingFor(file, accepted);
    const key = `${file} ${coding} ${(await stat(file)).mtimeMs}`;
    const body = kept.get(key) ?? readFile(file).then((bytes) => compressed(bytes, coding));
    kept.set(key, body);
    return { body: await body, coding };
  };
  return createServer((request, response) => {
    answer(folder, policy, read, request, response).catch(() => response.destroy());
  });
}

async function answer(
  folder: string,
  policy: string,
  read: (file: string, accepted: string | undefined) => Promise<Sent>,
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
  const { body, coding } = await read(file, request.headers["accept-encoding"]);
  response.setHeader("Vary", "Accept-Encoding");
  if (coding !== null) response.setHeader("Content-Encoding", coding);
  response.setHeader("Content-Length", body.length);
  response.writeHead(200);
  response.end(request.method === "HEAD" ? undefined : body);
}
