import { requireFinite, requireKey, requirePositive, wrongArgument } from "../../numeric/index.js";
import type { SyntheticBattery, SyntheticInstrument, SyntheticPhase, SyntheticPlan } from "./plan.js";

/** Invented, of the size of a car's battery; no measurement stands behind them. @internal */
export const defaultBattery: Required<SyntheticBattery> = {
  fullVolts: 12.72,
  emptyVolts: 11.62,
  capacityAmpereHours: 70,
  stateOfCharge: 0.85,
  resistanceOhms: 0.006,
  fastOhms: 0.004,
  fastSeconds: 40,
  slowOhms: 0.008,
  slowSeconds: 3000,
  acceptanceOhms: 0.02,
  selfDischargeAmperes: 0,
  temperatureCelsius: 20,
};

/** @internal */
export type Instrument = SyntheticInstrument &
  Required<Omit<SyntheticInstrument, "changeDriven" | "temperatureEverySeconds" | "clockStartSeconds">>;

const defaultInstrument: Instrument = {
  intervalSeconds: 1,
  noiseVolts: 0.002,
  noiseAmperes: 0.02,
  resolutionVolts: 0.001,
  resolutionAmperes: 0.01,
  offsetVolts: 0,
  offsetAmperes: 0,
  currentLagSeconds: 0,
  edgeRowsSeconds: 0,
};

/** A plan whose every number is there and has been looked at. @internal */
export interface CheckedPlan {
  readonly battery: Required<SyntheticBattery>;
  readonly phases: readonly SyntheticPhase[];
  readonly instrument: Instrument;
  /** Where each phase starts, and the end of the last [s]. */
  readonly borders: readonly number[];
}

const KINDS = {
  rest: 0,
  discharge: 0,
  charge: 0,
  "load-steps": 0,
  crank: 0,
  "engine-running": 0,
  parked: 0,
};
const LONGEST_SECONDS = 1e9;

/** Fills in the defaults; RangeError for what cannot be. @internal */
export function checkPlan(plan: SyntheticPlan): CheckedPlan {
  const battery = { ...defaultBattery, ...plan.battery };
  const instrument = { ...defaultInstrument, ...plan.instrument };
  checkBattery(battery);
  checkInstrument(instrument);
  if (plan.phases.length === 0) wrongArgument("plan.phases", "none", "at least one phase");
  const borders = [0];
  for (const [i, phase] of plan.phases.entries()) {
    checkPhase(`plan.phases[${i}]`, phase);
    borders.push(borders[i]! + phase.seconds);
  }
  return { battery, phases: plan.phases, instrument, borders };
}

function checkBattery(battery: Required<SyntheticBattery>): void {
  for (const name of ["capacityAmpereHours", "resistanceOhms", "fastSeconds", "slowSeconds"] as const)
    requirePositive(`plan.battery.${name}`, battery[name]);
  for (const name of ["fastOhms", "slowOhms", "acceptanceOhms", "selfDischargeAmperes"] as const)
    requireFinite(`plan.battery.${name}`, battery[name], 0, 1e6);
  requireFinite("plan.battery.stateOfCharge", battery.stateOfCharge, 0, 1);
  requireFinite("plan.battery.emptyVolts", battery.emptyVolts, 0, 100);
  requireFinite("plan.battery.fullVolts", battery.fullVolts, battery.emptyVolts, 100);
  requireFinite("plan.battery.temperatureCelsius", battery.temperatureCelsius, -273.15, 1000);
}

function checkInstrument(instrument: Instrument): void {
  const { changeDriven, temperatureEverySeconds, clockStartSeconds } = instrument;
  requireFinite("plan.instrument.intervalSeconds", instrument.intervalSeconds, 1e-6, LONGEST_SECONDS);
  const sizes = [
    "noiseVolts",
    "noiseAmperes",
    "resolutionVolts",
    "resolutionAmperes",
    "edgeRowsSeconds",
  ] as const;
  for (const name of sizes) requireFinite(`plan.instrument.${name}`, instrument[name], 0, 1e6);
  for (const name of ["offsetVolts", "offsetAmperes", "currentLagSeconds"] as const)
    requireFinite(`plan.instrument.${name}`, instrument[name], -1e6, 1e6);
  if (changeDriven) {
    requireFinite("plan.instrument.changeDriven.volts", changeDriven.volts, 0);
    requireFinite("plan.instrument.changeDriven.amperes", changeDriven.amperes, 0);
    requirePositive("plan.instrument.changeDriven.longestSeconds", changeDriven.longestSeconds);
  }
  if (temperatureEverySeconds !== undefined)
    requirePositive("plan.instrument.temperatureEverySeconds", temperatureEverySeconds);
  if (clockStartSeconds !== undefined)
    requireFinite("plan.instrument.clockStartSeconds", clockStartSeconds, 0, 1e11);
}

function checkPhase(name: string, phase: SyntheticPhase): void {
  requireKey(`${name}.kind`, phase.kind, KINDS);
  requireFinite(`${name}.seconds`, phase.seconds, 1e-3, LONGEST_SECONDS);
  const { intervalSeconds, temperatureCelsius } = phase;
  if (intervalSeconds !== undefined)
    requireFinite(`${name}.intervalSeconds`, intervalSeconds, 1e-6, LONGEST_SECONDS);
  if (temperatureCelsius !== undefined)
    requireFinite(`${name}.temperatureCelsius`, temperatureCelsius, -273.15, 1000);
  // Whatever else is a number: amperes, volts, shares, frequencies. All of them are sizes, none has a sign but voltsPerKelvin.
  for (const [key, value] of Object.entries(phase))
    if (typeof value === "number" && key !== "temperatureCelsius")
      requireFinite(`${name}.${key}`, value, key === "voltsPerKelvin" ? -1 : 0, LONGEST_SECONDS);
  if (phase.kind === "load-steps") {
    requireFinite(`${name}.holdSeconds`, phase.holdSeconds, 1e-3);
    if (phase.amperes.length < 2) wrongArgument(`${name}.amperes`, phase.amperes.length, "two loads or more");
    for (const load of phase.amperes) requireFinite(`${name}.amperes`, load, 0, 1e6);
  }
  if (phase.kind === "parked") {
    let before = 0;
    for (const { amperes, untilSeconds } of phase.stairs ?? []) {
      requireFinite(`${name}.stairs.amperes`, amperes, 0, 1e6);
      requireFinite(`${name}.stairs.untilSeconds`, untilSeconds, before + 1e-3);
      before = untilSeconds;
    }
    if (phase.wakeUps) {
      requireFinite(`${name}.wakeUps.forSeconds`, phase.wakeUps.forSeconds, 1e-3);
      requireFinite(
        `${name}.wakeUps.everySeconds`,
        phase.wakeUps.everySeconds,
        phase.wakeUps.forSeconds + 1e-3,
      );
      requireFinite(`${name}.wakeUps.amperes`, phase.wakeUps.amperes, 0, 1e6);
    }
  }
}
