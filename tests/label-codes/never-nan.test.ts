import {
  decodeLabelCode,
  formatDinNumber,
  formatEtn,
  type LabelScheme,
  performanceRank,
  referenceCrankingAmperes,
} from "crankworthy/label-codes";
import fc from "fast-check";
import { describe, it } from "vitest";
import { around, either, given, maybe, neverNaN } from "../fuzz/strange-numbers.js";

const schemes = either<LabelScheme>("etn", "din-72310", "jis-d-5301", "jis-d-5306", "en-50342-2", "bci");
const texts = fc.oneof(
  fc.constantFrom("536 046 030", "57412", "55B24L", "Q-85L", "LN3", "24F", "000 000 000", "99999"),
  fc.string({ maxLength: 12 }),
);

describe("label-codes give no NaN, whatever they are given", () => {
  it("decodeLabelCode", () => {
    neverNaN(fc.record({ scheme: schemes, text: texts }), (code) => decodeLabelCode(code));
  });

  it("reference current and rank", () => {
    const options = fc.record({
      reserveCapacityMinutes: maybe(around(20, 300)),
      of: maybe(either("battery", "list-entry")),
      labelYear: maybe(around(2000, 2030)),
    });
    neverNaN(fc.tuple(fc.constantFrom("55B24L", "100D26L", "S34B20R"), options), ([type, one]) =>
      referenceCrankingAmperes(type, given(one)),
    );
    neverNaN(
      fc.record({ coldCrankingAmperes: around(100, 900), reserveCapacityMinutes: around(20, 300) }),
      performanceRank,
    );
  });

  it("writing", () => {
    neverNaN(
      fc.record({
        nominalVolts: around(6, 12),
        capacity: fc.record({ ampereHours: around(1, 300), rateHours: around(5, 20) }),
        serial: fc.constant("12"),
      }),
      formatDinNumber,
    );
    neverNaN(
      fc.record({
        nominalVolts: around(6, 12),
        capacity: fc.record({ ampereHours: around(1, 300) }),
        register: fc.constant("026"),
        rating: fc.record({ amperes: around(0, 9990) }),
      }),
      formatEtn,
    );
  });
});
