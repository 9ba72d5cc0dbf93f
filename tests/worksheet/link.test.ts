import { deflateRawSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { fragmentOf, readFragment } from "../../examples/worksheet/link.js";
import { startRecord } from "../../examples/worksheet/start.data.js";

const packed = (text: string | Uint8Array): string =>
  `#v=1&record=${deflateRawSync(text).toString("base64url")}`;

describe("a sheet in an address", () => {
  it("comes back as it was", async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.jsonValue({ maxDepth: 4 }),
        fc.constantFrom("en", "ar", "<b>"),
        async (record, language) => {
          const plain: unknown = JSON.parse(JSON.stringify(record));
          expect(await readFragment(await fragmentOf(record, language))).toEqual({
            kind: "record",
            record: plain,
            language,
          });
        },
      ),
    );
  });

  it("is short enough to send, and needs no escaping", async () => {
    const fragment = await fragmentOf(startRecord, "de");
    expect(fragment.length).toBeLessThan(1200);
    expect(fragment).toMatch(/^#v=1&lang=de&record=[\w-]+$/);
  });

  it.each([
    ["", "none"],
    ["#step-4", "none"],
    ["#lang=de", "none"],
    ["#record=AAAA", "damaged"],
    ["#v=1&record=", "damaged"],
    ["#v=1&record=%%%", "damaged"],
    ["#v=1&record=not*base64", "damaged"],
    ["#v=one&record=AAAA", "damaged"],
    ["#v=2&record=AAAA", "newer"],
    [packed("{"), "damaged"],
    [packed(Uint8Array.of(0xff, 0xfe)), "damaged"],
    [packed('{"a":1}').slice(0, -2), "damaged"],
    [`#v=1&record=${"A".repeat(30_000)}`, "too-long"],
    // A megabyte of blanks in a kilobyte.
    [packed(`"${" ".repeat(1_000_000)}"`), "too-long"],
  ])("%.40s is answered with: %s", async (fragment, kind) => {
    expect((await readFragment(fragment)).kind).toBe(kind);
  });
});
