import { text } from "../../strings/text.ts";
import { useBench } from "./bench.ts";
import { LimitList } from "./limit-list.tsx";
import { Verdict } from "./verdict.tsx";

/** Beside the drawing: the verdict, and what decides. */
export function Panel() {
  const bench = useBench();
  return (
    <aside className="panel" aria-label={text("panel.name")}>
      <Verdict bench={bench} />
      {bench.gate !== null && <LimitList bench={bench} limits={bench.gate.limits} />}
    </aside>
  );
}
