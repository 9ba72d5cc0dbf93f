interface Port {
  postMessage(message: unknown): void;
  close(): void;
  onmessage: (() => void) | null;
}

interface Scheduling {
  readonly setImmediate?: (call: () => void) => unknown;
  readonly MessageChannel?: new () => { readonly port1: Port; readonly port2: Port };
}

/** Longest time for which nothing else gets its turn [ms]: well below what a person notices, and long against a turn. */
const MOST_BUSY = 10;

/** @internal Lets timers, input and drawing have their turn now and then. */
export interface Turns {
  /** Whether nothing else had its turn for a while; asked often, it costs a look at the clock. */
  due(): boolean;
  /** Resolves after everything that waits had its turn. */
  take(): Promise<void>;
}

/**
 * @internal Text in memory arrives without ever waiting: without these turns no timer, no signal and no button reaches a loop over it. The
 * clock decides only when others get their turn, nothing of the result.
 */
export function createTurns(): Turns {
  let since = performance.now();
  return {
    due: () => performance.now() - since >= MOST_BUSY,
    take: async () => {
      await turn();
      since = performance.now();
    },
  };
}

// Timers come last: browsers hold nested ones back for 4 ms, Node for 1 ms.
function turn(): Promise<void> {
  const { setImmediate, MessageChannel } = globalThis as Scheduling;
  return new Promise((resolve) => {
    if (setImmediate) setImmediate(resolve);
    else if (MessageChannel) {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = () => {
        port1.close();
        resolve();
      };
      port2.postMessage(undefined);
    } else setTimeout(resolve, 0);
  });
}
