import { readText } from "crankworthy/streams";
import { afterEach, expect, it, vi } from "vitest";

afterEach(() => vi.unstubAllGlobals());

// As in Node, in browsers, and where neither of the quick ways is there.
it.each([[[]], [["setImmediate"]], [["setImmediate", "MessageChannel"]]])(
  "a timer gets its turn while text in memory is read; missing: %j",
  async (missing) => {
    for (const name of missing) vi.stubGlobal(name, undefined);
    let [lines, linesAtTimer] = [0, 0];
    setTimeout(() => {
      linesAtTimer = lines;
    }, 15);
    for await (const { text } of readText("0,12.6\n".repeat(4e6))) lines += text.split("\n").length;
    expect(linesAtTimer).toBeGreaterThan(0);
    expect(linesAtTimer).toBeLessThan(lines);
  },
);
