import type { Evaluation, VehicleReading } from "../evaluate/index.js";
import { fill, quantity, range } from "./format.js";
import { line, type ReportLine } from "./line.js";
import type { Voice } from "./voice.js";

/** What did the vehicle show: every reading against its limit, part by part. */
export function vehicleLines({ vehicle }: Evaluation, messages: Voice): ReportLine[] {
  if (!vehicle) return [];
  const { starting, charging, draw } = vehicle;
  const lines: ReportLine[] = [];
  for (const part of [starting, charging, draw])
    for (const one of part?.readings ?? [])
      lines.push(
        line(readingText(one, messages), "item", {
          "vehicle.margin": one.margin.value,
          "vehicle.probabilityWithin": one.probabilityWithin,
        }),
      );
  if (draw?.standingTime) {
    const { lower, upper } = draw.standingTime.interval;
    lines.push(
      line(
        fill(messages, "standing", { span: range({ lower, upper }, "d", messages), count: upper }),
        "text",
        { "vehicle.standingDaysLeast": lower, "vehicle.standingDaysMost": upper },
      ),
    );
  }
  if (draw?.flatBattery) {
    const { code, drainSufficesProbability: probability } = draw.flatBattery;
    const figures = { "vehicle.drainSuffices": probability };
    lines.push(line(fill(messages, "flatBattery", { code, probability }), "text", figures));
  }
  return lines.length > 0 ? lines : [line(messages.phrase.none)];
}

function readingText(reading: VehicleReading, messages: Voice): string {
  const { code, outcome, measured, limit, unit, probabilityWithin, sourcesAgree, doubts } = reading;
  // A draw is read in milliamperes.
  const [scale, shown] = unit === "A" && code.startsWith("draw") ? [1000, "mA"] : [1, unit];
  const text = fill(messages, "vehicleReading", {
    code,
    measured: quantity(scale * measured.value, shown, messages),
    limit: quantity(scale * limit.value, shown, messages),
    outcome,
    probability: probabilityWithin,
  });
  const [, between] = messages.sentence;
  const more = sourcesAgree ? "" : between + messages.phrase.otherSources;
  const care = doubts.length > 0 ? between + fill(messages, "care", { doubts: doubts.join(", ") }) : "";
  return text + more + care;
}

/** What can be behind it: each cause, what is said of it, and by which findings. */
export function causeLines({ causes }: Evaluation, messages: Voice): ReportLine[] {
  return (causes ?? []).map(({ code, support, because }) =>
    line(
      fill(messages, "because", {
        cause: messages.cause[code],
        support: messages.support[support],
        findings:
          because.length > 0
            ? because.map((one) => messages.finding[one][0]).join(messages.semicolon)
            : undefined,
      }),
      "item",
    ),
  );
}
