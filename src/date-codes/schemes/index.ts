import type { DateScheme, DateSchemeId } from "../scheme.js";
import { digitLetterAToL } from "./digit-letter-a-to-l.js";
import { digitLetterNoI } from "./digit-letter-no-i.js";
import { iec60062 } from "./iec-60062.js";
import { isoDate } from "./iso-date.js";
import { letterMonthAToL } from "./letter-month-a-to-l.js";
import { letterMonthNoI } from "./letter-month-no-i.js";
import { mmDashYyyy } from "./mm-yyyy.js";
import { mmyy } from "./mmyy.js";
import { wwyy } from "./wwyy.js";
import { yddd } from "./yddd.js";
import { ywwd } from "./ywwd.js";
import { yyddd } from "./yyddd.js";
import { yymm } from "./yymm.js";
import { yymmdd } from "./yymmdd.js";
import { yyww } from "./yyww.js";
import { yyyyDashMm } from "./yyyy-mm.js";
import { yyyymmdd } from "./yyyymmdd.js";

/** Every scheme; the order matters only between readings that are otherwise equal. */
export const everyScheme: readonly DateScheme[] = [
  letterMonthNoI,
  letterMonthAToL,
  digitLetterNoI,
  digitLetterAToL,
  iec60062,
  mmyy,
  yymm,
  wwyy,
  yyww,
  yddd,
  ywwd,
  yyddd,
  yymmdd,
  yyyymmdd,
  isoDate,
  mmDashYyyy,
  yyyyDashMm,
];

/** Every scheme by its name. */
export const dateSchemes = /* @__PURE__ */ Object.fromEntries(
  /* @__PURE__ */ everyScheme.map((scheme) => [scheme.id, scheme]),
) as Readonly<Record<DateSchemeId, DateScheme>>;
