import type { Chemistry } from "../charge-state/index.js";
import type { PlainDate } from "../numeric/index.js";
import type { RatingStandard } from "../ratings/index.js";
import type {
  ChargingControl,
  CrankingObservation,
  DrawProfileName,
  EngineClass,
  RippleLimitName,
  RippleMethod,
  RipplePlace,
} from "../vehicle/index.js";
import type { DamageSign } from "../verdict/index.js";
import type { Purchase, WarrantyTerms } from "../warranty/index.js";

/** A cranking rating as printed: the number and the standard (with edition) beside it. */
export interface PrintedRating {
  readonly standard: RatingStandard;
  /** A, as printed. */
  readonly amperes: number;
}

/** A type or size code from the label. */
export interface LabelCode {
  readonly scheme: "etn" | "din-72310" | "jis-d-5301" | "jis-d-5306" | "en-50342-2" | "bci";
  readonly text: string;
}

/** A manufacturing date code as read from case, post or sticker. */
export interface DateCode {
  readonly text: string;
  /** The scheme, when the shop knows it; otherwise every scheme is tried and all readings are returned. */
  readonly scheme?: string;
  /** A second field that can close an open decade. */
  readonly vehicleYear?: number;
}

/** Acid of this battery, when known better than its chemistry tells. Relative density 25 °C/25 °C. */
export interface AcidGravities {
  readonly fullGravity: number;
  readonly emptyGravity: number;
}

/** Which battery it is. Chemistry, and a rating or a label code, are required. */
export interface RecordIdentity {
  readonly chemistry: Chemistry;
  readonly rating?: PrintedRating;
  readonly labelCode?: LabelCode;
  readonly nominalVolts?: 6 | 12 | 24;
  /** Ah at the 20 h rate, as printed. */
  readonly capacityAmpereHours?: number;
  /** Minutes at 25 A, as printed. */
  readonly reserveCapacityMinutes?: number;
  readonly dateCode?: DateCode;
  /** Day of first filling or activation of a battery stored dry; never derived from the date code. */
  readonly activatedOn?: PlainDate;
  readonly acid?: AcidGravities;
}

/** How and where it was measured. All optional; what is missing is said in the findings. */
export interface RecordConditions {
  readonly inspectedOn?: PlainDate;
  readonly place?: "bench" | "vehicle";
  /** °C of the battery. */
  readonly temperatureCelsius?: number;
  readonly temperatureMethod?: "electrolyte" | "case-contact" | "case-infrared" | "ambient";
  /** What the battery did last before resting. */
  readonly lastEvent?: "charge" | "drive" | "discharge";
  /** Hours since then, without charge or load. */
  readonly hoursAtRest?: number;
  /** How surface charge was drawn off before the rest reading. */
  readonly surfaceChargeRemoval?: "none" | "lights" | "load";
  /** Minutes without load since surface charge was drawn off. */
  readonly minutesSinceRemoval?: number;
  /** `restVolts` was extrapolated from a recorded relaxation; `voltsStandardUncertainty` says how well. */
  readonly restVoltsExtrapolated?: boolean;
  /** The charger had finished, or three hourly readings were equal, before this test. */
  readonly chargeCompleted?: boolean;
  /** In the vehicle: lamps, blower and control units known to be off or asleep. */
  readonly loadsOff?: boolean;
  /** In the vehicle: A that consumers drew from the battery while it was read, where that was measured. */
  readonly loadAmperes?: number;
  /** In the vehicle: minutes since it was last touched, locked or woken; its modules need that long to fall asleep. */
  readonly minutesSinceLocked?: number;
  /** Both leads were checked against the post marks. */
  readonly leadsVerified?: boolean;
  readonly damage?: readonly DamageSign[];
  readonly ice?: boolean;
  readonly electrolyteLow?: boolean;
  readonly waterAdded?: boolean;
  /** Wrong size, type or use for the vehicle, as terms may exclude. */
  readonly wrongApplication?: boolean;
  readonly dateCodeAltered?: boolean;
}

/** An estimated cranking current as an instrument shows it, in the standard it was set to. */
export interface CrankingMeasurement {
  readonly standard: RatingStandard;
  /** A; several readings of one battery as a list. */
  readonly amperes: number | readonly number[];
  /** The list holds this many readings of each placing of the clamps, one placing after the other. */
  readonly readingsPerPlacement?: number;
  /** Standard uncertainty of one reading as a fraction; 0.045 is assumed, and said, when missing. */
  readonly relativeStandardUncertainty?: number;
  /** Whether the instrument allowed for the battery's temperature; taken as yes, with more uncertainty, when missing. */
  readonly temperatureCompensated?: boolean;
}

/** A resistance or conductance means something only against a reference for this very type. */
export type ReferenceBasis = "own-baseline" | "published-for-type" | "fleet-median";

/** An ohmic reading with its reference. */
export interface ResistanceMeasurement {
  readonly milliohms: number;
  readonly referenceMilliohms: number;
  readonly referenceBasis: ReferenceBasis;
}

/** A conductance reading with its reference. */
export interface ConductanceMeasurement {
  readonly siemens: number;
  readonly referenceSiemens: number;
  readonly referenceBasis: ReferenceBasis;
}

/** An adjustable-load test. */
export interface LoadTestMeasurement {
  readonly loadAmperes: number;
  readonly seconds: number;
  /** V at the end of the load. */
  readonly volts: number;
  /** An earlier test failed and the battery was charged in between. */
  readonly repeated?: boolean;
}

/** What was measured on the battery; at least one of them, or one on the vehicle. */
export interface RecordMeasurements {
  /** V at the posts; negative when the meter shows so. */
  readonly restVolts?: number;
  /** Standard uncertainty of the voltmeter, V; 0.02 is assumed, and said, when missing. */
  readonly voltsStandardUncertainty?: number;
  readonly cranking?: CrankingMeasurement;
  readonly resistance?: ResistanceMeasurement;
  readonly conductance?: ConductanceMeasurement;
  /** Hydrometer readings as read, one per cell, 1 to 6 of them. */
  readonly cellGravities?: readonly number[];
  /** °C of the acid in the hydrometer, when it differs from the battery's. */
  readonly gravityTemperatureCelsius?: number;
  readonly loadTest?: LoadTestMeasurement;
}

/** What the engine needs. */
export interface RecordRequirement {
  /** A the engine draws while cranking at `atCelsius`. */
  readonly crankingAmperes: number;
  readonly atCelsius: number;
  readonly coldestMorningCelsius: number;
}

/** Read while the starter turns the engine, or should. */
export interface StartingMeasurement {
  /** V at the battery posts: the lowest steady value while cranking. */
  readonly crankingVolts?: number;
  /** Whether that value includes the dip of the first 0.1 to 0.3 s; required with `crankingVolts`. */
  readonly inrush?: "left-out" | "included";
  /** °C of engine and battery; the battery's when missing. */
  readonly engineTemperatureCelsius?: number;
  /** A, steady. */
  readonly crankingAmperes?: number;
  /** Class of engine with a published starter current; required to judge `crankingAmperes`. */
  readonly engine?: EngineClass;
  /** How the engine turned. */
  readonly speed?: CrankingObservation["speed"];
  /** V lost from the positive post to the starter's terminal, at `crankingAmperes`. */
  readonly positiveDropVolts?: number;
  /** V lost from the starter's frame to the negative post. */
  readonly groundDropVolts?: number;
  /** V lost across the solenoid's contacts. */
  readonly solenoidDropVolts?: number;
}

/** AC ripple with where and how it was read, and the limit to hold it against: published limits differ tenfold. */
export interface RippleMeasurement {
  readonly volts: number;
  readonly place: RipplePlace;
  readonly method: RippleMethod;
  readonly limit: RippleLimitName;
}

/** Read with the engine running. */
export interface ChargingMeasurement {
  /** V at the battery posts, consumers off. */
  readonly regulatedVolts?: number;
  /** V at the battery posts, lights and blower on. */
  readonly loadedVolts?: number;
  /** V at the battery posts, engine off, just before. */
  readonly engineOffVolts?: number;
  /** °C around the regulator, not of the battery. */
  readonly regulatorTemperatureCelsius?: number;
  /** How the voltage is set; `unknown` when missing. */
  readonly control?: ChargingControl;
  readonly engineRpm?: number;
  /** A into the battery while `regulatedVolts` was read. */
  readonly chargeAmperes?: number;
  /** V lost from the alternator's output to the positive post. */
  readonly positiveDropVolts?: number;
  /** V lost from the alternator's frame to the negative post. */
  readonly groundDropVolts?: number;
  /** A of the alternator while the drops were read. */
  readonly outputAmperes?: number;
  readonly ripple?: RippleMeasurement;
}

/** Current that the parked vehicle takes out of its battery. */
export interface DrawMeasurement {
  /** A, the lowest steady value. */
  readonly drawAmperes: number;
  /** Minutes since the vehicle was last touched, locked or woken. */
  readonly settledMinutes: number;
  /** An alarm, a tracker or the like is known to take more than the expected draw. */
  readonly equipmentExplains?: boolean;
  /** Limits to hold it against; `default` when missing. */
  readonly profile?: DrawProfileName;
  /** Days the vehicle stood before it did not start. */
  readonly parkedDays?: number;
  /** The battery was fully charged when the vehicle was parked; anywhere from half to full when nobody says. */
  readonly fullWhenParked?: boolean;
}

/** What was measured on the vehicle, 12 V; it tells the battery from what surrounds it. */
export interface RecordVehicle {
  readonly starting?: StartingMeasurement;
  readonly charging?: ChargingMeasurement;
  readonly draw?: DrawMeasurement;
}

/** The room a battery is charged in. */
export interface RecordVentilation {
  /** m³ of free air. */
  readonly roomCubicMetres?: number;
  /** m³/h of fresh air. */
  readonly airFlowCubicMetresPerHour?: number;
  /** Batteries charged there at once, this one counted; 1 when missing. */
  readonly batteries?: number;
}

/** Terms and sale, for the settlement of a claim. */
export interface RecordWarranty {
  readonly terms: WarrantyTerms;
  readonly purchase: Purchase;
  /** Day of the claim; the inspection date when missing. */
  readonly claimedOn?: PlainDate;
  readonly paidInCash?: boolean;
}

/**
 * One battery on one day: what its label says, what was measured and how, what the engine needs, what was sold.
 * Units stand in the names; SI and °C. Everything but chemistry, a rating or label code, and one measurement is
 * optional.
 */
export interface BatteryRecord {
  readonly schemaVersion?: 1;
  /** The caller's own reference, handed through. */
  readonly id?: string;
  readonly identity: RecordIdentity;
  readonly conditions?: RecordConditions;
  readonly measurements: RecordMeasurements;
  readonly vehicle?: RecordVehicle;
  readonly ventilation?: RecordVentilation;
  readonly requirement?: RecordRequirement;
  readonly warranty?: RecordWarranty;
}
