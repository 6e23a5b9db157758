import { assumedValues, type CheckDocument, type JobLeaf } from "@pintle/job";
import type { Drawn } from "../scene/drawn.ts";
import { contentBox, type Draft, type Pack, sheetTitle } from "./draft.ts";
import { linesHeight, textAt, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";

interface Section {
  readonly title: string;
  readonly lines: readonly string[];
}

// Cautions as the trade gives them: common practice, no source.
const cautions: readonly Section[] = [
  {
    title: "A moving gate can crush and kill",
    lines: [
      "A powered leaf traps, shears and hits: between leaf and post, at the hinge, under the leaf, against walls and cars. Keep people, children and animals out of its way while it can move, and lock the power off before reaching in.",
      "A leaf on its hinges swings by itself in wind and on a slope. Wedge or tie it before measuring, drilling or unpinning the ram; hold up the free end of the ram whenever only one pin holds it.",
      "Nothing on these sheets says that the gate may be powered. Its weight, hinges, posts, wind and the protection of people are to be judged apart, before it first moves by itself.",
    ],
  },
  {
    title: "Electricity",
    lines: [
      "Work on mains supply is for a licensed electrician, under the local code. Low voltage too can start a fire: fuse it at the battery. Look for buried cables and pipes before digging or drilling.",
    ],
  },
  {
    title: "Who decides",
    lines: [
      "Local code and the makers' instructions come before these papers. Posts, piers and foundations in doubt are for a structural engineer. Where you are not sure, stop and ask.",
    ],
  },
  {
    title: "A prediction is not a proof",
    lines: [
      "Pintle computes from the numbers in the job. Wrong or assumed numbers make wrong sheets. Check the rulers on each sheet, take every check dimension, and after fitting measure again what was predicted.",
    ],
  },
];

const textSize = 3.3;
const titleSize = 4.2;

/** The sheet to read first: cautions, what stands on assumptions, and which sheets follow. */
export function cautionsSheet(
  pack: Pack,
  drafts: readonly Pick<Draft, "title" | "leaf">[],
  checked: CheckDocument,
  notes: readonly string[],
): Draft {
  const box = contentBox(pack.paper, "upright", false);
  const width = box.right - box.left;
  const items: Drawn[] = [textAt({ x: box.left, y: box.top + 7 }, "Read first", { size: 7, bold: true })];
  let y = box.top + 12;
  for (const section of [...cautions, ...knownGaps(pack, checked, notes)]) {
    items.push(textAt({ x: box.left, y: y + titleSize }, section.title, { size: titleSize, bold: true }));
    y += titleSize * 1.5;
    for (const line of section.lines) {
      const lines = wrapText(line, textSize, width, pack.measure, { most: 8 });
      items.push(...textLines(box.left, y, lines, { size: textSize }));
      y += linesHeight(lines.length, textSize) + 0.8;
    }
    y += 2.4;
  }
  items.push(...contents(pack, drafts, box.left, y, box.bottom));
  return { title: "Read first", leaf: null, lies: "upright", denominator: null, items };
}

function knownGaps(pack: Pack, checked: CheckDocument, notes: readonly string[]): Section[] {
  const { pass, fail, notChecked } = checked.summary;
  const assumed = assumedValues(pack.job).length;
  const counts = `Of the limits and verdicts of this job ${pass} hold, ${fail} fail and ${notChecked} are not checked. ${assumed} of its values are only assumed.`;
  const lines = [
    counts,
    ...notes,
    ...(pack.job.note === undefined ? [] : [`Note on the job: ${pack.job.note}`]),
  ];
  return [{ title: "What this job knows", lines }];
}

function contents(
  pack: Pack,
  drafts: readonly Pick<Draft, "title" | "leaf">[],
  left: number,
  top: number,
  bottom: number,
): Drawn[] {
  const width = contentBox(pack.paper, "upright", false).right - left;
  const step = 4.6;
  const columns = 2;
  const perColumn = Math.max(1, Math.floor((bottom - top - titleSize * 1.5) / step));
  const shown = drafts.slice(0, perColumn * columns);
  const height = Math.min(perColumn, Math.ceil(shown.length / columns));
  return [
    textAt({ x: left, y: top + titleSize }, "Sheets", { size: titleSize, bold: true }),
    ...shown.map((draft, index): Drawn => {
      const column = Math.floor(index / height);
      const x = left + (column * width) / columns;
      const y = top + titleSize * 1.5 + ((index % height) + 0.8) * step;
      const [line] = wrapText(`${index + 2}  ${sheetTitle(draft)}`, 3, width / columns - 4, pack.measure, {
        most: 1,
      });
      return textAt({ x, y }, line ?? "", { size: 3 });
    }),
  ];
}

/** Why a leaf has fewer sheets than others. */
export const withoutPinsText = (leaf: Pick<JobLeaf, "id">, why: string): string =>
  `Leaf “${leaf.id}” has no setting-out sheet: ${why}.`;
