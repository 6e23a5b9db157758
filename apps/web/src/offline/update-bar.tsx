import { registerSW } from "virtual:pwa-register";
import { useEffect, useRef, useState } from "react";
import { text } from "../strings/text.ts";

/** Keeps the page for use without a network, and asks before a newer version takes its place. */
export function UpdateBar() {
  const [isReady, setReady] = useState(false);
  const update = useRef<((reload?: boolean) => Promise<void>) | null>(null);
  useEffect(() => {
    update.current ??= registerSW({ onNeedRefresh: () => setReady(true) });
  }, []);
  if (!isReady) return null;
  return (
    <div className="bar" role="status">
      <p>{text("app.update")}</p>
      <button type="button" onClick={() => void update.current?.(true)}>
        {text("app.updateNow")}
      </button>
      <button type="button" onClick={() => setReady(false)}>
        {text("app.updateLater")}
      </button>
    </div>
  );
}
