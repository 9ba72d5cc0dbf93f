import type { Source } from "./source.js";
import type { TextChunk } from "./text-input.js";

/**
 * @internal A source from an iterator. A Node stream is destroyed rather than returned from: its iterator would first
 * wait for a chunk that may never come.
 */
export function fromIterator(
  iterator: AsyncIterator<TextChunk> | Iterator<TextChunk>,
  owner?: { readonly destroy?: unknown } | object,
): Source {
  let waiting = false;
  let done = false;
  return {
    next: async () => {
      waiting = true;
      try {
        const step = await iterator.next();
        if (!step.done) return step.value;
        done = true;
        return undefined;
      } catch (error) {
        done = true;
        throw error;
      } finally {
        waiting = false;
      }
    },
    close: async () => {
      if (owner && "destroy" in owner && typeof owner.destroy === "function") owner.destroy();
      if (done) return;
      done = true;
      try {
        const returned = iterator.return?.();
        // An iterator that is stuck in `next` answers `return` only afterwards, perhaps never.
        if (waiting) Promise.resolve(returned).catch(() => {});
        else await returned;
      } catch {
        // Somebody who stops early has no use for what goes wrong while tidying up.
      }
    },
  };
}
