import { requireFinite } from "../../numeric/index.js";

/**
 * What counts as which kind of segment. Every field may be left out; all defaults are our own choice (standing
 * `our-choice`), with the reason beside each. Where a default is a share of C it follows `ratedAmpereHours`.
 */
export interface SegmentRule {
  /**
   * Twenty-hour capacity C [Ah] (> 0). Default 50: the middle of car batteries. The thresholds of current scale with it: give
   * it for anything else, or a float current of C/150 reads as rest.
   */
  readonly ratedAmpereHours?: number;
  /**
   * Rest begins below this, either sign [A]. Default C/400: above the 0.01–0.03 A that a meter of a 17 Ah battery showed
   * at no load, above the 50 mA of a parked car, below a float current of C/150.
   */
  readonly restEnterAmperes?: number;
  /** Rest ends above this [A]. Default twice `restEnterAmperes`, so that noise at the threshold flips nothing. */
  readonly restLeaveAmperes?: number;
  /** Shortest rest, and shortest charge [s]. Default 60: shorter pauses belong to what they interrupt. */
  readonly leastSeconds?: number;
  /** A change of current by this is a step whose resistance is worth measuring [A]. Default C/20: a large share of it even with a 1 % meter. */
  readonly stepAmperes?: number;
  /** A load that outlasts this is a discharge of its own, a shorter one a load step [s]. Default 60. */
  readonly stepMostSeconds?: number;
  /** A pulse begins at this discharge [A]. Default 2 C: engines take 2–10 C, other loads of a car below 1 C. */
  readonly crankAmperes?: number;
  /** A pulse ends below this, and below a tenth of its peak [A]. Default C/2: under the valleys between compressions. */
  readonly crankLeaveAmperes?: number;
  /** Shortest and longest crank [s]. Default 0.1 and 15: workshop practice ends an attempt at 15 s. */
  readonly crankLeastSeconds?: number;
  readonly crankMostSeconds?: number;
  /** Without current: a crank lowers the voltage by this at once [V]. Default 1: loads but the starter stay below. */
  readonly crankDipVolts?: number;
  /** A pulse or step is over when what follows has lasted this [s]. Default 0.2: longer than one compression. */
  readonly settleSeconds?: number;
  /** The engine runs from this voltage on after a crank, or as soon as the battery is charged [V]. Default 13.2: charging begins at 2.2 V per cell. */
  readonly engineEnterVolts?: number;
  /** The engine has stopped below this [V]. Default 13.0: idling with every load on stays above. */
  readonly engineLeaveVolts?: number;
  /** Charging must follow the crank within this [s]. Default 30: slow alternators take some seconds. */
  readonly engineWithinSeconds?: number;
  /** Charging, or its end, after a crank must last this [s]. Default 2. */
  readonly engineLeastSeconds?: number;
  /** Charge at constant voltage keeps within this of its level [V]. Default 0.06: 10 mV per cell; twice that to leave. */
  readonly plateauVolts?: number;
  /** It lasts at least this [s]. Default 900: so long a charge at constant current rises by more than the band. */
  readonly plateauLeastSeconds?: number;
  /** Voltage and current are smoothed with this time constant for it [s]. Default 60. */
  readonly smoothingSeconds?: number;
  /** At constant voltage the current changes by at least this share of its level (0..1). Default 0.1. */
  readonly currentChangeShare?: number;
  /** Constant current scatters by at most this share of its mean (0..1). Default 0.3; more is unclassified. */
  readonly currentSpreadShare?: number;
  /** Without current: rest keeps within this of its level [V]. Default 0.02: a C/20 discharge falls by 0.07 V in an hour. */
  readonly restPlateauVolts?: number;
  /** And lasts this [s]. Default 1800. */
  readonly restPlateauSeconds?: number;
  /** Rows this near to a border may hold a mean of both sides [s]; at most two on each. Default 1. */
  readonly edgeSeconds?: number;
}

/** @internal All fields present. */
export type FullSegmentRule = Required<SegmentRule>;

/**
 * The thresholds that {@link createSegmenter} uses, all fields filled in.
 *
 * @param rule overrides; a share of C follows `ratedAmpereHours` unless given itself
 * @returns every parameter with its value
 * @throws RangeError for a number that is none, is negative, or leaves a leaving threshold on the wrong side
 * @example
 * ```ts
 * import { segmentRule } from "crankworthy/logs";
 * segmentRule({ ratedAmpereHours: 60 }).restEnterAmperes; // => 0.15
 * segmentRule({ ratedAmpereHours: 60 }).crankAmperes; // => 120
 * ```
 */
export function segmentRule(rule: SegmentRule = {}): FullSegmentRule {
  const rated = rule.ratedAmpereHours ?? 50;
  const full: FullSegmentRule = {
    restEnterAmperes: rated / 400,
    restLeaveAmperes: 2 * (rule.restEnterAmperes ?? rated / 400),
    leastSeconds: 60,
    stepAmperes: rated / 20,
    stepMostSeconds: 60,
    crankAmperes: 2 * rated,
    crankLeaveAmperes: rule.crankAmperes === undefined ? rated / 2 : rule.crankAmperes / 4,
    crankLeastSeconds: 0.1,
    crankMostSeconds: 15,
    crankDipVolts: 1,
    settleSeconds: 0.2,
    engineEnterVolts: 13.2,
    engineLeaveVolts: 13,
    engineWithinSeconds: 30,
    engineLeastSeconds: 2,
    plateauVolts: 0.06,
    plateauLeastSeconds: 900,
    smoothingSeconds: 60,
    currentChangeShare: 0.1,
    currentSpreadShare: 0.3,
    restPlateauVolts: 0.02,
    restPlateauSeconds: 1800,
    edgeSeconds: 1,
    ...rule,
    ratedAmpereHours: rated,
  };
  for (const [name, value] of Object.entries(full)) requireFinite(`rule.${name}`, value, 0, 1e12);
  requireFinite("rule.ratedAmpereHours", rated, 1e-3, 1e6);
  requireFinite("rule.restEnterAmperes", full.restEnterAmperes, 0, full.restLeaveAmperes);
  requireFinite("rule.crankLeaveAmperes", full.crankLeaveAmperes, 0, full.crankAmperes);
  requireFinite("rule.engineLeaveVolts", full.engineLeaveVolts, 0, full.engineEnterVolts);
  requireFinite("rule.crankLeastSeconds", full.crankLeastSeconds, 0, full.crankMostSeconds);
  return full;
}
