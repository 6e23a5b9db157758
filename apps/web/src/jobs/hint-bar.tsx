import { useState } from "react";
import { text } from "../strings/text.ts";

const key = "pintle-hint-read";

/** One sentence on the first visit: what is shown, and what to drag. */
export function HintBar() {
  const [isRead, setRead] = useState(() => kept() === "yes");
  if (isRead) return null;
  return (
    <div className="bar">
      <p>{text("demo.hint")}</p>
      <button
        type="button"
        className="plain"
        aria-label={text("demo.close")}
        onClick={() => {
          setRead(true);
          keep();
        }}
      >
        ×
      </button>
    </div>
  );
}

function kept(): string | null {
  try {
    return localStorage.getItem(key);
  } catch {
    return null;
  }
}

function keep(): void {
  try {
    localStorage.setItem(key, "yes");
  } catch {
    // Shown again next time, which does no harm.
  }
}
