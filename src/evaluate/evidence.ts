import { judgeCellGravities, readMissingCells } from "../bench/index.js";
import { isRefusal, type Mutable } from "../numeric/index.js";
import type { DecisionPolicy, Evidence, SystemReading } from "../verdict/index.js";
import type { ChargeOutcome } from "./charge.js";
import type { ChargeSection } from "./evaluation.js";
import { EMPTY_VOLTS } from "./ice.js";
import type { BatteryRecord } from "./record.js";
import { voltmeterUncertainty } from "./system.js";
import { SLEEPING_AMPERES } from "./vehicle-contradictions.js";
import { refused, type Workbook } from "./workbook.js";

/** The evidence that does not come from a test of ability: damage, ice, system, charge, cells. */
export function gather(
  record: BatteryRecord,
  system: SystemReading,
  { section, ice }: ChargeOutcome,
  policy: DecisionPolicy,
  book: Workbook,
): Mutable<Evidence> {
  const { conditions = {}, measurements } = record;
  const { restVolts } = measurements;
  const evidence: Mutable<Evidence> = {
    damage: conditions.damage ?? [],
    frozen: conditions.ice ? "seen" : ice ? "possible" : "no",
    electrolyteLow: conditions.electrolyteLow === true,
    system,
    // A charge completed long ago proves nothing: batteries discharge themselves.
    chargeCompleted:
      conditions.chargeCompleted === true && (conditions.hoursAtRest ?? 0) <= FRESH_CHARGE_HOURS,
    abilities: [],
  };
  if (restVolts !== undefined) evidence.systemVolts = restVolts;
  if (ice)
    evidence.freezing = {
      temperatureCelsius: ice.temperatureCelsius,
      freezingPointCelsius: ice.freezingPointCelsius,
    };
  if (section)
    evidence.charge = {
      stateOfCharge: section.stateOfCharge,
      bound: section.bound,
      consistent: section.combined?.consistent !== false,
    };
  if (system === "twelve-volt" && restVolts !== undefined) {
    // Below the range of the curve the voltage still says one thing: the charge is at most empty.
    if (!section && restVolts < EMPTY_VOLTS)
      evidence.charge = { stateOfCharge: { value: 0, standardUncertainty: 0.09 }, bound: "upper" };
    // A consumer pulls the voltage down like a failed cell: without loads is when cells can be counted.
    const loaded =
      conditions.loadsOff === false ||
      (conditions.loadAmperes ?? 0) > SLEEPING_AMPERES ||
      (conditions.place === "vehicle" &&
        conditions.loadsOff !== true &&
        conditions.loadAmperes === undefined);
    if (!loaded) missingCell(evidence, restVolts, voltmeterUncertainty(measurements), book);
  }
  cells(evidence, record, section, policy, book);
  return evidence;
}

function missingCell(evidence: Mutable<Evidence>, volts: number, uncertainty: number, book: Workbook): void {
  const missing = readMissingCells(
    { volts, voltsStandardUncertainty: uncertainty, chargedBefore: evidence.chargeCompleted },
    book.derivation,
  );
  if (missing.cells > 0)
    evidence.missingCell = { cells: missing.cells, shortfallVolts: missing.shortfallVolts.value };
}

// A map, because an object would turn the number into text at every look-up.
/** A completed charge counts for a week [h]: 2-10 % a month self-discharge at room temperature. Our choice. */
const FRESH_CHARGE_HOURS = 168;

const SPREAD_LIMIT_NAMES = /* @__PURE__ */ new Map([
  [0.05, "usual"],
  [0.03, "marine"],
  [0.025, "strict"],
] as const);

function cells(
  evidence: Mutable<Evidence>,
  record: BatteryRecord,
  section: ChargeSection | undefined,
  policy: DecisionPolicy,
  book: Workbook,
): void {
  const measured = section?.gravity?.cells;
  if (!measured || measured.length < 2) return;
  const judged = judgeCellGravities(
    {
      gravities: measured.map((cell) => cell.value),
      limit: SPREAD_LIMIT_NAMES.get(policy.cellSpread)!,
      afterFullCharge: evidence.chargeCompleted,
      waterAdded: record.conditions?.waterAdded === true,
    },
    book.derivation,
  );
  if (isRefusal(judged)) {
    refused(book, "measurements.cellGravities", judged);
    return;
  }
  evidence.cells = {
    spread: judged.spread.value,
    exceedProbability: judged.exceedProbability,
    weakestCell: judged.weakestCell,
    mixed: !judged.invalidReasons.includes("water-not-mixed"),
  };
}
