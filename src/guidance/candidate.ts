import type { BatteryRecord } from "../evaluate/record.js";
import type { GuidanceSetting, Situation } from "./situation.js";
import type { GuidedReason, GuidedStep, GuidedStepCode } from "./types.js";

/** A step that may be asked for in a situation. */
export interface Candidate {
  readonly code: GuidedStepCode;
  /** `gate`: before anything else; `preparation`: counts by the reading it makes possible or better; `reading`. */
  readonly kind: "gate" | "preparation" | "reading";
  readonly fill: readonly string[];
  readonly clear: readonly string[];
  readonly why: GuidedReason;
  readonly parameters: GuidedStep["parameters"];
  /** Records as they may be afterwards, equally probable. */
  readonly imagine: () => readonly BatteryRecord[];
}

/** Whether a step may be asked for, and as what. */
export type Offer = (situation: Situation, setting: GuidanceSetting) => Omit<Candidate, "code"> | undefined;

/** Paths of conditions. */
export const conditions = (...fields: string[]): string[] => fields.map((field) => `conditions.${field}`);
/** Paths of measurements. */
export const measurements = (...fields: string[]): string[] => fields.map((field) => `measurements.${field}`);

/** Puts an offer together. */
export function offer(
  kind: Candidate["kind"],
  why: GuidedReason,
  fill: readonly string[],
  imagine: Candidate["imagine"],
  more: Partial<Pick<Candidate, "clear" | "parameters">> = {},
): Omit<Candidate, "code"> {
  return { kind, why, fill, imagine, clear: [], parameters: {}, ...more };
}
