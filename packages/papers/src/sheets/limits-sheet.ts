import { type CheckDocument, type Display, type Finding, type JobLeaf, limitName } from "@pintle/job";
import type { Drawn } from "../scene/drawn.ts";
import type { Box } from "../scene/scene.ts";
import { contentBox, type Draft, type Pack } from "./draft.ts";
import { linesHeight, textAt, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";

/** The longest bar stands for so much slack; more is cut with an arrow. */
const fullBars = {
  metric: { mm: 100, deg: 20, ratio: 1, text: "100 mm or 20°" },
  us: { mm: 101.6, deg: 20, ratio: 1, text: "4 in or 20°" },
} as const;
const rowText = 3;
const barHeight = 2.6;
/** Share of the bar's field that lies on the failing side of the limit. */
const failingShare = 0.2;

/** Every limit as a bar of slack, tightest first, the reserve in words, and what is not checked. */
export function limitsSheet(pack: Pack, leafIndex: number, checked: CheckDocument): Draft {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  const box = contentBox(pack.paper, "upright", false);
  const findings = checked.findings.filter((finding) => finding.leaf === leaf.id);
  const width = box.right - box.left;
  const reserve = findings.find((finding) => finding.id === "reserve");
  const failing = findings.some((finding) => finding.state === "fail");
  const headline = wrapText(reserve?.text ?? "No pins to judge yet.", 4.6, width, pack.measure, {
    bold: true,
  });
  let y = box.top + linesHeight(headline.length, 4.6) + 1;
  const items: Drawn[] = textLines(box.left, box.top, headline, {
    size: 4.6,
    bold: true,
    role: failing ? "limit" : "text",
  });
  const hint = `Bars show what is to spare beyond each limit; the orange mark is the limit. Full bars: ${fullBars[pack.display].text} and more. A prediction from the numbers of this job; measure before trusting it.`;
  const hints = wrapText(hint, 2.9, width, pack.measure);
  items.push(...textLines(box.left, y, hints, { size: 2.9, role: "note" }));
  y += linesHeight(hints.length, 2.9) + 3;
  for (const finding of tightestFirst(findings, pack.display)) {
    const row = limitRow(pack, finding, { ...box, top: y });
    items.push(...row.items);
    y += row.height;
  }
  items.push(...notChecked(pack, findings, { ...box, top: y + 2 }));
  return { title: "Limits", leaf, lies: "upright", denominator: null, items };
}

/** By slack over the length of a full bar, so that millimetres and degrees can be compared; failures first. */
function tightestFirst(findings: readonly Finding[], display: Display): Finding[] {
  const share = (finding: Finding) => (finding.slack ?? 0) / fullBars[display][finding.unit];
  return findings
    .filter((finding) => finding.rule === "G10" && finding.slack !== null)
    .filter((finding) => finding.state === "pass" || finding.state === "fail")
    .sort((a, b) => share(a) - share(b));
}

function limitRow(pack: Pack, finding: Finding, box: Box): { items: Drawn[]; height: number } {
  const name = limitName(finding.id);
  const barLeft = box.left + 62;
  const field = box.right - barLeft;
  const zero = barLeft + failingShare * field;
  const share = (finding.slack ?? 0) / fullBars[pack.display][finding.unit];
  // One scale on both sides of the limit.
  const reach = Math.max(-failingShare, Math.min(1, share) * (1 - failingShare));
  const end = zero + reach * field;
  const fails = finding.state === "fail";
  const words = wrapText(withoutName(finding.text, name), 2.7, box.right - barLeft, pack.measure);
  const names = wrapText(name.charAt(0).toUpperCase() + name.slice(1), rowText, 58, pack.measure, {
    bold: true,
    most: 2,
  });
  const top = box.top + 1;
  const height =
    Math.max(barHeight + linesHeight(words.length, 2.7), linesHeight(names.length, rowText)) + 3.6;
  const bar: Drawn = {
    kind: "path",
    role: fails ? "limit" : "fixed",
    spots: [
      { x: zero, y: top },
      { x: end, y: top },
      { x: end, y: top + barHeight },
      { x: zero, y: top + barHeight },
    ],
    closed: true,
    fill: "solid",
    stroked: false,
  };
  return {
    items: [
      ...textLines(box.left, top - 0.4, names, { size: rowText, bold: true, role: fails ? "limit" : "text" }),
      {
        kind: "strokes",
        role: "grid",
        strokes: [
          [
            { x: barLeft, y: top + barHeight },
            { x: box.right, y: top + barHeight },
          ],
        ],
      },
      bar,
      ...(share > 1 ? [furtherArrow(box.right, top)] : []),
      {
        kind: "strokes",
        role: "limit",
        strokes: [
          [
            { x: zero, y: top - 1 },
            { x: zero, y: top + barHeight },
          ],
        ],
      },
      ...textLines(barLeft, top + barHeight + 0.5, words, { size: 2.7, role: fails ? "limit" : "text" }),
    ],
    height,
  };
}

/** The name stands beside the bar already. */
function withoutName(text: string, name: string): string {
  const start = `${name}: `;
  return text.toLowerCase().startsWith(start.toLowerCase()) ? text.slice(start.length) : text;
}

/** White notch at the bar's end: it goes on. */
function furtherArrow(right: number, top: number): Drawn {
  const middle = top + barHeight / 2;
  return {
    kind: "path",
    role: "fixed",
    spots: [
      { x: right - 2.2, y: top },
      { x: right, y: middle },
      { x: right - 2.2, y: top + barHeight },
      { x: right + 0.2, y: top + barHeight },
      { x: right + 0.2, y: top },
    ],
    closed: true,
    fill: "paper",
    stroked: false,
  };
}

function notChecked(pack: Pack, findings: readonly Finding[], box: Box): Drawn[] {
  const open = findings.filter((finding) => finding.state === "not-checked");
  if (open.length === 0) return [];
  const lines = open.flatMap((finding) =>
    wrapText(finding.text, 2.7, box.right - box.left - 4, pack.measure),
  );
  return [
    textAt({ x: box.left, y: box.top + 4 }, "Not checked", { size: 3.2, bold: true }),
    ...textLines(box.left, box.top + 5.4, lines, { size: 2.7 }),
  ];
}
