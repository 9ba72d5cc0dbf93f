import type { LogSegment, SegmentKind } from "../../src/logs/segments.js";

/** A segment with its place in time; everything else a picture does not look at. */
export function segment(kind: SegmentKind, fromSeconds: number, toSeconds: number): LogSegment {
  return { kind, fromSeconds, toSeconds } as LogSegment;
}
