import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { sampleJob } from "../testing/sample-job.ts";
import { freshFolder, pintle } from "./run-pintle.ts";

test("[I15] convert prints the whole job, unknown keys kept and told", () => {
  const folder = freshFolder({ "a.json": sampleJob((job) => (job.nickname = "old gate")) });
  const { code, out, err } = pintle(["convert", "a.json"], { folder });
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual(JSON.parse(readFileSync(join(folder, "a.json"), "utf8")));
  expect(err).toBe("a.json: nickname: a key that this version does not know; kept\n");
});

test("[I15] convert changes what people read, not what is stored", () => {
  const { code, out } = pintle(["convert", "-", "--display", "us"], {
    folder: freshFolder(),
    input: sampleJob(),
  });
  expect(code).toBe(0);
  expect(JSON.parse(out)).toEqual({ ...JSON.parse(sampleJob()), display: "us" });
});

test("[I16] a file that is there is kept unless --force says otherwise; no other file appears", () => {
  const folder = freshFolder({ "a.json": sampleJob(), "b.json": "mine" });
  const words = ["convert", "a.json", "--out", "b.json"];
  const kept = pintle(words, { folder });
  expect(kept).toEqual({
    code: 2,
    out: "",
    err: "b.json: not written: a file of that name is there already; --force replaces it\n",
  });
  expect(readFileSync(join(folder, "b.json"), "utf8")).toBe("mine");
  expect(pintle([...words, "--force"], { folder }).code).toBe(0);
  expect(JSON.parse(readFileSync(join(folder, "b.json"), "utf8"))).toEqual(JSON.parse(sampleJob()));
  expect(readdirSync(folder).sort()).toEqual(["a.json", "b.json"]);
});

test("[I16] a target in a folder that is not there, and one that is a folder", () => {
  const folder = freshFolder({ "a.json": sampleJob() });
  writeFileSync(join(folder, "plain"), "");
  const said = (out: string) => pintle(["convert", "a.json", "--force", "--out", out], { folder }).err;
  expect(said("none/b.json")).toBe("none/b.json: not written: no such file or folder\n");
  expect(said("plain/b.json")).toBe("plain/b.json: not written: part of the path is not a folder\n");
  expect(said(".")).toMatch(/^\.: not written: .+\n$/);
  expect(readdirSync(folder).sort()).toEqual(["a.json", "plain"]);
});
