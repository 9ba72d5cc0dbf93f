/** Marks a refused date in the schema. */
export const NOT_A_DATE = "not-a-date";

/** What a number may be, in its unit, and what a number far outside probably is. */
export interface Range {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  /** `[from, to, hint]`: a value in here looks like another unit. Refused with the hint, never converted. */
  readonly looksLike?: readonly (readonly [number, number, string])[];
}

const millivolts = [[1000, 40_000, "this looks like millivolts; give volts (12600 mV is 12.6)"]] as const;
const temperature = {
  min: -50,
  max: 60,
  unit: "°C",
  looksLike: [
    [60, 160, "this looks like °F; give °C (77 °F is 25)"],
    [200, 350, "this looks like kelvin; give °C (298 K is 25)"],
  ],
} as const;
const gravity = {
  min: 1,
  max: 1.4,
  unit: "relative density",
  looksLike: [[1000, 1400, "this looks like kg/m³ or hydrometer points; give the ratio (1265 is 1.265)"]],
} as const;
const current = { min: 10, max: 2500, unit: "A" } as const;
const resistance = {
  min: 0.3,
  max: 200,
  unit: "mΩ",
  looksLike: [
    [0.0003, 0.05, "this looks like ohms; give milliohms (0.0045 Ω is 4.5)"],
    [300, 100_000, "this looks like microohms; give milliohms"],
  ],
} as const;
const drop = {
  min: -1,
  max: 14,
  unit: "V",
  looksLike: [[14, 14_000, "this looks like millivolts; give volts (200 mV is 0.2)"]],
} as const;
const minutes = { min: 0, max: 100_000, unit: "min" } as const;
const runningVolts = { min: 0, max: 32, unit: "V", looksLike: millivolts } as const;
const conductance = { min: 5, max: 4000, unit: "S" } as const;

/** Plausible ranges, wide enough for every real 6, 12 or 24 V battery; standing: our choice. */
export const ranges = {
  "identity.rating.amperes": current,
  "identity.capacityAmpereHours": {
    min: 1,
    max: 400,
    unit: "Ah",
    looksLike: [[1000, 400_000, "this looks like mAh; give Ah"]],
  },
  "identity.reserveCapacityMinutes": { min: 5, max: 1200, unit: "min" },
  "identity.acid.fullGravity": { ...gravity, min: 1.15, max: 1.33 },
  "identity.acid.emptyGravity": { ...gravity, min: 1.01, max: 1.25 },
  "conditions.temperatureCelsius": temperature,
  "conditions.hoursAtRest": { min: 0, max: 90_000, unit: "h" },
  "conditions.minutesSinceRemoval": minutes,
  "conditions.loadAmperes": {
    min: 0,
    max: 100,
    unit: "A",
    looksLike: [[100, 100_000, "this looks like milliamperes; give amperes (500 mA is 0.5)"]],
  },
  "conditions.minutesSinceLocked": minutes,
  "measurements.restVolts": { min: -32, max: 32, unit: "V", looksLike: millivolts },
  "measurements.voltsStandardUncertainty": {
    min: 1e-5,
    max: 0.5,
    unit: "V",
    looksLike: [[1, 500, "this looks like millivolts; give volts"]],
  },
  "measurements.cranking.amperes": { min: 1, max: 3000, unit: "A" },
  "measurements.cranking.relativeStandardUncertainty": {
    min: 1e-4,
    max: 0.5,
    unit: "fraction of the reading",
    looksLike: [[0.5, 100, "this looks like percent; give a fraction (5 % is 0.05)"]],
  },
  "measurements.resistance.milliohms": resistance,
  "measurements.resistance.referenceMilliohms": resistance,
  "measurements.conductance.siemens": conductance,
  "measurements.conductance.referenceSiemens": conductance,
  "measurements.cellGravities": gravity,
  "measurements.gravityTemperatureCelsius": temperature,
  "measurements.loadTest.loadAmperes": { min: 1, max: 2500, unit: "A" },
  "measurements.loadTest.seconds": {
    min: 0.1,
    max: 600,
    unit: "s",
    looksLike: [[1000, 600_000, "this looks like milliseconds; give seconds"]],
  },
  "measurements.loadTest.volts": { min: 0, max: 32, unit: "V", looksLike: millivolts },
  "vehicle.starting.crankingVolts": runningVolts,
  "vehicle.starting.engineTemperatureCelsius": { min: -50, max: 130, unit: "°C" },
  "vehicle.starting.crankingAmperes": { min: 0, max: 2500, unit: "A" },
  "vehicle.starting.positiveDropVolts": drop,
  "vehicle.starting.groundDropVolts": drop,
  "vehicle.starting.solenoidDropVolts": drop,
  "vehicle.charging.regulatedVolts": runningVolts,
  "vehicle.charging.loadedVolts": runningVolts,
  "vehicle.charging.engineOffVolts": runningVolts,
  "vehicle.charging.regulatorTemperatureCelsius": { min: -50, max: 130, unit: "°C" },
  "vehicle.charging.engineRpm": { min: 0, max: 8000, unit: "1/min" },
  "vehicle.charging.chargeAmperes": { min: -50, max: 300, unit: "A" },
  "vehicle.charging.positiveDropVolts": drop,
  "vehicle.charging.groundDropVolts": drop,
  "vehicle.charging.outputAmperes": { min: 0, max: 400, unit: "A" },
  "vehicle.charging.ripple.volts": {
    min: 0,
    max: 5,
    unit: "V",
    looksLike: [[5, 5000, "this looks like millivolts; give volts (50 mV is 0.05)"]],
  },
  "vehicle.draw.drawAmperes": {
    min: 0,
    max: 10,
    unit: "A",
    looksLike: [[10, 10_000, "this looks like milliamperes; give amperes (50 mA is 0.05)"]],
  },
  "vehicle.draw.settledMinutes": minutes,
  "vehicle.draw.parkedDays": { min: 0, max: 3650, unit: "d" },
  "ventilation.roomCubicMetres": {
    min: 1,
    max: 100_000,
    unit: "m³",
    looksLike: [[100_000, 1e9, "this looks like litres; give cubic metres (20000 l is 20)"]],
  },
  "ventilation.airFlowCubicMetresPerHour": { min: 0, max: 100_000, unit: "m³/h" },
  "requirement.crankingAmperes": current,
  "requirement.atCelsius": temperature,
  "requirement.coldestMorningCelsius": temperature,
} as const satisfies Record<string, Range>;
