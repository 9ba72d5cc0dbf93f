import { interpolateLinear, pchip } from "crankworthy/numeric";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

const table = fc
  .array(
    fc.tuple(fc.double({ min: 0.01, max: 5, noNaN: true }), fc.double({ min: 0, max: 5, noNaN: true })),
    {
      minLength: 2,
      maxLength: 12,
    },
  )
  .map((steps) => {
    const xs = [0];
    const ys = [0];
    for (const [dx, dy] of steps) {
      xs.push(xs.at(-1)! + dx);
      ys.push(ys.at(-1)! + dy);
    }
    return { xs, ys };
  });

describe("interpolation", () => {
  it("monotone data give a monotone curve through the points, never beyond them", () => {
    fc.assert(
      fc.property(table, ({ xs, ys }) => {
        const curve = pchip(xs, ys);
        xs.forEach((x, i) => {
          expect(curve(x)).toBeCloseTo(ys[i]!, 9);
        });
        let last = Number.NEGATIVE_INFINITY;
        for (let i = 0; i <= 200; i++) {
          const y = curve(Math.min((xs.at(-1)! * i) / 200, xs.at(-1)!));
          expect(y).toBeGreaterThanOrEqual(last - 1e-9);
          last = y;
        }
      }),
    );
  });

  it("says NaN outside and throws on tables that are none", () => {
    expect(pchip([0, 1], [0, 1])(1.01)).toBeNaN();
    expect(pchip([0, 1], [0, 1])(0.25)).toBeCloseTo(0.25, 12);
    expect(interpolateLinear([0, 1], [0, 1], -0.1)).toBeNaN();
    expect(interpolateLinear([0, 1, 3], [0, 1, 2], 2)).toBe(1.5);
    expect(() => pchip([0], [0])).toThrow(RangeError);
    expect(() => pchip([0, 0], [0, 1])).toThrow(RangeError);
  });
});
