/** What two open copies of a job tell each other. */
export type JobMessage =
  | { readonly kind: "update"; readonly update: Uint8Array }
  /** What the sender knows; whoever knows more answers with what is lacking. */
  | { readonly kind: "have"; readonly stateVector: Uint8Array };

/**
 * Whether data from another tab, which may run another version of the page, are a message of this one.
 *
 * ### Example
 *   expect(isJobMessage({ kind: "update", update: new Uint8Array() })).toBe(true);
 *   expect(isJobMessage({ kind: "update" })).toBe(false);
 */
export function isJobMessage(data: unknown): data is JobMessage {
  if (typeof data !== "object" || data === null) return false;
  const { kind, update, stateVector } = data as Record<string, unknown>;
  return (
    (kind === "update" && update instanceof Uint8Array) ||
    (kind === "have" && stateVector instanceof Uint8Array)
  );
}

/** Carries messages to every other copy on this device, not back to the sender: between tabs a BroadcastChannel. */
export interface Channel<Message> {
  post(message: Message): void;
  /** Returns the end of it. */
  listen(listener: (message: Message) => void): () => void;
  close(): void;
}

/**
 * Channels in memory, joined by name: for tests, and for a page that can reach no other.
 *
 * ### Example
 *   const open = createMemoryChannels<string>();
 *   const heard: string[] = [];
 *   open("job a").listen((message) => heard.push(message));
 *   open("job a").post("hello");
 *   open("job b").post("not for you");
 *   expect(heard).toEqual(["hello"]);
 */
export function createMemoryChannels<Message>(): (name: string) => Channel<Message> {
  const rooms = new Map<string, Set<Set<(message: Message) => void>>>();
  return (name) => {
    const room = rooms.get(name) ?? new Set();
    rooms.set(name, room);
    const own = new Set<(message: Message) => void>();
    room.add(own);
    return {
      post(message) {
        const others = [...room].filter((each) => each !== own);
        for (const listener of others.flatMap((each) => [...each])) listener(message);
      },
      listen(listener) {
        own.add(listener);
        return () => own.delete(listener);
      },
      close() {
        room.delete(own);
      },
    };
  };
}
