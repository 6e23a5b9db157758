import { limitName, type NothingFitsDocument } from "@pintle/job";
import { changesOf } from "../../jobs/change.ts";
import { text } from "../../strings/text.ts";
import type { Bench } from "./bench.ts";

/** Why nothing in reach fits, and the least change of each kind that would make it fit, applied with one tap. */
export function NothingFits({ bench, why }: { readonly bench: Bench; readonly why: NothingFitsDocument }) {
  return (
    <div className="nothing-fits">
      <h4 className="fault">{text("nothing.heading")}</h4>
      {why.binding.length > 0 && (
        <p>{text("nothing.binding", { limits: why.binding.map(limitName).join(", ") })}</p>
      )}
      <p>{text(why.changes.length > 0 ? "nothing.changes" : "nothing.none")}</p>
      <ul className="remedies">
        {why.changes.map(({ kind, text: words, patch }) => (
          <li key={kind}>
            <span>{words}</span>
            {patch === null ? (
              <span className="quiet">{text("nothing.byHand")}</span>
            ) : (
              <button
                type="button"
                onClick={() => bench.change(changesOf(patch), `${text("edit.remedy")}: ${words}`)}
              >
                {text("nothing.apply")}
              </button>
            )}
          </li>
        ))}
      </ul>
      {why.changes.length > 0 && <p className="quiet">{text("nothing.then")}</p>}
    </div>
  );
}
