import type { SourceId, Standing } from "../../sources/index.js";
import type { FindingCode } from "../finding.js";

/** What can be behind an engine that does not start. */
export type CauseCode = "battery" | "connection" | "charging-circuit" | "drain" | "only-discharged";

/** What the findings say about a cause. `open`: nothing speaks of it, or something on either side. */
export type CauseSupport = "supported" | "contradicted" | "open";

/** What would settle a cause that findings both support and contradict. */
export type SettlingStep =
  | "test-on-the-bench"
  | "measure-drops-again"
  | "measure-regulated-voltage-again"
  | "measure-draw-again"
  | "charge-and-measure-again";

/** Whether a finding was made. */
export type Known = (code: FindingCode) => boolean;

/** Some findings speak for a cause only beside others. */
export interface Sign {
  readonly code: FindingCode;
  readonly when?: (known: Known) => boolean;
}

/** One possible cause: one file. What speaks for it, what against it, and what settles it when both do. */
export interface CauseRule {
  readonly code: CauseCode;
  readonly source: SourceId;
  readonly standing: Standing;
  readonly supports: readonly Sign[];
  readonly contradicts: readonly Sign[];
  readonly settleBy: SettlingStep;
}
