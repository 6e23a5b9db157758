import type { Channel } from "../channel.ts";

/** Whether a message is one that the listener understands: another tab may run another version of the page. */
type Understands<Message> = (data: unknown) => data is Message;

/** A channel to the other tabs of this page. Messages of another shape are passed over. */
export function openTabChannel<Message>(name: string, understands: Understands<Message>): Channel<Message> {
  const channel = new BroadcastChannel(name);
  return {
    post: (message) => channel.postMessage(message),
    listen(listener) {
      const hear = ({ data }: MessageEvent<unknown>) => {
        if (understands(data)) listener(data);
      };
      channel.addEventListener("message", hear);
      return () => channel.removeEventListener("message", hear);
    },
    close: () => channel.close(),
  };
}
