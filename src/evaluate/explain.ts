import type { Estimate, Interval } from "../numeric/index.js";
import { type Derivation, derive, deriveProbability } from "../sources/index.js";
import type { DecisionPolicy, Verdict } from "../verdict/index.js";
import type { AbilitySection, AgeSection, ChargeSection } from "./evaluation.js";

const GUIDE = { source: "jcgm-100", standing: "from-memory" } as const;

/** The steps that belong to no single room: intervals, and the probabilities the verdict rests on. */
export function explainVerdict(
  derivation: Derivation,
  verdict: Verdict,
  ability: readonly AbilitySection[],
  charge: ChargeSection | undefined,
  age: AgeSection | undefined,
  policy: DecisionPolicy,
): void {
  if (charge)
    interval(derivation, "state of charge, 95 % interval", charge.stateOfCharge, charge.interval, "1");
  for (const one of ability)
    interval(derivation, `ability by ${one.from}, 95 % interval`, one.ratio, one.interval, "1");
  const first = ability[0];
  if (first) {
    const margin = (limit: number): Estimate => ({
      value: first.ratio.value - limit,
      standardUncertainty: first.ratio.standardUncertainty,
    });
    if (verdict.serviceableProbability !== undefined)
      deriveProbability(
        derivation,
        "probability that the ability reaches the serviceable limit",
        margin(policy.serviceableFraction),
        verdict.serviceableProbability,
      );
    if (verdict.unserviceableProbability !== undefined) {
      const { value, standardUncertainty } = margin(policy.unserviceableFraction);
      deriveProbability(
        derivation,
        "probability that the ability is below the unserviceable limit",
        { value: -value, standardUncertainty },
        verdict.unserviceableProbability,
      );
    }
  }
  if (age)
    derive(
      derivation,
      "age, oldest to youngest reading",
      "inspection day − last day .. inspection day − first day, over all readings of the code",
      { code: age.dateCode.text, youngestDays: age.ageDays.lower },
      age.ageDays.upper,
      "d",
      { source: "crankworthy-policy", standing: "computed" },
    );
}

function interval(
  derivation: Derivation,
  quantity: string,
  of: Estimate,
  { lower, upper }: Interval,
  unit: string,
): void {
  const inputs = { value: of.value, u: of.standardUncertainty, lower };
  derive(derivation, quantity, "value − 1.96·u .. value + 1.96·u", inputs, upper, unit, GUIDE);
}
