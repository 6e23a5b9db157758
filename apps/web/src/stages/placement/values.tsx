import { displayUnit, judgeDocument, parseQuantity, type ValueOrigin } from "@pintle/job";
import { useMemo, useState } from "react";
import { type Change, changed, type ValuePath } from "../../jobs/change.ts";
import { originPath, withTypedOrigin } from "../../jobs/typed-origin.ts";
import { text } from "../../strings/text.ts";
import type { Bench } from "./bench.ts";
import { leafValues } from "./leaf-values.ts";
import { endingOf, inFileUnit, originWords, valueName, valueWords } from "./value-words.ts";

/** How a value can have come about. */
const hows = ["tape", "scale", "meter", "level", "makersSheet", "assumed"] as const;

const kinds = {
  length: "length",
  angle: "angle",
  mass: "mass",
  force: "force",
  wind: "speed",
  rodSpeed: "speed",
} as const;

/** Every value of this leaf, its ram and the site, with where it comes from; single numbers are typed here. */
export function Values({ bench }: { readonly bench: Bench }) {
  const { job, leafIndex, ram } = bench;
  const [onlyAssumed, setOnlyAssumed] = useState(false);
  const all = useMemo(() => leafValues(job, leafIndex, ram), [job, leafIndex, ram]);
  const assumed = all.filter((value) => value.standing === "assumed");
  return (
    <section className="values" aria-label={text("values.heading")}>
      <h3>{text("values.heading")}</h3>
      <p>
        {text("values.assumed", { count: assumed.length })}{" "}
        <label className="tick">
          <input
            type="checkbox"
            checked={onlyAssumed}
            onChange={(event) => setOnlyAssumed(event.target.checked)}
          />
          {text("values.onlyAssumed")}
        </label>
      </p>
      <ul>
        {(onlyAssumed ? assumed : all).map((value) => (
          <ValueRow key={value.path} value={value} bench={bench} />
        ))}
      </ul>
    </section>
  );
}

function ValueRow({ value, bench }: { readonly value: ValueOrigin; readonly bench: Bench }) {
  const { job, display, change } = bench;
  const [fault, setFault] = useState<string | null>(null);
  const shownNow = valueWords(value, display);
  const name = valueName(value.path, job);
  const ending = endingOf(value.path);
  const typed = typeof value.value === "number" && ending !== null;
  const keep = (written: string) => {
    if (ending === null || written === shownNow) return setFault(null);
    const [, what] = ending;
    const read = parseQuantity(kinds[what], written, displayUnit(what, display));
    if (!read.ok) return setFault(text("dimension.expected", { expected: read.expected }));
    const changes: Change[] = [{ path: pathOf(value.path), value: inFileUnit(value.path, read.si) }];
    const judged = judgeDocument(changed(job, changes));
    if (!judged.ok) {
      const { found = "", expected = "" } = judged.faults[0] ?? {};
      return setFault(text("dimension.refused", { found, expected }));
    }
    setFault(null);
    change(withTypedOrigin(changes, written), `${text("edit.value")}: ${name}`);
  };
  return (
    <li>
      <span className="value-name">{name}</span>
      {typed ? (
        <input
          key={shownNow}
          defaultValue={shownNow}
          aria-label={text("values.edit", { name })}
          aria-invalid={fault !== null}
          autoComplete="off"
          spellCheck={false}
          onBlur={(event) => keep(event.target.value)}
          onKeyDown={(event) => {
            if (event.key === "Enter") keep(event.currentTarget.value);
            if (event.key === "Escape") event.currentTarget.value = shownNow;
          }}
        />
      ) : (
        <b className="value-shown">{shownNow}</b>
      )}
      <em className={value.standing === "assumed" ? "assumed" : "quiet"}>{originWords(value)}</em>
      {typed && !value.isDefault && !value.path.includes("placement") && (
        <select
          value={value.origin?.how ?? ""}
          aria-label={text("values.how", { name })}
          onChange={(event) =>
            change(
              [{ path: originPath(pathOf(value.path)), value: { how: event.target.value } }],
              `${text("edit.origin")}: ${name}`,
            )
          }
        >
          {value.origin === null && <option value="">{text("values.notStated")}</option>}
          {hows.map((how) => (
            <option key={how} value={how}>
              {text(`values.how.${how}`)}
            </option>
          ))}
        </select>
      )}
      {fault !== null && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
    </li>
  );
}

/** `leaves[0].placement.postPin.alongMm` as keys and positions. */
function pathOf(path: string): ValuePath {
  return [...path.matchAll(/\[(\d+)\]|([^.[\]]+)/g)].map(([, index, key]) =>
    index === undefined ? (key as string) : Number(index),
  );
}
