import type { ClearanceCheck } from "../clearance/clearance-check.ts";
import { outlineCornerGap, ramCornerGap } from "../clearance/corner-gap.ts";
import { gapCeilingExcess } from "../clearance/gap-ceiling.ts";
import { gapSlope } from "../clearance/gap-slope.ts";
import { nearestContact } from "../clearance/least-gap.ts";
import type { ConvexOutline } from "../clearance/outline.ts";
import type { Contact, RamSection } from "../clearance/ram-gap.ts";
import { newContact } from "../clearance/ram-gap.ts";
import type { RamPose } from "../clearance/ram-pose.ts";
import { newPose, poseInFixedFrame, poseInLeafFrame } from "../clearance/ram-pose.ts";
import type { SlackFunction } from "./slack-function.ts";

/** A clearance as a slack function; with `corners` when the check is of one section and one outline. */
export function clearanceSlack(check: ClearanceCheck, rise: number, withCorners: boolean): SlackFunction {
  const [section, ...moreSections] = check.sections;
  const [outline, ...moreOutlines] = check.outlines;
  const isPair = withCorners && section && outline && moreSections.length + moreOutlines.length === 0;
  const whole = contactSlack(check, rise, (pose, contact) => nearestContact(pose, check, contact));
  return isPair ? { ...whole, corners: cornerSlacks(check, rise, section, outline) } : whole;
}

function cornerSlacks(
  check: ClearanceCheck,
  rise: number,
  section: RamSection,
  outline: ConvexOutline,
): SlackFunction[] {
  const ofRam = [0, 1, 2, 3].map((corner) =>
    contactSlack(check, rise, (pose, contact) => ramCornerGap(pose, section, corner, outline, contact)),
  );
  const ofOutline = Array.from(outline.x, (_, corner) =>
    contactSlack(check, rise, (pose, contact) => outlineCornerGap(pose, section, corner, outline, contact)),
  );
  return [...ofRam, ...ofOutline];
}

function contactSlack(
  check: ClearanceCheck,
  rise: number,
  find: (pose: RamPose, contact: Contact) => void,
): SlackFunction {
  const pose = newPose();
  const contact = newContact();
  return {
    id: check.id,
    endsOnly: false,
    bitesAtCorners: false,
    corners: [],
    excess(moves, slope) {
      if (contact.feature === "overlap") slope.fill(0);
      return gapCeilingExcess(pose, contact, moves);
    },
    evaluate(pins, c, s, slope) {
      const px = pins[0] as number;
      const py = pins[1] as number;
      const d = pins[2] as number;
      const e = pins[3] as number;
      if (check.inLeafFrame) poseInLeafFrame(pose, px, py, d, e, rise, c, s);
      else poseInFixedFrame(pose, px, py, d, e, rise, c, s);
      find(pose, contact);
      if (contact.gap === Number.POSITIVE_INFINITY) {
        slope.fill(0);
        return Number.POSITIVE_INFINITY;
      }
      gapSlope(pose, contact, check.inLeafFrame, c, s, slope);
      return contact.gap - check.need;
    },
  };
}
