import { spawn } from "node:child_process";
import { readdirSync } from "node:fs";
import { setTimeout as wait } from "node:timers/promises";
import { expect, test } from "vitest";
import { example } from "../testing/examples.ts";
import { bundle, freshFolder } from "./run-pintle.ts";

// A map that takes minutes; whenever Ctrl-C comes, the program must be gone and have written nothing.
test.each([["1"], ["2"]])(
  "[I15] Ctrl-C ends a long search at once, with %s workers, and leaves nothing behind",
  async (workers) => {
    const folder = freshFolder();
    const words = [
      "place",
      example("harrow-farm"),
      "--map",
      "200x200",
      "--out",
      "a.json",
      "--workers",
      workers,
    ];
    const child = spawn(process.execPath, [bundle, ...words], {
      cwd: folder,
      stdio: ["ignore", "pipe", "pipe"],
    });
    let out = "";
    child.stdout.on("data", (text) => (out += text));
    const ended = new Promise((resolve) => child.on("close", (code, signal) => resolve({ code, signal })));
    await wait(700);
    child.kill("SIGINT");
    expect(await ended).toEqual({ code: null, signal: "SIGINT" });
    expect(out).toBe("");
    expect(readdirSync(folder)).toEqual([]);
  },
  30_000,
);
