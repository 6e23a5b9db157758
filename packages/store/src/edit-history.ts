import * as Y from "yjs";

/** What can be undone and redone, by the label of the edit; null when there is nothing. */
export interface UndoState {
  readonly undo: string | null;
  readonly redo: string | null;
}

type StackItem = Y.UndoManager["undoStack"][number];

/**
 * Undo and redo of this person's own edits, each a labelled step; edits that came from elsewhere are never
 * undone here. Everything done during a gesture is one step.
 */
export class EditHistory {
  readonly #steps: Y.UndoManager;
  #gesture: { readonly label: string; readonly stepsBefore: number } | null = null;
  #label = "";
  #state: UndoState = { undo: null, redo: null };

  constructor(entries: Y.Map<unknown>, origin: object) {
    this.#steps = new Y.UndoManager(entries, { trackedOrigins: new Set([origin]), captureTimeout: 0 });
    this.#steps.on("stack-item-added", ({ stackItem }: { stackItem: StackItem }) => {
      // A step that is undone passes its label on to the step that redoes it.
      const undone = this.#steps.currStackItem ?? undefined;
      stackItem.meta.set("label", labelOf(undone) ?? this.#label);
    });
  }

  /** The same object until it changes. */
  get state(): UndoState {
    const undo = labelOf(this.#steps.undoStack.at(-1));
    const redo = labelOf(this.#steps.redoStack.at(-1));
    if (undo !== this.#state.undo || redo !== this.#state.redo) this.#state = { undo, redo };
    return this.#state;
  }

  /** Names the edit that follows; within a gesture the gesture's own label stands. */
  willEdit(label: string): void {
    this.#label = this.#gesture?.label ?? label;
  }

  beginGesture(label: string): void {
    this.endGesture();
    this.#steps.stopCapturing();
    this.#steps.captureTimeout = Number.POSITIVE_INFINITY;
    this.#gesture = { label, stepsBefore: this.#steps.undoStack.length };
  }

  endGesture(): void {
    this.#gesture = null;
    this.#steps.captureTimeout = 0;
  }

  /** Takes back what the gesture did, as if it had not been made. */
  abandonGesture(): void {
    const gesture = this.#gesture;
    this.endGesture();
    if (gesture === null || this.#steps.undoStack.length <= gesture.stepsBefore) return;
    this.#steps.undo();
    this.#steps.redoStack.pop();
  }

  undo(): boolean {
    this.endGesture();
    return this.#steps.undo() !== null;
  }

  redo(): boolean {
    this.endGesture();
    return this.#steps.redo() !== null;
  }
}

function labelOf(item: StackItem | undefined): string | null {
  return item === undefined ? null : String(item.meta.get("label"));
}
