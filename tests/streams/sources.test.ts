import { createReadStream, mkdtempSync, readdirSync, readlinkSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Readable } from "node:stream";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { type ReadProgress, readText, type TextChunk, type TextInput } from "crankworthy/streams";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { bytesOf, collect, failure } from "./collect.js";

const TEXT = Array.from({ length: 40_000 }, (_, i) => `${i},12.6\n`).join("");
let folder = "";
let path = "";

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "streams-"));
  path = join(folder, "log.csv");
  writeFileSync(path, TEXT);
});
afterAll(() => rmSync(folder, { recursive: true }));

const joined = async (...args: Parameters<typeof collect>): Promise<string> =>
  (await collect(...args)).map((piece) => piece.text).join("");

const webStream = (...chunks: readonly TextChunk[]): ReadableStream<TextChunk> =>
  new ReadableStream({
    start(controller) {
      for (const chunk of chunks) controller.enqueue(chunk);
      controller.close();
    },
  });

/** One line at once, then silence. */
function stuck(first: TextChunk = "0,12.6\n"): {
  readonly stream: AsyncIterable<TextChunk>;
  readonly closed: () => boolean;
} {
  let closed = false;
  const stream: AsyncIterable<TextChunk> = {
    [Symbol.asyncIterator]() {
      let begun = false;
      return {
        next: () => {
          if (begun) return new Promise<never>(() => {});
          begun = true;
          return Promise.resolve({ done: false, value: first });
        },
        return: () => {
          closed = true;
          return new Promise<never>(() => {});
        },
      };
    },
  };
  return { stream, closed: () => closed };
}

function begun(): Readable {
  const stream = new Readable({ read() {} });
  stream.push("0,12.6\n1,");
  return stream;
}

const isOpen = (file: string): boolean =>
  readdirSync("/proc/self/fd").some((fd) => {
    try {
      return readlinkSync(`/proc/self/fd/${fd}`) === file;
    } catch {
      return false;
    }
  });

describe("every kind of source gives the same text", () => {
  it("file by path and URL, small chunks and large", async () => {
    for (const pieceBytes of [100, 4096, 1_000_000]) {
      expect(await joined({ path }, { pieceBytes })).toBe(TEXT);
      expect(await joined(pathToFileURL(path), { pieceBytes })).toBe(TEXT);
    }
  });

  it("Node stream of bytes and of characters, Web stream, iterables, compressed", async () => {
    expect(await joined(createReadStream(path))).toBe(TEXT);
    expect(await joined(createReadStream(path, "utf8"))).toBe(TEXT);
    expect(await joined(createReadStream(path, { highWaterMark: 7 }).take(1000))).toBe(TEXT.slice(0, 7000));
    expect(await joined(webStream(bytesOf(TEXT.slice(0, 999)), TEXT.slice(999)))).toBe(TEXT);
    expect(await joined(new Blob([TEXT]).stream())).toBe(TEXT);
    expect(await joined([TEXT])).toBe(TEXT);
    expect(await joined(new Set([TEXT]))).toBe(TEXT);
    expect(await joined(Readable.from([gzipSync(TEXT)]))).toBe(TEXT);
    writeFileSync(`${path}.gz`, gzipSync(TEXT));
    expect(await joined({ path: `${path}.gz` }, { pieceBytes: 1000 })).toBe(TEXT);
  });
});

describe("what cannot be read", () => {
  it("a file that is not there, a folder", async () => {
    expect(await failure({ path: join(folder, "none.csv") })).toMatchObject({
      code: "cannot-open",
      received: "ENOENT",
      cause: { syscall: "open" },
    });
    expect(await failure({ path: folder })).toMatchObject({ code: "source-failed", byteOffset: 0 });
  });

  it("a path where the platform opens none", async () => {
    const { getBuiltinModule } = process;
    try {
      Object.assign(process, { getBuiltinModule: undefined });
      expect(await failure({ path })).toMatchObject({
        code: "cannot-open",
        expected: expect.stringContaining("20.16"),
      });
    } finally {
      Object.assign(process, { getBuiltinModule });
    }
  });

  it("a stream that breaks says after how many bytes, and keeps the cause", async () => {
    const cause = new Error("cable pulled");
    const broken = async function* (): AsyncGenerator<TextChunk> {
      yield "0,12.6\n1,";
      throw cause;
    };
    const expected = { code: "source-failed", byteOffset: 9, received: "cable pulled", cause };
    expect(await failure(broken())).toMatchObject(expected);
    expect(await failure(Readable.from(broken()))).toMatchObject({ ...expected });
    const web = new ReadableStream<TextChunk>({
      async start(controller) {
        controller.enqueue("0,12.6\n1,");
        await new Promise((resolve) => setTimeout(resolve, 5));
        controller.error(cause);
      },
    });
    expect(await failure(web)).toMatchObject(expected);
  });

  it("a Web stream that somebody else reads", async () => {
    const stream = webStream("a\n");
    stream.getReader();
    await expect(collect(stream)).rejects.toThrow(RangeError);
  });
});

describe("a consumer that stops early closes the source", () => {
  const stopAfterOne = async (...args: Parameters<typeof readText>): Promise<void> => {
    for await (const _ of readText(...args)) break;
  };

  it.runIf(process.platform === "linux")("file", async () => {
    const reading = readText({ path }, { pieceBytes: 1000 });
    await reading.next();
    expect(isOpen(path)).toBe(true);
    await reading.return();
    expect(isOpen(path)).toBe(false);
    await stopAfterOne({ path: `${path}.gz` }, { pieceBytes: 1000 });
    expect(isOpen(`${path}.gz`)).toBe(false);
    await failure({ path }, { mostLineBytes: 3 });
    expect(isOpen(path)).toBe(false);
    await collect({ path });
    expect(isOpen(path)).toBe(false);
  });

  it("Node stream", async () => {
    const stream = createReadStream(path, { highWaterMark: 1000 });
    await stopAfterOne(stream, { pieceBytes: 1000 });
    expect(stream.destroyed).toBe(true);
  });

  it("Web stream, generator", async () => {
    let cancelled = false;
    const web = new ReadableStream<TextChunk>({
      pull: (controller) => controller.enqueue("0,12.6\n"),
      cancel: () => {
        cancelled = true;
      },
    });
    await stopAfterOne(web, { pieceBytes: 7 });
    expect(cancelled).toBe(true);
    let closed = false;
    const generator = function* (): Generator<string> {
      try {
        for (;;) yield "0,12.6\n";
      } finally {
        closed = true;
      }
    };
    await stopAfterOne(generator(), { pieceBytes: 7 });
    expect(closed).toBe(true);
  });

  it("a stuck source of compressed data, without waiting for it", async () => {
    const { stream, closed } = stuck(gzipSync(TEXT).subarray(0, 3000));
    await stopAfterOne(stream, { pieceBytes: 7 });
    expect(closed()).toBe(true);
  });

  it("no more is pulled than the pieces need", async () => {
    let pulled = 0;
    const source = function* (): Generator<string> {
      for (;;) {
        pulled++;
        yield "0,12.6\n";
      }
    };
    const reading = readText(source(), { pieceBytes: 70 });
    await reading.next();
    expect(pulled).toBeLessThanOrEqual(12);
    await reading.return();
  });
});

describe("signal", () => {
  const reason = new Error("enough");

  it("aborted before the start opens nothing", async () => {
    const { stream, closed } = stuck();
    await expect(collect(stream, { signal: AbortSignal.abort(reason) })).rejects.toBe(reason);
    await expect(collect({ path: "/nowhere" }, { signal: AbortSignal.abort(reason) })).rejects.toBe(reason);
    expect(closed()).toBe(false);
  });

  it.runIf(process.platform === "linux")("in the middle throws its reason and closes the file", async () => {
    const controller = new AbortController();
    let pieces = 0;
    const read = async (): Promise<void> => {
      for await (const _ of readText({ path }, { pieceBytes: 1000, signal: controller.signal }))
        if (++pieces === 3) controller.abort(reason);
    };
    await expect(read()).rejects.toBe(reason);
    expect(pieces).toBe(3);
    await new Promise((resolve) => setTimeout(resolve, 50));
    expect(isOpen(path)).toBe(false);
  });

  it.each([
    ["an iterable", () => stuck().stream],
    ["a Node stream", () => new Readable({ read() {} })],
    ["a Node stream that has begun", begun],
    ["a Web stream", () => new ReadableStream<TextChunk>({ pull: () => new Promise(() => {}) })],
  ])("while %s is stuck", async (_, make) => {
    const controller = new AbortController();
    const timer = setTimeout(() => controller.abort(reason), 20);
    await expect(collect(make() as never, { signal: controller.signal, pieceBytes: 7 })).rejects.toBe(reason);
    clearTimeout(timer);
  });

  it("while a compressed stream is stuck, and then closes all of it", async () => {
    const stream = new Readable({ read() {} });
    stream.push(gzipSync(TEXT).subarray(0, 3000));
    const controller = new AbortController();
    setTimeout(() => controller.abort(reason), 20);
    await expect(collect(stream, { signal: controller.signal })).rejects.toBe(reason);
    expect(stream.destroyed).toBe(true);
  });

  it("closes the source at once, also while the consumer is busy with a piece", async () => {
    const { stream, closed } = stuck();
    const controller = new AbortController();
    const reading = readText(stream, { signal: controller.signal, pieceBytes: 7 });
    await reading.next();
    controller.abort(reason);
    expect(closed()).toBe(true);
    await expect(reading.next()).rejects.toBe(reason);
  });

  it.each<[string, () => TextInput]>([
    ["text", () => "0,12.6\n".repeat(1e7)],
    ["bytes", () => Buffer.from("0,12.6\n".repeat(1e7))],
    ["an iterable of text", () => Array.from({ length: 1e6 }, () => "0,12.6\n".repeat(10))],
    [
      "an iterable without a line end",
      () => ({
        *[Symbol.iterator]() {
          for (let i = 0; i < 1e5; i++) yield "0";
          throw new Error("read to the end");
        },
      }),
    ],
  ])("stops the reading of %s in memory, whose consumer never waits", async (_, make) => {
    const input = make();
    const controller = new AbortController();
    let told = 0;
    setTimeout(() => {
      told = performance.now();
      controller.abort(reason);
    }, 20);
    const read = async (): Promise<void> => {
      for await (const { text } of readText(input, { signal: controller.signal }))
        text.split("\n").map(Number);
    };
    await expect(read()).rejects.toBe(reason);
    expect(told).toBeGreaterThan(0);
    expect(performance.now() - told).toBeLessThan(200);
  });

  it("closes what is stuck, and leaves no listener behind", async () => {
    const { stream, closed } = stuck();
    const controller = new AbortController();
    setTimeout(() => controller.abort(reason), 10);
    await expect(collect(stream, { signal: controller.signal })).rejects.toBe(reason);
    expect(closed()).toBe(true);
    let listeners = 0;
    const { signal } = new AbortController();
    const counted = Object.assign(signal, {
      addEventListener: () => listeners++,
      removeEventListener: () => listeners--,
    });
    await collect("a\nb\n", { signal: counted as AbortSignal, pieceBytes: 2 });
    expect(listeners).toBe(0);
  });
});

describe("progress", () => {
  it("rises to the size of the file, once a piece and once at the end", async () => {
    const seen: ReadProgress[] = [];
    const pieces = await collect(
      { path },
      { pieceBytes: 100_000, onProgress: (progress) => seen.push(progress) },
    );
    expect(seen).toHaveLength(pieces.length + 1);
    expect(seen.every(({ bytesTotal }) => bytesTotal === TEXT.length)).toBe(true);
    expect(seen.at(-1)?.bytesRead).toBe(TEXT.length);
    expect(seen.every(({ bytesRead }, i) => bytesRead >= (seen[i - 1]?.bytesRead ?? 0))).toBe(true);
  });

  it("counts compressed bytes, and has no total where nobody knows it", async () => {
    const seen: ReadProgress[] = [];
    const packed = gzipSync(TEXT);
    await collect([packed], { onProgress: (progress) => seen.push(progress) });
    expect(seen.at(-1)).toEqual({ bytesRead: packed.length });
  });
});
