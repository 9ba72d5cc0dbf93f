import { reasonOnCranking } from "crankworthy/vehicle";
import { describe, expect, it } from "vitest";

const codes = (...seen: Parameters<typeof reasonOnCranking>) =>
  reasonOnCranking(...seen).map((one) => one.code);

describe("reasonOnCranking", () => {
  it("high current and slow points at drag and shorts, never at resistance", () => {
    const [reason, ...more] = reasonOnCranking({ speed: "slow", current: "high", volts: 9 });
    expect(more).toEqual([]);
    expect(reason!.lookAt).toContain("starter-short");
    expect(reason!.lookAt).not.toContain("cables");
  });
  it("low current points at resistance, slow or not turning at all", () => {
    expect(codes({ speed: "slow", current: "low" })).toEqual(["low-current-slow-or-none"]);
    expect(codes({ speed: "none", current: "low" })).toEqual(["low-current-slow-or-none"]);
  });
  it("a battery that holds 12.5 V leads to the control circuit, or to the feed when it turns slowly", () => {
    expect(reasonOnCranking({ speed: "none", current: "not-measured", volts: 12.5 })[0]!.lookAt).toEqual([
      "control-circuit",
    ]);
    expect(reasonOnCranking({ speed: "slow", current: "not-measured", volts: 12.6 })[0]!.lookAt).toEqual([
      "feed-circuit",
    ]);
    expect(codes({ speed: "none", current: "not-measured", volts: 12.4 })).toEqual([]);
  });
  it("has nothing to say when the engine turns normally", () => {
    expect(codes({ speed: "normal", current: "high", volts: 12.6 })).toEqual([]);
  });
});
