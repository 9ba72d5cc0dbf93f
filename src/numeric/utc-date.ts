/**
 * A `Date` whose local-time methods answer in UTC, so that calendar functions built on `Date` give the same result on
 * every machine, also where a zone skipped a day (Pacific/Apia has no 2011-12-30). Made for date-fns, which asks every
 * date it creates for this constructor: `addMonths(start, 1, { in: utcContext })`.
 *
 * Made by a function, so that bundlers can leave it out: a class with a computed name is kept otherwise.
 */
export const UtcDate = /* @__PURE__ */ (() =>
  class UtcDate extends Date {
    override getFullYear(): number {
      return this.getUTCFullYear();
    }
    override getMonth(): number {
      return this.getUTCMonth();
    }
    override getDate(): number {
      return this.getUTCDate();
    }
    override getDay(): number {
      return this.getUTCDay();
    }
    override getHours(): number {
      return this.getUTCHours();
    }
    override getMinutes(): number {
      return this.getUTCMinutes();
    }
    override getSeconds(): number {
      return this.getUTCSeconds();
    }
    override getMilliseconds(): number {
      return this.getUTCMilliseconds();
    }
    override setFullYear(year: number, month = this.getUTCMonth(), day = this.getUTCDate()): number {
      return this.setUTCFullYear(year, month, day);
    }
    override setMonth(month: number, day = this.getUTCDate()): number {
      return this.setUTCMonth(month, day);
    }
    override setDate(day: number): number {
      return this.setUTCDate(day);
    }
    override setHours(
      hours: number,
      min = this.getUTCMinutes(),
      sec = this.getUTCSeconds(),
      ms = this.getUTCMilliseconds(),
    ): number {
      return this.setUTCHours(hours, min, sec, ms);
    }
    override setMinutes(min: number, sec = this.getUTCSeconds(), ms = this.getUTCMilliseconds()): number {
      return this.setUTCMinutes(min, sec, ms);
    }
    override setSeconds(sec: number, ms = this.getUTCMilliseconds()): number {
      return this.setUTCSeconds(sec, ms);
    }
    override setMilliseconds(ms: number): number {
      return this.setUTCMilliseconds(ms);
    }
    override getTimezoneOffset(): number {
      return 0;
    }
    [Symbol.for("constructDateFrom")](value: Date | number | string): UtcDate {
      return new UtcDate(+new Date(value));
    }
  })();
export type UtcDate = InstanceType<typeof UtcDate>;

/** Context for date-fns functions: makes them calculate in {@link UtcDate}, whatever the machine's time zone. */
export function utcContext(value: Date | number | string): UtcDate {
  return new UtcDate(+new Date(value));
}
