import { useEffect, useRef, useState } from "react";
import { Workbox } from "workbox-window";
import { text } from "../strings/text.ts";

/** Keeps the page for use without a network, and asks before a newer version takes its place. */
export function UpdateBar() {
  const [isReady, setReady] = useState(false);
  const keeper = useRef<Workbox | null>(null);
  useEffect(() => {
    if (!import.meta.env.PROD || !("serviceWorker" in navigator) || keeper.current !== null) return;
    const made = new Workbox("./sw.js");
    keeper.current = made;
    made.addEventListener("waiting", () => setReady(true));
    // Where it cannot be kept the page still works while there is a network.
    made.register().catch(() => {});
  }, []);
  if (!isReady) return null;
  const update = () => {
    keeper.current?.addEventListener("controlling", () => location.reload());
    keeper.current?.messageSkipWaiting();
  };
  return (
    <div className="bar" role="status">
      <p>{text("app.update")}</p>
      <button type="button" onClick={update}>
        {text("app.updateNow")}
      </button>
      <button type="button" onClick={() => setReady(false)}>
        {text("app.updateLater")}
      </button>
    </div>
  );
}
