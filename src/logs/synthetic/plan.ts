/** The invented battery. Everything has a default, so that a plan names only what it is about. */
export interface SyntheticBattery {
  /** Electromotive force when full, default 12.72 V. */
  readonly fullVolts?: number;
  /** Electromotive force when empty, default 11.62 V; between the two a straight line in the state of charge. */
  readonly emptyVolts?: number;
  /** Default 70 Ah (> 0). */
  readonly capacityAmpereHours?: number;
  /** At the start (0..1), default 0.85. The log starts settled. */
  readonly stateOfCharge?: number;
  /** What acts at once [Ω], default 0.006 (> 0). */
  readonly resistanceOhms?: number;
  /** Fast relaxation: resistance [Ω] and time constant [s], default 0.004 Ω and 40 s. */
  readonly fastOhms?: number;
  readonly fastSeconds?: number;
  /** Slow relaxation, default 0.008 Ω and 3000 s. */
  readonly slowOhms?: number;
  readonly slowSeconds?: number;
  /** While charging the fast resistance grows by this over (1.02 − state of charge) [Ω], default 0.02: current tapers. */
  readonly acceptanceOhms?: number;
  /** Leaks inside, seen by no meter [A] (≥ 0), default 0. */
  readonly selfDischargeAmperes?: number;
  /** At the start [°C], default 20. Nothing in the battery depends on it. */
  readonly temperatureCelsius?: number;
}

interface AnyPhase {
  /** [s] (> 0). */
  readonly seconds: number;
  /** Time between rows in this phase [s]; default that of the instrument. */
  readonly intervalSeconds?: number;
  /** Reached at the end of the phase, in a straight line [°C]; default as before. */
  readonly temperatureCelsius?: number;
}

/** No current. */
export interface RestPhase extends AnyPhase {
  readonly kind: "rest";
}

/** A steady load [A] (≥ 0, taken out). */
export interface DischargePhase extends AnyPhase {
  readonly kind: "discharge";
  readonly amperes: number;
}

/** A charger: at most `amperes` until `volts` are reached, then held. */
export interface ChargePhase extends AnyPhase {
  readonly kind: "charge";
  /** [A] (> 0). */
  readonly amperes: number;
  /** At 25 °C [V]. */
  readonly volts: number;
  /** Change of `volts` with temperature [V/K], default 0. */
  readonly voltsPerKelvin?: number;
}

/** Loads that change every `holdSeconds`, one after the other or, with `random`, anywhere between the least and the most. */
export interface LoadStepsPhase extends AnyPhase {
  readonly kind: "load-steps";
  /** [A] (≥ 0, taken out), at least two. */
  readonly amperes: readonly number[];
  readonly holdSeconds: number;
  readonly random?: boolean;
}

/** A starter motor: inrush, a plateau with the ripple of compression, release. The shape is invented. */
export interface CrankPhase extends AnyPhase {
  readonly kind: "crank";
  /** Mean of the plateau [A] (> 0, taken out). */
  readonly crankingAmperes: number;
  /** What the standing motor takes beyond the plateau [A] (≥ 0); rises in 2 ms, falls in 60 ms. Default 1.5 times the plateau. */
  readonly inrushAmperes?: number;
  /** Amplitude of the ripple as a share of the plateau (0..1), default 0.15. */
  readonly rippleShare?: number;
  /** Compressions a second [Hz], default 7. */
  readonly rippleHertz?: number;
  /** At the end the current falls to nothing in a straight line [s], default 0.04. */
  readonly releaseSeconds?: number;
}

/** Generator on: a charger whose voltage ripples. */
export interface EngineRunningPhase extends AnyPhase {
  readonly kind: "engine-running";
  /** At 25 °C [V]. */
  readonly volts: number;
  /** The most that reaches the battery [A] (> 0). */
  readonly amperes: number;
  readonly voltsPerKelvin?: number;
  /** Peak to peak [V] (≥ 0), a sine, default 0.05. The current ripples with it through the resistance. */
  readonly ripplePeakToPeakVolts?: number;
  /** [Hz], default 380. */
  readonly rippleHertz?: number;
}

/** Parked: control units fall asleep in stairs, then a settled draw, now and then a wake-up. */
export interface ParkedPhase extends AnyPhase {
  readonly kind: "parked";
  /** [A] (≥ 0, taken out). */
  readonly settledAmperes: number;
  /** Total draw up to a time since parking, in order of time. Default none. */
  readonly stairs?: readonly { readonly amperes: number; readonly untilSeconds: number }[];
  /** Default none. The first one begins `everySeconds` after parking. */
  readonly wakeUps?: {
    readonly everySeconds: number;
    readonly forSeconds: number;
    /** On top of the settled draw [A]. */
    readonly amperes: number;
  };
}

/** One thing that goes on. */
export type SyntheticPhase =
  | RestPhase
  | DischargePhase
  | ChargePhase
  | LoadStepsPhase
  | CrankPhase
  | EngineRunningPhase
  | ParkedPhase;

/** The invented logger. */
export interface SyntheticInstrument {
  /** Time between rows, or between two looks where `changeDriven` [s] (> 0), default 1. */
  readonly intervalSeconds?: number;
  /** Writes a row only when a reading moved by so much since the last row, or after so long. */
  readonly changeDriven?: {
    readonly volts: number;
    readonly amperes: number;
    readonly longestSeconds: number;
    /** Voltage and current on rows of their own, the current half an interval later. */
    readonly ownRows?: boolean;
  };
  /** Standard deviations of the noise, normal, from row to row [V], [A] (≥ 0), default 0.002 V and 0.02 A. */
  readonly noiseVolts?: number;
  readonly noiseAmperes?: number;
  /** Smallest step written [V], [A] (≥ 0), default 0.001 V and 0.01 A; 0 writes every digit. */
  readonly resolutionVolts?: number;
  readonly resolutionAmperes?: number;
  /** Added to every reading [V], [A], default 0. */
  readonly offsetVolts?: number;
  readonly offsetAmperes?: number;
  /** The current written is that of so long ago [s], default 0; negative: ahead of the voltage. */
  readonly currentLagSeconds?: number;
  /** At every jump of the current two rows so far apart [s] (≥ 0), both with the mean voltage of before and after. Default 0: none. */
  readonly edgeRowsSeconds?: number;
  /** Temperature on rows of its own, so often [s]; default in every row. */
  readonly temperatureEverySeconds?: number;
  /** A second clock that shows this at the start [s since 1970-01-01T00:00:00Z]; default none. */
  readonly clockStartSeconds?: number;
}

/** What happens, to which battery, seen by which instrument. */
export interface SyntheticPlan {
  readonly battery?: SyntheticBattery;
  readonly phases: readonly SyntheticPhase[];
  readonly instrument?: SyntheticInstrument;
}
