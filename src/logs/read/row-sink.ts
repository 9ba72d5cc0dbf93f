import type { LogChunk } from "../chunk.js";
import { type CellReader, cellReader, convertNumber, readClock, readNumber } from "./cell-reader.js";
import type { LogColumns, UnitScale } from "./columns.js";

/** @internal Columns being filled, a row at a time, and handed over in chunks of equal length. */
export interface RowSink {
  readonly readers: readonly CellReader[];
  /** Rows held, and rows handed over before them. */
  rows(): number;
  rowsBefore(): number;
  /** Reads the cells at `positions` (in the order of `readers`); false where one of them is bad, the row is there then, too. */
  push(cells: readonly string[], positions: readonly number[]): boolean;
  /** The same for values that are numbers already. */
  pushValues(values: readonly (number | string)[]): boolean;
  /**
   * Rows already parsed: a plane of `stride` numbers as in the file for each of `readers`, then, for dates, a plane each
   * with the fractions of their whole seconds.
   */
  append(planes: Float64Array, stride: number, rows: number): void;
  /** Whether `seconds` counts from the first row with a time, and none has come yet. */
  wantsZero(): boolean;
  /** Takes back the rows after the first `rows`. */
  rewind(rows: number): void;
  /** Chunks of the full length; at the end the rest, too. */
  take(atEnd: boolean): LogChunk[];
  /** The first time as written, where time is a date: the zero of `seconds`. */
  timeZero(): string | undefined;
}

/** @internal */
export function createRowSink(
  columns: LogColumns,
  format: { readonly decimalChar?: string; readonly null?: readonly string[] },
  chunkRows: number,
  /** Elapsed time counts from the first row that has one. */
  fromFirst: boolean,
): RowSink {
  const time = cellReader(columns, "time", format)!;
  const voltage = cellReader(columns, "voltage", format)!;
  const current = cellReader(columns, "current", format);
  const temperature = cellReader(columns, "temperature", format);
  const clock = cellReader(columns, "clock", format);
  const readers = [time, voltage, current, temperature, clock].filter((one) => one !== undefined);
  const [atCurrent, atTemperature, atClock] = [current, temperature, clock].map((one) =>
    one ? readers.indexOf(one) : -1,
  ) as [number, number, number];
  const timeClock = time.clock;
  const withOwnClock = clock === undefined && timeClock?.zoned === true;
  const withClock = clock !== undefined || withOwnClock;

  let capacity = Math.max(1024, chunkRows);
  let seconds = new Float64Array(capacity);
  let volts = new Float64Array(capacity);
  let amperes = new Float64Array(capacity);
  let celsius = new Float64Array(temperature ? capacity : 0);
  let clockSeconds = new Float64Array(withClock ? capacity : 0);
  let held = 0;
  let before = 0;
  let zeroRow = -1;
  let zeroText: string | undefined;
  let zeroWhole = 0;
  let zeroFraction = 0;

  const grow = (least: number): void => {
    while (capacity < least) capacity *= 2;
    seconds = longer(seconds, capacity);
    volts = longer(volts, capacity);
    amperes = longer(amperes, capacity);
    if (temperature) celsius = longer(celsius, capacity);
    if (withClock) clockSeconds = longer(clockSeconds, capacity);
  };

  const setZero = (whole: number, fraction: number, text: string): void => {
    zeroRow = before + held;
    zeroWhole = whole;
    zeroFraction = fraction;
    zeroText = text;
  };

  const pushTime = (text: string): void => {
    if (timeClock) {
      const there = readClock(time, timeClock, text);
      if (there && zeroRow < 0) setZero(timeClock.whole, timeClock.fraction, text.trim());
      // Whole seconds and fractions apart: the difference of two large numbers would lose digits.
      seconds[held] = there ? timeClock.whole - zeroWhole + (timeClock.fraction - zeroFraction) : Number.NaN;
      if (withOwnClock) clockSeconds[held] = there ? timeClock.whole + timeClock.fraction : Number.NaN;
    } else {
      const value = readNumber(time, text);
      seconds[held] = fromFirst ? sinceFirst(value, text) : value;
    }
  };

  const sinceFirst = (value: number, text: string): number => {
    if (zeroRow < 0 && !Number.isNaN(value)) setZero(value, 0, text.trim());
    return value - zeroWhole;
  };

  const pushClock = (text: string): void => {
    const reader = clock!;
    const face = reader.clock;
    if (!face) clockSeconds[held] = readNumber(reader, text);
    else clockSeconds[held] = readClock(reader, face, text) ? face.whole + face.fraction : Number.NaN;
  };

  // A sum of flags, not a search: this runs once a row.
  const allGood = (): boolean => {
    let bad = time.bad || voltage.bad;
    if (current?.bad || temperature?.bad || clock?.bad) bad = true;
    held++;
    return !bad;
  };

  return {
    readers,
    rows: () => held,
    rowsBefore: () => before,
    push: (cells, positions) => {
      if (held === capacity) grow(held + 1);
      pushTime(cells[positions[0]!]!);
      volts[held] = readNumber(voltage, cells[positions[1]!]!);
      amperes[held] = current ? readNumber(current, cells[positions[atCurrent]!]!) : Number.NaN;
      if (temperature) celsius[held] = readNumber(temperature, cells[positions[atTemperature]!]!);
      if (clock) pushClock(cells[positions[atClock]!]!);
      return allGood();
    },
    pushValues: (values) => {
      if (held === capacity) grow(held + 1);
      const number = (reader: CellReader, value: number | string): number =>
        typeof value === "number" ? convertNumber(reader, value) : readNumber(reader, value);
      const first = values[0]!;
      if (typeof first === "string") pushTime(first);
      else if (timeClock) {
        time.bad = true;
        seconds[held] = Number.NaN;
      } else seconds[held] = number(time, first);
      volts[held] = number(voltage, values[1]!);
      amperes[held] = current ? number(current, values[atCurrent]!) : Number.NaN;
      if (temperature) celsius[held] = number(temperature, values[atTemperature]!);
      if (clock) {
        const value = values[atClock]!;
        if (typeof value === "string") pushClock(value);
        else if (clock.clock) {
          clock.bad = true;
          clockSeconds[held] = Number.NaN;
        } else clockSeconds[held] = number(clock, value);
      }
      return allGood();
    },
    append: (planes, stride, rows) => {
      if (held + rows > capacity) grow(held + rows);
      const plane = (index: number): Float64Array => planes.subarray(index * stride, index * stride + rows);
      const targets = [
        seconds,
        volts,
        ...(current ? [amperes] : []),
        ...(temperature ? [celsius] : []),
        ...(clock ? [clockSeconds] : []),
      ];
      for (const [i, reader] of readers.entries()) {
        if (!reader.clock) {
          convertPlane(plane(i), reader.scale, targets[i]!, held);
          continue;
        }
        const [whole, fraction] = [plane(i), plane(readers.length + i)];
        if (reader === clock || withOwnClock) addPlanes(whole, fraction, 0, 0, clockSeconds, held);
        if (reader === time) addPlanes(whole, fraction, zeroWhole, zeroFraction, seconds, held);
      }
      if (fromFirst) for (let i = held; i < held + rows; i++) seconds[i] = seconds[i]! - zeroWhole;
      if (!current) amperes.fill(Number.NaN, held, held + rows);
      held += rows;
    },
    wantsZero: () => zeroRow < 0 && (fromFirst || timeClock !== undefined),
    rewind: (rows) => {
      held = rows;
      if (zeroRow >= before + rows) zeroRow = -1;
    },
    take: (atEnd) => {
      const chunks: LogChunk[] = [];
      let from = 0;
      while (held - from >= chunkRows || (atEnd && from < held)) {
        const to = Math.min(held, from + chunkRows);
        chunks.push({
          firstRow: before + from + 1,
          rows: to - from,
          seconds: seconds.subarray(from, to),
          volts: volts.subarray(from, to),
          amperes: amperes.subarray(from, to),
          ...(temperature ? { temperatureCelsius: celsius.subarray(from, to) } : {}),
          ...(withClock ? { clockSeconds: clockSeconds.subarray(from, to) } : {}),
        });
        from = to;
      }
      if (from === 0) return chunks;
      // Chunks keep the memory they were read into; what is left moves to new one.
      seconds = moved(seconds, from, held, capacity);
      volts = moved(volts, from, held, capacity);
      amperes = moved(amperes, from, held, capacity);
      if (temperature) celsius = moved(celsius, from, held, capacity);
      if (withClock) clockSeconds = moved(clockSeconds, from, held, capacity);
      held -= from;
      before += from;
      return chunks;
    },
    timeZero: () => zeroText,
  };
}

function longer(column: Float64Array, capacity: number): Float64Array<ArrayBuffer> {
  const copy = new Float64Array(capacity);
  copy.set(column);
  return copy;
}

function moved(column: Float64Array, from: number, to: number, capacity: number): Float64Array<ArrayBuffer> {
  const fresh = new Float64Array(capacity);
  fresh.set(column.subarray(from, to));
  return fresh;
}

/** The numbers of the file in SI units, by the formula of {@link convert}. */
function convertPlane(
  plane: Float64Array,
  { plus, times, over }: UnitScale,
  to: Float64Array,
  at: number,
): void {
  if (plus === 0 && times === 1 && over === 1) to.set(plane, at);
  else for (let i = 0; i < plane.length; i++) to[at + i] = ((plane[i]! + plus) * times) / over + 0;
}

function addPlanes(
  whole: Float64Array,
  fraction: Float64Array,
  fromWhole: number,
  fromFraction: number,
  to: Float64Array,
  at: number,
): void {
  for (let i = 0; i < whole.length; i++) to[at + i] = whole[i]! - fromWhole + (fraction[i]! - fromFraction);
}
