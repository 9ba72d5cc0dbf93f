import {
  stationaryAirFlowCubicMetresPerHour,
  stationaryGasMilliamperesPerAmpereHour,
  workshopAirFlowCubicMetresPerHour,
  workshopGasAmperesPer100AmpereHours,
} from "crankworthy/bench";
import { describe, expect, it } from "vitest";

describe("ventilation", () => {
  it("both forms agree when the same current is put in both units", () => {
    // 20 mA/Ah = 2 A per 100 Ah.
    const stationary = stationaryAirFlowCubicMetresPerHour({ gasCurrent: 20, capacityAmpereHours: 70 });
    const workshop = workshopAirFlowCubicMetresPerHour({ gasCurrent: 2, capacityAmpereHours: 70 });
    expect(workshop).toBeCloseTo(stationary, 12);
    expect(workshopGasAmperesPer100AmpereHours["iu-vented"]).toBe(
      stationaryGasMilliamperesPerAmpereHour["vented-boost"] / 10,
    );
  });

  it("adds up over batteries and cells", () => {
    const one = workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: 70 });
    expect(
      workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: 70, batteries: 3 }),
    ).toBeCloseTo(3 * one, 12);
    expect(
      workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: 70, cells: 3 }),
    ).toBeCloseTo(one / 2, 12);
  });

  it("throws on a negative capacity", () => {
    expect(() => workshopAirFlowCubicMetresPerHour({ gasCurrent: 6, capacityAmpereHours: -1 })).toThrow(
      /capacity/,
    );
  });
});
