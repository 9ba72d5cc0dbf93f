import type { LogSegment } from "../segments.js";
import type { LastRestVoltage } from "./measurement.js";

/** What moved charge last. */
export interface LastEvent {
  readonly kind: LastRestVoltage["before"];
  /** When it ended [s]. */
  readonly untilSeconds: number;
}

/** Less than this share of the capacity, moved after a charge, does not make it a discharge, nor the other way round. Our choice. */
const LEAST_SHARE = 0.01;

/** Follows what was last done to the battery; a lamp that burnt for seconds is nothing that a rest counts from. */
export function createLastEvent(ratedAmpereHours: number): {
  now(): LastEvent;
  add(segment: LogSegment): void;
} {
  let event: LastEvent = { kind: "unknown", untilSeconds: Number.NaN };
  let moved = 0;
  return {
    now: () => event,
    add({ kind, toSeconds, totals }) {
      // What a parked vehicle draws is part of its rest.
      if (kind === "rest") return;
      if (kind === "engine-running") {
        event = { kind: "drive", untilSeconds: toSeconds };
        moved = 0;
        return;
      }
      const net = totals.chargeInAmpereHours - totals.chargeOutAmpereHours;
      if (!(Math.abs(net) > 0)) return;
      const now = net > 0 ? "charge" : "discharge";
      const before = event.kind === "drive" ? "charge" : event.kind;
      moved = Math.sign(moved) === Math.sign(net) ? moved + net : net;
      if (now === before) event = { kind: event.kind, untilSeconds: toSeconds };
      else if (before === "unknown" || Math.abs(moved) >= LEAST_SHARE * ratedAmpereHours)
        event = { kind: now, untilSeconds: toSeconds };
    },
  };
}
