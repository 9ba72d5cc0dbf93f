import { evaluate } from "crankworthy";
import { renderTicket } from "crankworthy/report";

const evaluation = evaluate({
  identity: {
    chemistry: "efb",
    rating: { standard: "en-50342-1:2015", amperes: 680 },
    labelCode: { scheme: "etn", text: "560 901 068" },
  },
  conditions: { temperatureCelsius: 18, lastEvent: "charge", hoursAtRest: 26, chargeCompleted: true },
  measurements: {
    restVolts: 12.71,
    // The instrument was set to another standard than the label's: converted, with the conversion's uncertainty.
    cranking: { standard: "sae-j537", amperes: [390, 383, 387] },
  },
});

const { condition, action, unserviceableProbability } = evaluation.verdict;
console.log(`${condition}, ${action}, ${(100 * unserviceableProbability).toFixed(0)} in 100 sure\n`);
console.log(renderTicket(evaluation, { width: 78 }));
