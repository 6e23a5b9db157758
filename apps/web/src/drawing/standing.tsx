import type { JobLeaf } from "@pintle/job";
import { pathData } from "./marks.tsx";
import type { Projection, Spot } from "./projection.ts";

/** What stands still: hatched outlines with their names, and the hinge post's faces where no outline shows them. */
export function StandingThings({ leaf, on }: { readonly leaf: JobLeaf; readonly on: Projection }) {
  return (
    <g className="standing">
      {(leaf.fixed ?? []).map((thing, index) => {
        const outline = pathData(thing.outlineMm.map(([x, y]) => on.toScreen({ x, y })));
        return (
          // biome-ignore lint/suspicious/noArrayIndexKey: things are told apart by their place in the list
          <g key={index}>
            <path className="hatch-paper" d={outline} />
            <path className="line-thick" d={outline} fill="url(#hatch)" />
          </g>
        );
      })}
      <PostFaces leaf={leaf} on={on} />
    </g>
  );
}

/** The post's two faces as a corner with broken ends: how big the post is beyond them is not known. */
function PostFaces({ leaf, on }: { readonly leaf: JobLeaf; readonly on: Projection }) {
  const { post } = leaf;
  if (post === undefined) return null;
  const corner: Spot = { x: post.gatewayFaceAlongMm, y: post.ramFaceOutMm };
  const isDrawn = (leaf.fixed ?? []).some((thing) =>
    thing.outlineMm.some(([x, y]) => Math.hypot(x - corner.x, y - corner.y) < 1),
  );
  if (isDrawn) return null;
  const size = 200;
  const outline = [{ x: corner.x - size, y: corner.y }, corner, { x: corner.x, y: corner.y - size }];
  const filled = [...outline, { x: corner.x - size, y: corner.y - size }].map(on.toScreen);
  return (
    <>
      <path d={pathData(filled)} fill="url(#hatch)" />
      <path className="line-thick" d={pathData(outline.map(on.toScreen), false)} fill="none" />
    </>
  );
}
