import { expect, test } from "vitest";
import { packOf } from "../src/pack.ts";
import { sampleJob } from "../src/testing/sample-jobs.ts";
import { packFonts } from "./pack-fonts.ts";
import { pdfText } from "./page-words.ts";
import { fileFor, runTool } from "./run-tool.ts";

const options = { fonts: packFonts, date: new Date("2026-03-02T00:00:00Z") };
const pdfOf = async (job = sampleJob()) => (await packOf(job, options)).files[0]?.bytes ?? new Uint8Array();

test("[F10] asks the viewer to print without scaling, is tagged, and carries title and date", async () => {
  const path = fileFor("pack.pdf", await pdfOf());
  const inside = runTool("qpdf", ["--qdf", "--object-streams=disable", path, "-"]).toString("latin1");
  expect(inside).toMatch(/\/PrintScaling \/None/);
  expect(inside).not.toMatch(/\/JavaScript|\/Launch|\/EmbeddedFile/);
  const info = runTool("pdfinfo", ["-isodates", path]).toString("utf8");
  expect(info).toMatch(/Title: +Windle Farm, yard gate: papers of the placement/);
  expect(info).toMatch(/CreationDate: +2026-03-02T/);
  expect(info).toMatch(/Tagged: +yes/);
});

test("[F10] the same job and day make the same bytes", async () => {
  const [one, other] = [await packOf(sampleJob(), options), await packOf(sampleJob(), options)];
  expect(one.files.map(({ name }) => name)).toEqual(other.files.map(({ name }) => name));
  one.files.forEach(({ bytes }, index) => {
    expect(Buffer.compare(bytes, other.files[index]?.bytes ?? new Uint8Array())).toBe(0);
  });
});

test("[G17] the setting-out sheet says what the core says, in the job's units", async () => {
  const metric = pdfText(fileFor("pack.pdf", await pdfOf()));
  // 60 = 85 off the axis less the face at 25; 90 = 160 less the post's face at 70; 219.3 = hypot(150, 160).
  for (const amount of ["150 mm", "160 mm", "90 mm", "219.3 mm", "907 mm", "60 mm"])
    expect(metric).toContain(amount);
  expect(metric).toContain("Hang the ram with the leaf open");
  const us = pdfText(fileFor("pack.pdf", await pdfOf(sampleJob((job) => (job.display = "us")))));
  // 907 mm = 35.709 in, to the nearest sixteenth 2 ft 11 11/16 in; 160 mm = 6 5/16 in.
  for (const amount of [`2' 11 11/16"`, `6 5/16"`]) expect(us).toContain(amount);
});

test("[F10] every sheet to scale has both rulers; cautions come first; nothing claims more than a prediction", async () => {
  const pages = pdfText(fileFor("pack.pdf", await pdfOf()))
    .split("\f")
    .filter((page) => page.trim() !== "");
  expect(pages[0]).toContain("A moving gate can crush and kill");
  expect(pages[0]).toContain("A prediction is not a proof");
  for (const page of pages.slice(1)) {
    if (page.includes("not to scale")) continue;
    expect(page).toContain("100 mm from end to end");
    expect(page).toContain("4 in from end to end");
  }
  for (const page of pages) expect(page).toContain("Invented: the farm, its people and the ram.");
});

test("[F10] a leaf without pins gets the sheets that it can have, and a reason for the rest", async () => {
  const job = sampleJob((draft) => delete draft.leaves[0].placement);
  const { notes, files } = await packOf(job, options);
  expect(notes).toEqual(["Leaf “yard” has no setting-out sheet: this leaf has no pins yet."]);
  const text = pdfText(fileFor("pack.pdf", files[0]?.bytes ?? new Uint8Array()));
  expect(text).toContain("this leaf has no pins yet");
  expect(text).not.toContain("Template, post pin");
});

test("[G10] a placement that breaks a limit is marked on every sheet that somebody could drill by", async () => {
  // The sample keeps 32 to 33 mm to the leaf; 50 mm is asked for unless the job says otherwise.
  const failing = pdfText(fileFor("pack.pdf", await pdfOf())).split("\f");
  const drilled = failing.filter((page) => page.includes("Full size") || page.includes("Hang the ram"));
  expect(drilled.length).toBeGreaterThan(2);
  for (const page of drilled)
    expect(page).toContain("Do not drill by this sheet: clearance to the leaf fails.");
  const sound = await pdfOf(sampleJob((job) => (job.leaves[0].need.clearanceMm = 20)));
  expect(pdfText(fileFor("pack.pdf", sound))).not.toContain("Do not drill");
});
