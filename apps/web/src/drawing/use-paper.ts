import {
  type PointerEvent,
  type RefObject,
  useCallback,
  useEffect,
  useLayoutEffect,
  useRef,
  useState,
} from "react";
import { type Paper, type Projection, pannedBy, type Spot, type View, zoomedAt } from "./projection.ts";

/** Size of an element [px], kept up to date; null until it is known. */
export function usePaperSize(element: RefObject<Element | null>): Paper | null {
  const [size, setSize] = useState<Paper | null>(null);
  useLayoutEffect(() => {
    const measured = element.current;
    if (measured === null) return;
    const read = () => {
      const { width, height } = measured.getBoundingClientRect();
      setSize((old) => (old?.width === width && old.height === height ? old : { width, height }));
    };
    read();
    const watch = new ResizeObserver(read);
    watch.observe(measured);
    return () => watch.disconnect();
  }, [element]);
  return size;
}

/** Dragging the paper, pinching and the wheel: the handlers for the sheet, and where a pointer is on it. */
export function usePanAndZoom(
  sheet: RefObject<SVGSVGElement | null>,
  on: Projection | null,
  view: View,
  setView: (view: View) => void,
) {
  const fingers = useRef(new Map<number, Spot>());
  const latest = useRef({ on, view });
  latest.current = { on, view };

  const toSheet = useCallback(
    (event: { clientX: number; clientY: number }): Spot => {
      const box = sheet.current?.getBoundingClientRect();
      return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
    },
    [sheet],
  );

  useEffect(() => {
    const element = sheet.current;
    if (element === null) return;
    // React listens to wheels passively, where the page could not be kept from scrolling.
    const onWheel = (event: WheelEvent) => {
      const { on: now, view: seen } = latest.current;
      if (now === null) return;
      event.preventDefault();
      setView(zoomedAt(seen, now, toSheet(event), Math.exp(-event.deltaY * (event.ctrlKey ? 0.01 : 0.0015))));
    };
    element.addEventListener("wheel", onWheel, { passive: false });
    return () => element.removeEventListener("wheel", onWheel);
  }, [sheet, setView, toSheet]);

  const onPointerDown = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    fingers.current.set(event.pointerId, toSheet(event));
  };
  const onPointerMove = (event: PointerEvent<SVGSVGElement>) => {
    const before = fingers.current.get(event.pointerId);
    if (before === undefined || on === null) return;
    const now = toSheet(event);
    const other = [...fingers.current].find(([id]) => id !== event.pointerId)?.[1];
    fingers.current.set(event.pointerId, now);
    if (other === undefined) return setView(pannedBy(view, on, now.x - before.x, now.y - before.y));
    const apart = (spot: Spot) => Math.hypot(spot.x - other.x, spot.y - other.y) || 1;
    const middle = { x: (now.x + other.x) / 2, y: (now.y + other.y) / 2 };
    setView(zoomedAt(view, on, middle, apart(now) / apart(before)));
  };
  const onPointerUp = (event: PointerEvent<SVGSVGElement>) => {
    fingers.current.delete(event.pointerId);
  };
  return { toSheet, handlers: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel: onPointerUp } };
}
