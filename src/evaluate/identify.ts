import { decodeLabelCode, type LabelReading } from "../label-codes/index.js";
import { estimate, isRefusal, type Mutable } from "../numeric/index.js";
import { capacityAmpereHours, convertRating, reserveCapacityMinutes } from "../ratings/index.js";
import type { IdentitySection, ReferenceCranking } from "./evaluation.js";
import { type InputIssue, issue } from "./issue.js";
import { ranges } from "./ranges.data.js";
import type { RecordIdentity } from "./record.js";
import { note, refused, type Workbook } from "./workbook.js";

// A printed figure may be rounded; beyond this share two figures of one label contradict each other. Our choice.
const SAME_FIGURE = 0.02;
/** Two standards on one label contradict each other from this many standard uncertainties of the conversion on. */
const FAR_APART = 3;

/**
 * What is it: reads the label code, settles which rating the ability is held against, and completes capacity and
 * reserve capacity from each other.
 *
 * @returns the section, or the contradictions between label code and printed figures
 */
export function identify(identity: RecordIdentity, book: Workbook): IdentitySection | readonly InputIssue[] {
  let label: LabelReading | undefined;
  if (identity.labelCode) {
    const read = decodeLabelCode(identity.labelCode, book.derivation);
    if (isRefusal(read)) {
      refused(book, "identity.labelCode", read);
      note(book, "label-refused", "warning", {
        scheme: identity.labelCode.scheme,
        text: identity.labelCode.text,
      });
    } else if (plausibleCurrent(read)) label = read;
    else {
      refused(book, "identity.labelCode", IMPLAUSIBLE_CURRENT);
      note(book, "label-refused", "warning", {
        scheme: identity.labelCode.scheme,
        text: identity.labelCode.text,
      });
    }
  }
  const issues = labelContradictions(identity, label);
  if (issues.length > 0) return issues;
  if (identity.chemistry === "unknown") note(book, "chemistry-unknown", "warning");
  const rating = referenceCranking(identity, label, book);
  const nominalVolts = identity.nominalVolts ?? label?.nominalVolts;
  const section: Mutable<IdentitySection> = { chemistry: identity.chemistry };
  if (nominalVolts !== undefined) section.nominalVolts = nominalVolts;
  if (label) section.label = label;
  if (rating) section.rating = rating;
  capacities(section, identity, book);
  return section;
}

const IMPLAUSIBLE_CURRENT = {
  refused: true,
  code: "implausible-current",
  reason: "The code stands for a cranking current that no starter battery has.",
  wouldHelp: "The code as printed.",
} as const;

// A mistyped digit makes 9990 A out of 680 A; the record's own range is the measure.
function plausibleCurrent({ rating, estimatedRating }: LabelReading): boolean {
  const { min, max } = ranges["identity.rating.amperes"];
  const amperes = rating?.amperes ?? estimatedRating?.amperes.value ?? min;
  return amperes >= min && amperes <= max;
}

function labelContradictions(identity: RecordIdentity, label: LabelReading | undefined): InputIssue[] {
  if (!label) return [];
  const issues: InputIssue[] = [];
  const differ = (path: string, given: number | undefined, read: number | undefined, unit: string): void => {
    if (given === undefined || read === undefined || Math.abs(given / read - 1) <= SAME_FIGURE) return;
    issues.push(
      issue(
        "contradiction",
        path,
        `${given} ${unit}`,
        `${read} ${unit}, as the label code ${label.text} says`,
      ),
    );
  };
  differ("identity.nominalVolts", identity.nominalVolts, label.nominalVolts, "V");
  if (label.capacity?.rateHours === 20)
    differ("identity.capacityAmpereHours", identity.capacityAmpereHours, label.capacity.ampereHours, "Ah");
  if (identity.rating?.standard.startsWith("en-50342-1"))
    differ("identity.rating.amperes", identity.rating.amperes, label.rating?.amperes, "A");
  else if (identity.rating && label.rating) {
    // Another standard beside the code is another number, as far apart as the conversion allows.
    const { standard, amperes } = identity.rating;
    const expected = convertRating({
      amperes: { value: label.rating.amperes, standardUncertainty: 0 },
      from: "en-50342-1:2015",
      to: standard,
    });
    if (!isRefusal(expected) && Math.abs(amperes - expected.value) > FAR_APART * expected.standardUncertainty)
      issues.push(
        issue(
          "contradiction",
          "identity.rating.amperes",
          `${amperes} A`,
          `about ${Math.round(expected.value)} A, as the label code ${label.text} says in another standard`,
        ),
      );
  }
  return issues;
}

function referenceCranking(
  identity: RecordIdentity,
  label: LabelReading | undefined,
  book: Workbook,
): ReferenceCranking | undefined {
  if (identity.rating)
    return {
      standard: identity.rating.standard,
      amperes: { value: identity.rating.amperes, standardUncertainty: 0 },
      from: "printed",
    };
  if (label?.rating)
    return {
      standard: label.rating.standard,
      amperes: { value: label.rating.amperes, standardUncertainty: 0 },
      from: "label-code",
    };
  if (label?.estimatedRating) {
    const { standard, amperes, basis } = label.estimatedRating;
    note(book, "rating-estimated", "warning", { amperes: amperes.value, basis });
    return { standard, amperes, from: "type-estimate" };
  }
  return undefined;
}

// What is printed stands; the other of the two is estimated from it.
function capacities(section: Mutable<IdentitySection>, identity: RecordIdentity, book: Workbook): void {
  const { label } = section;
  const ampereHours =
    identity.capacityAmpereHours ??
    (label?.capacity?.rateHours === 20 ? label.capacity.ampereHours : undefined);
  const minutes = identity.reserveCapacityMinutes;
  const construction =
    identity.chemistry === "agm" || identity.chemistry === "gel" ? "valve-regulated" : "flooded";
  if (ampereHours !== undefined) section.capacityAmpereHours = { value: ampereHours, standardUncertainty: 0 };
  else if (minutes !== undefined) {
    const estimated = capacityAmpereHours({ reserveCapacityMinutes: minutes, construction }, book.derivation);
    if (!isRefusal(estimated))
      section.capacityAmpereHours = estimate(estimated.value, estimated.standardUncertainty);
  }
  if (minutes !== undefined) section.reserveCapacityMinutes = { value: minutes, standardUncertainty: 0 };
  else if (ampereHours !== undefined) {
    const estimated = reserveCapacityMinutes(
      { capacityAmpereHours: ampereHours, construction },
      book.derivation,
    );
    if (!isRefusal(estimated))
      section.reserveCapacityMinutes = estimate(estimated.value, estimated.standardUncertainty);
  }
}
