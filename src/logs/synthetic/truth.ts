import type { SegmentKind } from "../segments.js";
import type { CheckedPlan } from "./defaults.js";
import type { SyntheticPhase } from "./plan.js";
import { simulate } from "./simulation.js";

/** What truly happened in one stretch of a synthetic log. */
export interface SyntheticSegment {
  readonly kind: SegmentKind;
  /** Position of its phase in the plan; a charge is two segments when it reaches its voltage. */
  readonly phase: number;
  readonly fromSeconds: number;
  readonly toSeconds: number;
  readonly chargeInAmpereHours: number;
  readonly chargeOutAmpereHours: number;
  /** At the end: electromotive force, which is what the voltage settles to, and state of charge (0..1). */
  readonly electromotiveVolts: number;
  readonly stateOfCharge: number;
  /** Of the continuous signal, ripple left out [V]. */
  readonly leastVolts: number;
  readonly leastVoltsSeconds: number;
  /** At the very end [V], [A]. */
  readonly lastVolts: number;
  readonly lastAmperes: number;
}

/** What a synthetic log hides from its reader. */
export interface SyntheticTruth {
  readonly resistanceOhms: number;
  readonly currentLagSeconds: number;
  readonly selfDischargeAmperes: number;
  readonly capacityAmpereHours: number;
  /** Before the first row: electromotive force [V], state of charge (0..1). */
  readonly firstElectromotiveVolts: number;
  readonly firstStateOfCharge: number;
  readonly chargeInAmpereHours: number;
  readonly chargeOutAmpereHours: number;
  readonly seconds: number;
  readonly segments: readonly SyntheticSegment[];
}

type Open = { -readonly [K in keyof SyntheticSegment]: SyntheticSegment[K] };

/** @internal */
export function truthOf(plan: CheckedPlan, seed: number): SyntheticTruth {
  const { battery, phases, instrument, borders } = plan;
  const segments: Open[] = [];
  let [earlier, middle] = [Number.NaN, Number.NaN]; // voltages of the last two steps
  const end = simulate(plan, seed, (step) => {
    const kind = kindOf(phases[step.phase]!, step.holds);
    let open = segments.at(-1);
    if (open?.phase !== step.phase || open.kind !== kind) {
      open = {
        kind,
        phase: step.phase,
        fromSeconds: step.seconds,
        toSeconds: step.seconds,
        chargeInAmpereHours: 0,
        chargeOutAmpereHours: 0,
        electromotiveVolts: 0,
        stateOfCharge: 0,
        leastVolts: Number.POSITIVE_INFINITY,
        leastVoltsSeconds: step.seconds,
        lastVolts: 0,
        lastAmperes: 0,
      };
      segments.push(open);
      [earlier, middle] = [Number.NaN, Number.NaN];
    }
    // A source's current bends within its step; a forced one is taken at the middle.
    const bends = phases[step.phase]!.kind === "charge" || phases[step.phase]!.kind === "engine-running";
    const amperes = bends ? (step.startAmperes + step.endAmperes) / 2 : step.amperes;
    if (amperes > 0) open.chargeInAmpereHours += (amperes * step.length) / 3600;
    else open.chargeOutAmpereHours -= (amperes * step.length) / 3600;
    open.toSeconds = step.seconds + step.length;
    open.electromotiveVolts = step.electromotiveVolts;
    open.stateOfCharge = step.stateOfCharge;
    open.lastVolts = step.endVolts;
    open.lastAmperes = step.endAmperes;
    if (step.endVolts < open.leastVolts) {
      open.leastVolts = step.endVolts;
      open.leastVoltsSeconds = open.toSeconds;
    }
    // Between steps the lowest point is that of the parabola through three of them.
    if (kind === "crank" && middle < earlier && middle <= step.endVolts) {
      const [before, after] = [earlier - middle, step.endVolts - middle];
      const shift = (before - after) / (2 * (before + after));
      const least = middle - ((before - after) * (before - after)) / (8 * (before + after));
      if (least < open.leastVolts) {
        open.leastVolts = least;
        open.leastVoltsSeconds = step.seconds + shift * step.length;
      }
    }
    [earlier, middle] = [middle, step.endVolts];
  });
  end.readAt(borders.at(-1)!);
  const sum = (key: "chargeInAmpereHours" | "chargeOutAmpereHours") =>
    segments.reduce((total, segment) => total + segment[key], 0);
  return {
    resistanceOhms: battery.resistanceOhms,
    currentLagSeconds: instrument.currentLagSeconds,
    selfDischargeAmperes: battery.selfDischargeAmperes,
    capacityAmpereHours: battery.capacityAmpereHours,
    firstElectromotiveVolts:
      battery.emptyVolts + (battery.fullVolts - battery.emptyVolts) * battery.stateOfCharge,
    firstStateOfCharge: battery.stateOfCharge,
    chargeInAmpereHours: sum("chargeInAmpereHours"),
    chargeOutAmpereHours: sum("chargeOutAmpereHours"),
    seconds: borders.at(-1)!,
    segments,
  };
}

function kindOf(phase: SyntheticPhase, holds: boolean): SegmentKind {
  switch (phase.kind) {
    case "parked":
      return "rest";
    case "load-steps":
      return "load-step";
    case "charge":
      return holds ? "charge-constant-voltage" : "charge-constant-current";
    default:
      return phase.kind;
  }
}
