import type { JobLeaf } from "@pintle/job";
import { drawScene } from "../scene/draw-scene.ts";
import { leafTemplate, postTemplate, type TemplateScene } from "../scene/template-scenes.ts";
import { contentBox, type Draft, type Pack } from "./draft.ts";
import { linesHeight, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";
import { tiles } from "./tiles.ts";

const postHint =
  "Lay the sheet level at the height of the post pin, cross over the hinge axis, line along the closed leaf, ram's side at the foot; the post's faces must then lie under theirs. Prick the pin's centre. How the bracket is held and how large its holes are comes with the bracket.";
const leafHint =
  "Tape the round distance from the hinge axis along the leaf and mark it. Lay the sheet level at the height of the leaf pin, its line over the mark and its face line along the leaf's ram-side face. Prick the pin's centre.";

/** What to do with a template, and why it must not be used yet. */
interface Hint {
  readonly text: string;
  readonly failure: string | null;
}

/** Full-size templates of both pins of a leaf; none for a leaf without pins. Cut into sheets where they must be. */
export function templateSheets(pack: Pack, leafIndex: number, failure: string | null): Draft[] {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  if (leaf.placement === undefined) return [];
  const post = { text: postHint, failure };
  const onLeaf = { text: leafHint, failure };
  return [
    ...sheetsOf(pack, leaf, "Template, post pin", post, postTemplate(pack.job, leaf, leaf.placement)),
    ...sheetsOf(pack, leaf, "Template, leaf pin", onLeaf, leafTemplate(pack.job, leaf, leaf.placement)),
  ];
}

function sheetsOf(pack: Pack, leaf: JobLeaf, title: string, hint: Hint, template: TemplateScene): Draft[] {
  const upright = laid(pack, leaf, title, hint, template, "upright");
  if (upright.length === 1) return upright;
  const across = laid(pack, leaf, title, hint, template, "across");
  return across.length < upright.length ? across : upright;
}

function laid(
  pack: Pack,
  leaf: JobLeaf,
  title: string,
  hint: Hint,
  template: TemplateScene,
  lies: Draft["lies"],
): Draft[] {
  const box = contentBox(pack.paper, lies, true);
  const check = "Full size: measure both rulers below first.";
  const width = box.right - box.left;
  const warning =
    hint.failure === null ? [] : wrapText(hint.failure, 3.6, width, pack.measure, { bold: true });
  const lines = wrapText(`${check} ${hint.text}`, 2.9, width, pack.measure);
  const below = box.top + linesHeight(warning.length, 3.6);
  const top = below + linesHeight(lines.length, 2.9) + 1;
  const scene = { shapes: template.shapes, extent: template.window };
  const items = drawScene(scene, { denominator: 1, origin: { x: 0, y: 0 } });
  const heading = [
    ...textLines(box.left, box.top, warning, { size: 3.6, bold: true, role: "limit" }),
    ...textLines(box.left, below, lines, { size: 2.9, role: "note" }),
  ];
  const cut = tiles(items, template.window, { ...box, top });
  return cut.map((tile) => ({
    title: tile.name === "" ? title : `${title}, ${tile.name} of ${cut.length}`,
    leaf,
    lies,
    denominator: 1,
    items: [...heading, ...tile.items],
  }));
}
