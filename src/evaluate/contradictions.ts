import { checkTerms } from "../warranty/index.js";
import { type InputIssue, issue, picture } from "./issue.js";
import type { BatteryRecord, RecordWarranty } from "./record.js";
import { vehicleContradictions } from "./vehicle-contradictions.js";

const SEALED = new Set(["agm", "gel"]);

/**
 * What no schema sees: required alternatives, and fields that cannot both be true.
 *
 * @param record a record whose fields are each valid
 */
export function contradictions(record: BatteryRecord): InputIssue[] {
  const found: InputIssue[] = [];
  const { identity, measurements: measured, conditions = {}, warranty } = record;
  const contradiction = (path: string, received: unknown, expected: string): void => {
    found.push(issue("contradiction", path, picture(received), expected));
  };

  if (!identity.rating && !identity.labelCode)
    found.push(issue("missing", "identity", "neither rating nor labelCode", "a rating or a label code"));
  if (
    measured.restVolts === undefined &&
    !measured.cranking &&
    !measured.resistance &&
    !measured.conductance &&
    !measured.cellGravities &&
    !measured.loadTest &&
    !record.vehicle
  )
    found.push(issue("missing", "measurements", "no measurement", "at least one measurement"));

  if (measured.cellGravities && SEALED.has(identity.chemistry))
    contradiction(
      "measurements.cellGravities",
      measured.cellGravities,
      `no hydrometer readings of a sealed ${identity.chemistry} battery`,
    );
  if (conditions.waterAdded && SEALED.has(identity.chemistry))
    contradiction("conditions.waterAdded", true, `no water added to a sealed ${identity.chemistry} battery`);
  if (measured.resistance && measured.conductance)
    contradiction(
      "measurements.conductance",
      measured.conductance,
      "either a resistance or a conductance, since one is the reciprocal of the other",
    );
  if (conditions.electrolyteLow && SEALED.has(identity.chemistry))
    contradiction(
      "conditions.electrolyteLow",
      true,
      `no acid level to see in a sealed ${identity.chemistry} battery`,
    );
  if (
    measured.loadTest &&
    measured.restVolts !== undefined &&
    measured.restVolts > 0 &&
    measured.loadTest.volts > measured.restVolts
  )
    contradiction(
      "measurements.loadTest.volts",
      measured.loadTest.volts,
      `at most the rest voltage (${measured.restVolts})`,
    );
  if (
    conditions.minutesSinceRemoval !== undefined &&
    conditions.hoursAtRest !== undefined &&
    conditions.minutesSinceRemoval > 60 * conditions.hoursAtRest + 1
  )
    contradiction(
      "conditions.minutesSinceRemoval",
      conditions.minutesSinceRemoval,
      "no more than hoursAtRest",
    );
  if (
    identity.activatedOn !== undefined &&
    conditions.inspectedOn !== undefined &&
    identity.activatedOn > conditions.inspectedOn
  )
    contradiction(
      "identity.activatedOn",
      identity.activatedOn,
      `a day not after the inspection (${conditions.inspectedOn})`,
    );
  figuresOfOneBattery(identity, contradiction);
  if (identity.acid && identity.acid.fullGravity - identity.acid.emptyGravity < 0.05)
    contradiction(
      "identity.acid.emptyGravity",
      identity.acid.emptyGravity,
      `at least 0.05 below fullGravity (${identity.acid.fullGravity})`,
    );
  if (conditions.temperatureMethod && conditions.temperatureCelsius === undefined)
    contradiction(
      "conditions.temperatureMethod",
      conditions.temperatureMethod,
      "a temperatureCelsius it was used for",
    );
  if (measured.gravityTemperatureCelsius !== undefined && !measured.cellGravities)
    contradiction(
      "measurements.gravityTemperatureCelsius",
      measured.gravityTemperatureCelsius,
      "cellGravities it belongs to",
    );
  if (
    measured.voltsStandardUncertainty !== undefined &&
    measured.restVolts === undefined &&
    !measured.loadTest &&
    !record.vehicle
  )
    contradiction(
      "measurements.voltsStandardUncertainty",
      measured.voltsStandardUncertainty,
      "a voltage it belongs to",
    );
  if (
    conditions.restVoltsExtrapolated &&
    (measured.restVolts === undefined || measured.voltsStandardUncertainty === undefined)
  )
    contradiction(
      "conditions.restVoltsExtrapolated",
      true,
      "restVolts, and voltsStandardUncertainty for how well it is known",
    );
  if (conditions.hoursAtRest !== undefined && !conditions.lastEvent)
    contradiction(
      "conditions.hoursAtRest",
      conditions.hoursAtRest,
      "a lastEvent since which the battery rests",
    );
  if (
    conditions.minutesSinceRemoval !== undefined &&
    (conditions.surfaceChargeRemoval === undefined || conditions.surfaceChargeRemoval === "none")
  )
    contradiction(
      "conditions.minutesSinceRemoval",
      conditions.minutesSinceRemoval,
      "a surfaceChargeRemoval it counts from",
    );
  if (conditions.chargeCompleted && conditions.lastEvent === "discharge")
    contradiction("conditions.chargeCompleted", true, 'lastEvent other than "discharge"');
  vehicleContradictions(record, found);
  if (warranty) {
    datesInOrder(record, contradiction);
    moneyAndTerms(warranty, found);
  }
  return found;
}

const AMOUNTS = [
  "pricePaid",
  "listPriceAtPurchase",
  "listPriceToday",
  "replacementPrice",
  "retainedValue",
] as const;

function moneyAndTerms({ terms, purchase }: RecordWarranty, found: InputIssue[]): void {
  for (const { path, received, expected } of checkTerms(terms))
    found.push(issue("contradiction", `warranty.terms.${path}`, picture(received), expected));
  for (const field of AMOUNTS) {
    const amount = purchase[field];
    if (amount === undefined) continue;
    const point = amount.indexOf(".");
    if (point >= 0 && amount.length - point - 1 > terms.minorUnitDigits)
      found.push(
        issue(
          "contradiction",
          `warranty.purchase.${field}`,
          picture(amount),
          `at most ${terms.minorUnitDigits} decimals, as minorUnitDigits says`,
        ),
      );
  }
}

// Wider than any battery made: the published relations lie between 1.4 and 2.2 min/Ah and 5 to 14 A/Ah. Our choice.
const MINUTES_PER_AMPERE_HOUR = [0.7, 4] as const;
const AMPERES_PER_AMPERE_HOUR = [1.5, 30] as const;

function figuresOfOneBattery(
  { capacityAmpereHours, reserveCapacityMinutes, rating }: BatteryRecord["identity"],
  contradiction: (path: string, received: unknown, expected: string) => void,
): void {
  if (capacityAmpereHours === undefined) return;
  const between = (
    path: string,
    value: number | undefined,
    [low, high]: readonly [number, number],
    unit: string,
  ): void => {
    if (value !== undefined && (value < low * capacityAmpereHours || value > high * capacityAmpereHours))
      contradiction(
        path,
        value,
        `${low * capacityAmpereHours} to ${high * capacityAmpereHours} ${unit} for ${capacityAmpereHours} Ah`,
      );
  };
  between("identity.reserveCapacityMinutes", reserveCapacityMinutes, MINUTES_PER_AMPERE_HOUR, "min");
  between("identity.rating.amperes", rating?.amperes, AMPERES_PER_AMPERE_HOUR, "A");
}

function datesInOrder(
  { conditions, warranty, identity }: BatteryRecord,
  contradiction: (path: string, received: unknown, expected: string) => void,
): void {
  const { purchase, terms, claimedOn } = warranty!;
  const claim = claimedOn ?? conditions?.inspectedOn;
  if (claim === undefined)
    contradiction("warranty.claimedOn", undefined, "a claimedOn, or conditions.inspectedOn to stand for it");
  // Plain dates compare as text.
  if (claim !== undefined && purchase.soldOn !== undefined && purchase.soldOn > claim)
    contradiction("warranty.purchase.soldOn", purchase.soldOn, `a day not after the claim (${claim})`);
  if (claim !== undefined && purchase.installedOn !== undefined && purchase.installedOn > claim)
    contradiction(
      "warranty.purchase.installedOn",
      purchase.installedOn,
      `a day not after the claim (${claim})`,
    );
  if (
    purchase.soldOn !== undefined &&
    purchase.installedOn !== undefined &&
    purchase.installedOn < purchase.soldOn
  )
    contradiction(
      "warranty.purchase.installedOn",
      purchase.installedOn,
      `a day not before the sale (${purchase.soldOn})`,
    );
  if (claimedOn !== undefined && conditions?.inspectedOn !== undefined && claimedOn < conditions.inspectedOn)
    contradiction(
      "warranty.claimedOn",
      claimedOn,
      `a day not before the inspection (${conditions.inspectedOn})`,
    );
  if (identity.activatedOn !== undefined && claim !== undefined && identity.activatedOn > claim)
    contradiction("identity.activatedOn", identity.activatedOn, `a day not after the claim (${claim})`);
  if (purchase.receipt && purchase.soldOn === undefined)
    contradiction("warranty.purchase.receipt", true, "a soldOn that the receipt shows");
  if (terms.totalMonths < terms.freeMonths)
    contradiction(
      "warranty.terms.totalMonths",
      terms.totalMonths,
      `at least freeMonths (${terms.freeMonths})`,
    );
}
