import type {
  BatteryRecord,
  ChargingMeasurement,
  DrawMeasurement,
  RecordConditions,
  RecordIdentity,
  RippleMeasurement,
  StartingMeasurement,
} from "../../evaluate/index.js";
import {
  isRefusal,
  type Mutable,
  type Refusal,
  refuse as refusal,
  requireFinite,
} from "../../numeric/index.js";
import type { ChargingVoltage } from "../measure/charging-voltage.js";
import type { CrankEvent } from "../measure/crank-event.js";
import type { SettledDraw } from "../measure/parasitic-draw.js";
import type { Ripple } from "../measure/ripple.js";
import type { SegmentKind } from "../segments.js";
import type { LogAnalysis } from "./analyse-log.js";
import type { FieldOrigin, LogMeasurement, LogQuantityMeasured } from "./measurement.js";
import { type Draft, faultsOf, isFaulty, leaveOut, refuse, took } from "./record-draft.js";

/** What the log cannot know. Fields that both know are the caller's. */
export interface RecordChoices
  extends Pick<BatteryRecord, "id" | "requirement" | "warranty" | "ventilation"> {
  readonly conditions?: RecordConditions;
  /** Readings of other instruments; a rest voltage given here replaces the log's. */
  readonly measurements?: BatteryRecord["measurements"];
  /** Standard uncertainty of the logger's voltage common to all rows [V] (≥ 0). Default 0.02, as `evaluate` assumes. */
  readonly voltsStandardUncertainty?: number;
  /** Where the logger was connected, and the limit to hold the ripple against; without it ripple is left out. */
  readonly ripple?: Pick<RippleMeasurement, "place" | "limit">;
  readonly draw?: Omit<DrawMeasurement, "drawAmperes" | "settledMinutes">;
  /**
   * Every pulse of current is a start of this vehicle's engine on this battery alone. Default: only one that an engine follows, without a
   * charger or a second battery before it; a load test and a start with help look the same in a log.
   */
  readonly pulsesAreStarts?: boolean;
}

/** An input for `evaluate`, and where its fields come from. */
export interface RecordFromLog {
  readonly record: BatteryRecord;
  /** By path, such as `measurements.restVolts`; fields given by the caller are not listed. */
  readonly origin: Readonly<Record<string, FieldOrigin>>;
  /** What the log was asked for and could not tell. */
  readonly refused: readonly (FieldOrigin & { readonly path: string; readonly refusal: Refusal })[];
}

const METHOD_OF_PLACE = { surface: "case-contact", ambient: "ambient", unplaced: undefined } as const;

/**
 * Makes an input for `evaluate` from the measurements of a log.
 *
 * Scope: the last rest gives rest voltage, temperature and history; the last crank, running engine and settled draw give the
 * part on the vehicle. A settled voltage that the relaxation establishes is taken, and said to be extrapolated; otherwise the
 * last reading with the rest it had. Nothing that was refused becomes a field, nor anything from rows in which the check found an error.
 * A log that gives neither a rest nor anything on the vehicle makes a record that `evaluate` refuses for lack of a measurement.
 *
 * @param analysis from `analyseLog`
 * @param identity which battery it is, from its label: no log tells
 * @param choices what the log cannot know
 * @returns the record, the rows each field comes from, and what was refused
 * @example
 * ```ts
 * import { evaluate } from "crankworthy";
 * import { analyseLog, recordFromLog } from "crankworthy/logs";
 * const rows = Array.from({ length: 240 }, (_, i) => `${60 * i},${i < 120 ? 12.1 : 12.3},${i < 120 ? -3 : 0}`);
 * const log = await analyseLog(["Test Time / s,Voltage / V,Current / A", ...rows].join("\n"), "bdf");
 * const { record, origin } = recordFromLog(log, { chemistry: "agm", rating: { standard: "sae-j537", amperes: 600 } });
 * record.conditions.lastEvent; // => "discharge"
 * origin["measurements.restVolts"].firstRow; // => 121
 * evaluate(record).charge.from; // => "voltage"
 * ```
 */
export function recordFromLog(
  analysis: LogAnalysis,
  identity: RecordIdentity,
  choices: RecordChoices = {},
): RecordFromLog {
  requireFinite("choices.voltsStandardUncertainty", choices.voltsStandardUncertainty ?? 0, 0);
  const draft: Draft = {
    measurements: {},
    conditions: {},
    vehicle: {},
    origin: {},
    refused: [],
    faults: faultsOf(analysis),
  };
  restPart(draft, analysis, choices);
  const { measurements: found } = analysis;
  const crank = last(found, "crank");
  startingPart(draft, crank, analysis, choices);
  chargingPart(draft, found, crank, choices);
  drawPart(draft, last(found, "draw"), choices);

  const { origin, refused, vehicle } = draft;
  const { conditions: given = {}, measurements: read = {} } = choices;
  // Read with another meter, at another time: the log's relaxation says nothing about it.
  if (read.restVolts !== undefined)
    for (const field of ["restVoltsExtrapolated", "hoursAtRest", "lastEvent"] as const)
      leaveOut(draft.conditions, `conditions.${field}`, field, origin);
  for (const field of Object.keys(given)) delete origin[`conditions.${field}`];
  for (const field of Object.keys(read)) delete origin[`measurements.${field}`];
  if (Object.keys(vehicle).length > 0) draft.conditions.place = "vehicle";
  const conditions = { ...draft.conditions, ...given };
  const { id, requirement, warranty, ventilation } = choices;
  const record: Mutable<BatteryRecord> = { identity, measurements: { ...draft.measurements, ...read } };
  if (id !== undefined) record.id = id;
  if (Object.keys(conditions).length > 0) record.conditions = conditions;
  if (Object.keys(vehicle).length > 0) record.vehicle = vehicle;
  if (requirement) record.requirement = requirement;
  if (warranty) record.warranty = warranty;
  if (ventilation) record.ventilation = ventilation;
  return { record, origin, refused };
}

/** `evaluate` assumes it too. */
const METER_VOLTS = 0.02;

function restPart(draft: Draft, { measurements: found, header }: LogAnalysis, choices: RecordChoices): void {
  const rest = last(found, "last-rest-voltage");
  if (!rest || isFaulty(draft, rest, "measurements.restVolts")) return;
  const { measurements, conditions } = draft;
  const meter = choices.voltsStandardUncertainty ?? METER_VOLTS;
  const { before, restSeconds, volts } = rest.result;
  if (before !== "unknown") {
    conditions.lastEvent = before;
    conditions.hoursAtRest = restSeconds / 3600;
    took(draft, rest, "conditions.lastEvent", "conditions.hoursAtRest");
  }
  const settled = found.find(
    (one): one is Of<"settled-voltage"> => one.quantity === "settled-voltage" && one.segment === rest.segment,
  );
  const result = settled?.result;
  if (settled && result && !isRefusal(result) && result.kind === "value") {
    measurements.restVolts = result.volts.value;
    measurements.voltsStandardUncertainty = Math.hypot(meter, result.volts.standardUncertainty);
    conditions.restVoltsExtrapolated = true;
    took(draft, settled, "measurements.restVolts", "measurements.voltsStandardUncertainty");
    took(draft, settled, "conditions.restVoltsExtrapolated");
  } else {
    if (settled && result && isRefusal(result))
      refuse(draft, settled, "conditions.restVoltsExtrapolated", result);
    measurements.restVolts = volts;
    measurements.voltsStandardUncertainty = meter;
    took(draft, rest, "measurements.restVolts");
  }
  if (rest.temperatureCelsius === undefined) return;
  conditions.temperatureCelsius = rest.temperatureCelsius;
  const method = METHOD_OF_PLACE[header.temperaturePlace ?? "unplaced"];
  if (method) conditions.temperatureMethod = method;
  took(draft, rest, "conditions.temperatureCelsius", ...(method ? ["conditions.temperatureMethod"] : []));
}

function startingPart(
  draft: Draft,
  crank: Of<"crank"> | undefined,
  { segments }: LogAnalysis,
  { pulsesAreStarts = false }: RecordChoices,
): void {
  const path = "vehicle.starting.crankingVolts";
  const result = crank?.result;
  if (!crank || !result) return;
  if (isRefusal(result)) {
    refuse(draft, crank, path, result);
    return;
  }
  if (isFaulty(draft, crank, path)) return;
  const [before, after] = [segments[crank.segment - 2], segments[crank.segment]];
  const helped = before?.kind.startsWith("charge");
  if (!pulsesAreStarts && (helped || after?.kind !== "engine-running")) {
    const help = "pulsesAreStarts, where somebody knows that it was one, of this battery alone.";
    const why = helped
      ? refusal("charged-just-before", "Something else fed the battery before this pulse.", help)
      : refusal("no-engine-after", "No running engine follows this pulse: it may be a load test.", help);
    refuse(draft, crank, path, why);
    return;
  }
  const { steadyVolts, minimumVolts, current, bound } = result as CrankEvent;
  const starting: Mutable<StartingMeasurement> = {};
  if (!isRefusal(steadyVolts)) {
    starting.crankingVolts = steadyVolts.value;
    starting.inrush = "left-out";
  } else if (bound === "two-sided") {
    starting.crankingVolts = minimumVolts.value;
    starting.inrush = "included";
  } else {
    // The true minimum is lower by an unknown amount: too good a value for a limit.
    const help = "Faster sampling, or a longer crank.";
    refuse(draft, crank, path, refusal("minimum-is-a-bound", "Only an upper bound is known.", help));
  }
  if (current && !isRefusal(current.steadyAmperes)) starting.crankingAmperes = -current.steadyAmperes.value;
  if (Object.keys(starting).length === 0) return;
  draft.vehicle.starting = starting;
  took(draft, crank, ...Object.keys(starting).map((field) => `vehicle.starting.${field}`));
}

function chargingPart(
  draft: Draft,
  found: readonly LogMeasurement[],
  crank: Of<"crank"> | undefined,
  choices: RecordChoices,
): void {
  const running = last(found, "charging-voltage", "engine-running");
  const result = running?.result;
  if (!running || !result) return;
  if (isRefusal(result)) {
    refuse(draft, running, "vehicle.charging.regulatedVolts", result);
    return;
  }
  if (isFaulty(draft, running, "vehicle.charging.regulatedVolts")) return;
  // A lower bound, where the current never fell enough, comes with a current that tells `evaluate` so.
  const { regulatedVolts, meanAmperesOfAll: meanAmperes } = result as ChargingVoltage;
  const charging: Mutable<ChargingMeasurement> = { regulatedVolts: regulatedVolts.value };
  took(draft, running, "vehicle.charging.regulatedVolts");
  if (meanAmperes >= 0) {
    charging.chargeAmperes = meanAmperes;
    took(draft, running, "vehicle.charging.chargeAmperes");
  }
  if (crank && draft.vehicle.starting && !isRefusal(crank.result)) {
    charging.engineOffVolts = (crank.result as CrankEvent).restVolts.value;
    took(draft, crank, "vehicle.charging.engineOffVolts");
  }
  const ripple = last(found, "ripple");
  if (ripple && isRefusal(ripple.result)) refuse(draft, ripple, "vehicle.charging.ripple", ripple.result);
  else if (ripple && choices.ripple) {
    const volts = (ripple.result as Ripple).rmsVolts.value;
    charging.ripple = { volts, method: "true-rms", ...choices.ripple };
    took(draft, ripple, "vehicle.charging.ripple");
  }
  draft.vehicle.charging = charging;
}

function drawPart(draft: Draft, draw: Of<"draw"> | undefined, choices: RecordChoices): void {
  const result = draw?.result;
  if (!draw || !result) return;
  if (isRefusal(result)) {
    refuse(draft, draw, "vehicle.draw", result);
    return;
  }
  if (isFaulty(draft, draw, "vehicle.draw")) return;
  const { drawAmperes, observedMinutes } = result as SettledDraw;
  if (drawAmperes.value < 0) {
    // A meter whose zero is off shows a sleeping vehicle charging.
    const help = "A meter whose zero is right, or an allowance for it.";
    refuse(draft, draw, "vehicle.draw", refusal("draw-negative", "The settled current charges.", help));
    return;
  }
  draft.vehicle.draw = {
    ...choices.draw,
    drawAmperes: drawAmperes.value,
    settledMinutes: observedMinutes,
  };
  took(draft, draw, "vehicle.draw.drawAmperes", "vehicle.draw.settledMinutes");
}

type Of<Quantity extends LogQuantityMeasured> = Extract<LogMeasurement, { readonly quantity: Quantity }>;

function last<Quantity extends LogQuantityMeasured>(
  found: readonly LogMeasurement[],
  quantity: Quantity,
  kind?: SegmentKind,
): Of<Quantity> | undefined {
  return found.findLast(
    (one): one is Of<Quantity> => one.quantity === quantity && (kind === undefined || one.kind === kind),
  );
}
