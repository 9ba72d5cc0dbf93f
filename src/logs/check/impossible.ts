import { BLOCK_ROWS, type Block } from "./blocks.js";
import type { CheckSettings } from "./options.js";
import type { LogChannel } from "./quality.js";
import { createRanges } from "./ranges.js";
import { isSentinel, JUMP } from "./sentinels.js";
import { type BlockSummary, extremes } from "./summary.js";
import type { Found } from "./whole-log.js";

/**
 * @internal Nothing about a battery of any system goes beyond (our choice): voltage and current wider than any vehicle's,
 * temperature wider than any weather and any hot engine bay, time as the library's other limits.
 */
export const POSSIBLE = {
  seconds: [-1e13, 1e13],
  volts: [-100, 100],
  amperes: [-20_000, 20_000],
  temperatureCelsius: [-90, 150],
} as const satisfies Readonly<Record<LogChannel, readonly [number, number]>>;

/** Within these no sentinel number can be meant: blocks that stay inside are not looked at. */
const USUAL = { volts: [4, 30], amperes: [-300, 300], temperatureCelsius: [-45, 80] } as const;

/** @internal Finds sentinel and impossible numbers and hands on the block without them. */
export function createImpossible(settings: CheckSettings) {
  const kept = settings.rangesPerDefect;
  const channel = (name: LogChannel) => ({
    name,
    before: Number.NaN,
    scratch: new Float64Array(BLOCK_ROWS),
    sentinels: createRanges("sentinel-number", "error", "value", kept, name),
    outside: createRanges("out-of-range", "error", "greatestMagnitude", kept, name),
  });
  type Channel = ReturnType<typeof channel>;
  const [seconds, volts, amperes, temperature] = [
    channel("seconds"),
    channel("volts"),
    channel("amperes"),
    channel("temperatureCelsius"),
  ];

  function clean(one: Channel, column: Float64Array, block: Block): Float64Array {
    const { name, sentinels, outside, scratch } = one;
    const [lower, upper] = POSSIBLE[name];
    const jump = JUMP[name];
    let changed = false;
    for (let i = 0; i < block.rows; i++) {
      const value = column[i]!;
      if (Number.isNaN(value)) continue;
      const other = name === "amperes" && i > 0 ? Math.abs(block.volts[i]! - block.volts[i - 1]!) : 0;
      const sentinel = jump !== undefined && isSentinel(name, value, one.before, other);
      if (!sentinel) one.before = value;
      if (!sentinel && value >= lower && value <= upper) continue;
      if (!changed) scratch.set(column.subarray(0, block.rows));
      changed = true;
      scratch[i] = Number.NaN;
      const magnitude = Math.min(Math.abs(value), Number.MAX_VALUE);
      if (sentinel) sentinels.row(block.firstIndex + i, block.number(i), value);
      else outside.row(block.firstIndex + i, block.number(i), magnitude);
    }
    return changed ? scratch.subarray(0, block.rows) : column;
  }
  function pass(one: Channel, column: Float64Array, rows: number): void {
    for (let i = rows - 1; i >= 0; i--)
      if (!Number.isNaN(column[i]!)) {
        one.before = column[i]!;
        return;
      }
  }
  function look(one: Channel, column: Float64Array, block: Block, least: number, most: number): Float64Array {
    const [lower, upper] = USUAL[one.name as keyof typeof USUAL];
    if (least < lower || most > upper) return clean(one, column, block);
    pass(one, column, block.rows);
    return column;
  }
  const all = [seconds, volts, amperes, temperature];
  return {
    /** The same block, or one with the impossible numbers taken out. */
    clean(block: Block, summary: BlockSummary): Block {
      const first = block.seconds[0]!;
      const last = block.seconds[block.rows - 1]!;
      const [least, most] = summary.increasing ? [first, last] : extremes(block.seconds, block.rows);
      const time =
        least < POSSIBLE.seconds[0] || most > POSSIBLE.seconds[1]
          ? clean(seconds, block.seconds, block)
          : block.seconds;
      const voltage = look(volts, block.volts, block, summary.leastVolts, summary.mostVolts);
      const current = look(amperes, block.amperes, block, summary.leastAmperes, summary.mostAmperes);
      const celsius =
        block.temperatureCelsius &&
        look(temperature, block.temperatureCelsius, block, summary.leastTemperature, summary.mostTemperature);
      const same =
        time === block.seconds &&
        voltage === block.volts &&
        current === block.amperes &&
        celsius === block.temperatureCelsius;
      if (same) return block;
      return { ...block, seconds: time, volts: voltage, amperes: current, temperatureCelsius: celsius };
    },
    /** `explained`: channels whose numbers a wrong unit explains; for them impossible is no defect of its own. */
    finish(explained: readonly LogChannel[]): Found[] {
      return all.flatMap((one) =>
        explained.includes(one.name)
          ? [one.sentinels.finish()]
          : [one.sentinels.finish(), one.outside.finish()],
      );
    },
  };
}
