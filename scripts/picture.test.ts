import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { demoJob, pictureFile, pictureOf } from "./picture.ts";

test("docs/picture.svg is what the demo job looks like (npx tsx scripts/picture.ts draws it anew)", () => {
  expect(readFileSync(pictureFile, "utf8")).toBe(pictureOf(demoJob()));
});

test("a title from a job never becomes markup", () => {
  const drawn = pictureOf({ ...demoJob(), title: '<script>&"' });
  expect(drawn).not.toContain("<script");
  expect(drawn).toContain("&#60;script&#62;&#38;&#34;");
});

test("[G1] the ram's side is down the sheet, and behind a hinge on the left is to its left", () => {
  // By hand: hinge at (388, 282), 0.52 units a millimetre, post pin 167 mm behind and 192 mm out.
  expect(pictureOf(demoJob())).toContain('<circle cx="301.16" cy="381.84" r="6.5"');
});
