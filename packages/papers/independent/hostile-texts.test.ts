import { describe, expect, test } from "vitest";
import { packOf } from "../src/pack.ts";
import { sampleJob } from "../src/testing/sample-jobs.ts";
import { packFonts } from "./pack-fonts.ts";
import { pdfText } from "./page-words.ts";
import { fileFor, runTool } from "./run-tool.ts";

const date = new Date("2026-03-02T00:00:00Z");

const hostile = [
  ["markup", "<script>alert(1)</script><!-- ]]> &amp; \"' -->"],
  ["an entity", "&xxe; <!DOCTYPE a [<!ENTITY xxe SYSTEM 'file:///etc/passwd'>]>"],
  ["PDF of its own", ") Tj ET endstream endobj 9 0 obj << /OpenAction << /S /JavaScript >> >> (\\"],
  ["group codes", "gate\n0\nENDSEC\n0\nEOF"],
  ["control characters", "gate\u0000\u0007\u001b[31m\u009b2J"],
  ["a turned writing direction", "gate \u202etxt.exe"],
  ["other scripts", "門 ½ ⌀ Größe 🚪"],
  ["a lone half of a character", "gate \ud83d"],
  ["a path", "../../etc/passwd"],
] as const;

async function packWith(title: string) {
  const job = sampleJob((draft) => {
    draft.title = title;
    draft.note = title;
    const oneLine = title.replace(/\p{Cc}+/gu, " ");
    draft.leaves[0].id = oneLine;
    draft.leaves[0].fixed[0].name = oneLine;
  });
  const { files } = await packOf(job, { fonts: packFonts, date });
  const find = (ending: string) => files.find(({ name }) => name.endsWith(ending))?.bytes ?? new Uint8Array();
  return { names: files.map(({ name }) => name), pdf: find(".pdf"), svg: find(".svg") };
}

const tags = (svg: string) =>
  [...new Set([...svg.matchAll(/<\/?([a-zA-Z!?][\w-]*)/g)].map((tag) => tag[1]))].sort();

describe.each(hostile)("[F10] a title with %s", (_name, title) => {
  test("leaves the PDF sound, the SVG well formed and the file names plain", async () => {
    const { names, pdf, svg } = await packWith(title);
    const path = fileFor("pack.pdf", pdf);
    // qpdf ends with 0 only when it finds neither errors nor warnings.
    expect(runTool("qpdf", ["--check", path]).toString("utf8")).toContain(
      "No syntax or stream encoding errors",
    );
    // Keys of dictionaries, in qpdf's reading; the same marks inside a text are only letters.
    expect(runTool("qpdf", ["--json", path]).toString("utf8")).not.toMatch(
      /"\/(OpenAction|JavaScript|JS|AA)":/,
    );
    const text = Buffer.from(svg).toString("utf8");
    expect(tags(text)).toEqual(["?xml", "circle", "path", "rect", "svg", "text", "title"]);
    expect(runTool("rsvg-convert", [fileFor("plan.svg", svg)]).length).toBeGreaterThan(1000);
    for (const name of names) expect(name).toMatch(/^[a-z0-9-]+\.(pdf|svg|dxf)$/);
  });
});

test("[F10] marks of markup are printed as they are, not lost", async () => {
  const { pdf } = await packWith('<b>&"gate"</b>');
  expect(pdfText(fileFor("pack.pdf", pdf))).toContain('<b>&"gate"</b>');
});
