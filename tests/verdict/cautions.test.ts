import { type Action, type CautionSetting, cautions } from "crankworthy/verdict";
import { describe, expect, it } from "vitest";

const quiet: CautionSetting = {
  action: "keep",
  damage: [],
  frozen: "no",
  sealed: false,
  chargeUnknown: false,
  place: "bench",
  failedCell: false,
  otherSystem: false,
};
const air = {
  batteries: 1,
  neededCubicMetresPerHour: 1.26,
  openingSquareCentimetres: 35.28,
  freeVolumeCubicMetres: 3.15,
  enough: true,
};
const shown = (change: Partial<CautionSetting>) => cautions({ ...quiet, ...change });
const one = (code: string, change: Partial<CautionSetting>) =>
  shown(change).find((caution) => caution.code === code);

describe("cautions", () => {
  it("local codes come first, whatever the setting", () => {
    const actions: Action[] = [
      "keep",
      "charge-then-keep",
      "charge-then-repeat",
      "repeat",
      "retire",
      "isolate",
      "stop",
    ];
    for (const action of actions) expect(shown({ action })[0]!.code).toBe("local-codes-first");
  });

  it.each<[string, Partial<CautionSetting>, Partial<CautionSetting>]>([
    ["charging-air", { air }, { action: "charge-then-keep" }],
    ["room-air", { air: { ...air, enough: false, roomCubicMetres: 2 } }, { air }],
    ["jump-starting", { place: "vehicle", flat: true }, { place: "vehicle" }],
    ["jump-starting", { place: "vehicle", flat: true }, { place: "vehicle", flat: true, action: "isolate" }],
    ["jump-starting", { place: "vehicle", flat: true }, { place: "vehicle", flat: true, failedCell: true }],
    ["jump-starting", { place: "vehicle", flat: true }, { place: "vehicle", flat: true, otherSystem: true }],
    ["eye-wash", { acidHandled: true }, {}],
    ["eye-wash", { action: "charge-then-keep" }, { action: "repeat" }],
    ["neutralise-spills", { damage: ["leaking"] }, { damage: ["leaking"], sealed: true }],
    ["neutralise-spills", { frozen: "possible" }, {}],
    ["take-back", { action: "retire" }, { action: "keep" }],
  ])("%s", (code, trigger, without) => {
    expect(one(code, trigger)).toBeDefined();
    expect(one(code, without)).toBeUndefined();
  });

  it("what can hurt on a charge is said of a serviceable battery too", () => {
    const codes = shown({ action: "charge-then-keep", air, place: "vehicle", flat: true }).map((c) => c.code);
    expect(codes).toEqual(
      expect.arrayContaining(["charging-air", "ventilate-charging", "eye-wash", "jump-starting"]),
    );
  });

  it("names the number of the road by what it holds", () => {
    expect(one("return-and-transport", { action: "retire" })?.parameters).toEqual({ unNumber: "UN2794" });
    expect(one("return-and-transport", { action: "retire", sealed: true })?.parameters).toEqual({
      unNumber: "UN2800",
    });
  });

  it("a known flow of fresh air is compared as a flow, a room as a room", () => {
    const flow = one("room-air", { air: { ...air, enough: false, givenCubicMetresPerHour: 1 } });
    expect(Object.keys(flow!.parameters!)).toEqual(["neededCubicMetresPerHour", "givenCubicMetresPerHour"]);
    const room = one("room-air", { air: { ...air, enough: false, roomCubicMetres: 2 } });
    expect(room!.parameters).toMatchObject({ freeVolumeCubicMetres: 3.15, roomCubicMetres: 2 });
  });
});
