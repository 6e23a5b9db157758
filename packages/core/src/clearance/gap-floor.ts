import type { Contact } from "./ram-gap.ts";
import type { RamPose } from "./ram-pose.ts";
import type { TravelRates } from "./travel-rates.ts";

/**
 * A floor under the gap between one ram section and one outline for every turn within ±`halfTurn` of the
 * pose's own, given the contact found there.
 *
 * Why it holds: the distance of two convex shapes is the largest separation over all directions, so any one
 * direction gives a floor. The contact's own direction is kept, standing with whichever body it belongs to,
 * and each corner that could come nearer is followed by its exact velocity and a ceiling on its
 * acceleration. The floor is therefore exact to second order in `halfTurn`.
 */
export function gapFloor(
  pose: RamPose,
  contact: Contact,
  rates: TravelRates,
  inLeafFrame: boolean,
  halfTurn: number,
): number {
  const section = contact.section;
  const outline = contact.outline;
  if (section === null || outline === null) return Number.POSITIVE_INFINITY;
  const { ax, ay, bx, by, ux, uy, plan, length } = pose;
  const { nx, ny } = contact;
  const moveX = inLeafFrame ? ay : 0;
  const moveY = inLeafFrame ? -ax : 0;
  const vx = inLeafFrame ? -moveX : -by;
  const vy = inLeafFrame ? -moveY : bx;
  const slide = ux * vx + uy * vy;
  const turn = (ux * vy - uy * vx) / plan;
  const turnCeiling = inLeafFrame ? rates.turnLeaf : rates.turnFixed;
  const bend = rates.turnChange + turnCeiling * turnCeiling;
  const carried = inLeafFrame ? rates.postRadius : 0;
  const scale = plan / length;
  const driftRate = pose.rise === 0 ? 0 : (pose.rise * pose.rise * slide) / (length * length * length);
  const halfSquare = 0.5 * halfTurn * halfTurn;
  let floor = Number.POSITIVE_INFINITY;

  if (!contact.normalOnRam) {
    let support = Number.NEGATIVE_INFINITY;
    for (let i = 0; i < outline.count; i++) {
      support = Math.max(support, nx * (outline.x[i] as number) + ny * (outline.y[i] as number));
    }
    for (let k = 0; k < 4; k++) {
      const far = k >= 2;
      const onRodEnd = far && section.toCountsFromLeafPin;
      const raw = far ? section.to : section.from;
      const t = onRodEnd ? plan - raw * scale : raw * scale;
      const w = k % 2 === 0 ? -section.halfWidth : section.halfWidth;
      const stationRate = onRodEnd ? slide - raw * driftRate : raw * driftRate;
      const alongRate = stationRate - w * turn;
      const acrossRate = t * turn;
      const speed =
        nx * (moveX + alongRate * ux - acrossRate * uy) + ny * (moveY + alongRate * uy + acrossRate * ux);
      const stationCeiling = (onRodEnd ? rates.slide : 0) + Math.abs(raw) * rates.riseDrift;
      const stationChange = (onRodEnd ? rates.slideChange : 0) + Math.abs(raw) * rates.riseDriftChange;
      const reach = (onRodEnd ? rates.postRadius + plan + rates.slide * halfTurn : Math.abs(t)) + Math.abs(w);
      const change = carried + reach * bend + 2 * turnCeiling * stationCeiling + stationChange;
      const height = nx * (ax + t * ux - w * uy) + ny * (ay + t * uy + w * ux) - support;
      floor = Math.min(floor, height - Math.abs(speed) * halfTurn - change * halfSquare);
    }
    return floor;
  }

  const nu = nx * ux + ny * uy;
  const isEnd = Math.abs(nu) > 0.5;
  const atRodEnd = isEnd && nu < 0 && section.toCountsFromLeafPin;
  const endRaw = nu < 0 ? section.to : section.from;
  const endRate = atRodEnd ? slide - endRaw * driftRate : endRaw * driftRate;
  const endChange = (atRodEnd ? rates.slideChange : 0) + Math.abs(endRaw) * rates.riseDriftChange;
  const endAt = atRodEnd ? plan - endRaw * scale : endRaw * scale;
  for (let i = 0; i < outline.count; i++) {
    const dx = (outline.x[i] as number) - ax;
    const dy = (outline.y[i] as number) - ay;
    const t = dx * ux + dy * uy;
    const w = dy * ux - dx * uy;
    const change = Math.sqrt(dx * dx + dy * dy) * bend + (2 * turnCeiling + 1) * carried;
    let height: number;
    let speed: number;
    let extra = 0;
    if (isEnd) {
      const sign = nu < 0 ? 1 : -1;
      height = sign * (t - endAt);
      speed = -(moveX * ux + moveY * uy) + turn * w - endRate;
      extra = endChange;
    } else {
      const sign = nx * -uy + ny * ux < 0 ? 1 : -1;
      height = sign * w - section.halfWidth;
      speed = -(moveY * ux - moveX * uy) - turn * t;
    }
    floor = Math.min(floor, height - Math.abs(speed) * halfTurn - (change + extra) * halfSquare);
  }
  return floor;
}
