import type { JobLeaf } from "@pintle/job";
import { gateScene } from "../scene/gate-scene.ts";
import { planScene } from "../scene/plan-scene.ts";
import type { StandsOn } from "../scene/plan-view.ts";
import type { Scene } from "../scene/scene.ts";
import { contentBox, type Draft, type Pack, seenFromText } from "./draft.ts";
import { type FittedScene, fitScene } from "./fit-scale.ts";
import { linesHeight, textLines } from "./lay-text.ts";
import { wrapText } from "./text-lines.ts";

/**
 * The plan of one leaf as the plan sheet and the plan files show it: closed with its ram, a ghost of it open,
 * the toe's way, the pins dimensioned from the hinge axis.
 */
export function leafPlan(pack: Pick<Pack, "job">, leafIndex: number, standsOn: StandsOn): Scene {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  return planScene(pack.job, leafIndex, leaf.placement ?? null, {
    standsOn,
    leafAngleDeg: 0,
    ghostAnglesDeg: [leaf.openAngleDeg],
    sweep: true,
    labels: true,
    dimensions: { ids: ["postPinBehindHinge", "postPinOut", "leafPinFromHinge", "leafPinFromLeafFace"] },
  });
}

/** The plan of one leaf to scale. */
export function planSheet(pack: Pack, leafIndex: number, standsOn: StandsOn): Draft {
  const leaf = pack.job.leaves[leafIndex] as JobLeaf;
  return draftOf(pack, leafPlan(pack, leafIndex, standsOn), "Plan", leaf, standsOn);
}

/** The plan of both leaves of a pair, or null when the job is no pair whose hinges are a known distance apart. */
export function gateSheet(pack: Pack, standsOn: StandsOn): Draft | null {
  const scene = gateScene(pack.job, standsOn);
  return scene === null ? null : draftOf(pack, scene, "Plan of the gate", null, standsOn);
}

function draftOf(pack: Pack, scene: Scene, title: string, leaf: JobLeaf | null, standsOn: StandsOn): Draft {
  const upright = onPaper(pack, scene, "upright", standsOn);
  const across = onPaper(pack, scene, "across", standsOn);
  const best = across.plan.denominator < upright.plan.denominator ? across : upright;
  return {
    title,
    leaf,
    lies: best.lies,
    denominator: best.plan.denominator,
    items: [...best.heading, ...best.plan.items],
  };
}

function onPaper(pack: Pack, scene: Scene, lies: Draft["lies"], standsOn: StandsOn) {
  const box = contentBox(pack.paper, lies, true);
  const text = `${seenFromText(standsOn)} The leaf is drawn closed; dash and two dots: open; dash and dot: axes and the way of the toe.`;
  const lines = wrapText(text, 2.9, box.right - box.left, pack.measure);
  const top = box.top + linesHeight(lines.length, 2.9) + 2;
  const plan: FittedScene = fitScene(scene, { ...box, top }, pack.display);
  return { lies, plan, heading: textLines(box.left, box.top, lines, { size: 2.9, role: "note" }) };
}
