/** @internal Waits that end at once when the signal says so. */
export interface Watch {
  wait<T>(promise: Promise<T>): Promise<T>;
  dispose(): void;
}

/**
 * @internal One listener for the whole reading: racing each wait against one promise of the abort would hold on to every
 * wait there ever was.
 */
export function watchAbort(signal: AbortSignal | undefined, onAbort: () => void): Watch {
  if (!signal) return { wait: (promise) => promise, dispose: () => {} };
  signal.throwIfAborted();
  let reject: ((reason: unknown) => void) | undefined;
  const listener = (): void => {
    reject?.(signal.reason);
    onAbort();
  };
  signal.addEventListener("abort", listener, { once: true });
  return {
    wait: (promise) => {
      if (signal.aborted) {
        promise.catch(() => {});
        return Promise.reject(signal.reason);
      }
      return new Promise((resolve, fail) => {
        reject = fail;
        promise.then(resolve, fail);
      });
    },
    dispose: () => signal.removeEventListener("abort", listener),
  };
}
