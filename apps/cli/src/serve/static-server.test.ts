import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from "node:fs";
import type { AddressInfo } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { createStaticServer, fileFor, policyOf } from "./static-server.ts";

let outer: string;
let folder: string;
const page = `<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src 'self'"><p>page</p>`;

beforeAll(() => {
  outer = mkdtempSync(join(tmpdir(), "pintle-serve-"));
  folder = join(outer, "web");
  mkdirSync(join(folder, "assets"), { recursive: true });
  writeFileSync(join(folder, "index.html"), page);
  writeFileSync(join(folder, "assets", "a-123.js"), "1");
  writeFileSync(join(outer, "secret.txt"), "secret");
  mkdirSync(join(outer, "web-other"));
  writeFileSync(join(outer, "web-other", "x.txt"), "other");
  symlinkSync(join(outer, "secret.txt"), join(folder, "link.txt"));
});
afterAll(() => rmSync(outer, { recursive: true, force: true }));

describe("pintle serve", () => {
  test("[I15] finds the files of the workbench and the page itself", async () => {
    expect(await fileFor(folder, "/")).toMatch(/index\.html$/);
    expect(await fileFor(folder, "/assets/a-123.js?v=1")).toMatch(/a-123\.js$/);
    expect(await fileFor(folder, "/assets")).toBe(null);
    expect(await fileFor(folder, "/absent.js")).toBe(null);
  });

  test("[I15] no address leads out of the folder", async () => {
    const tries = [
      "/../secret.txt",
      "/%2e%2e/secret.txt",
      "/..%2fsecret.txt",
      "/assets/..%2f..%2fsecret.txt",
      "/..\\secret.txt",
      "/..%5csecret.txt",
      "/link.txt",
      "/../web-other/x.txt",
      "/..%2fweb-other%2fx.txt",
      "/%00",
      "/%E0%A4%A",
    ];
    for (const address of tries) expect(await fileFor(folder, address), address).toBe(null);
  });

  test("[I15] answers with the page's policy, and only to reading", async () => {
    const server = await createStaticServer(folder);
    await new Promise<void>((ready) => server.listen(0, "127.0.0.1", ready));
    const { port } = server.address() as AddressInfo;
    const got = await fetch(`http://127.0.0.1:${port}/`);
    expect(await got.text()).toBe(page);
    expect(got.headers.get("content-security-policy")).toBe(
      "default-src 'none'; script-src 'self'; frame-ancestors 'none'",
    );
    expect(got.headers.get("cache-control")).toBe("no-cache");
    const posted = await fetch(`http://127.0.0.1:${port}/`, { method: "POST" });
    expect(posted.status).toBe(405);
    expect((await fetch(`http://127.0.0.1:${port}/absent`)).status).toBe(404);
    await new Promise((closed) => server.close(closed));
  });

  test("a page without a policy gets one that trusts only its own address", () => {
    expect(policyOf("<p>")).toBe("default-src 'self'; frame-ancestors 'none'");
  });
});
