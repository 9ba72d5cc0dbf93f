// A first day: somebody who has never measured a battery is led through one, from intake to settlement.
//
//   node examples/first-day/run.mjs
//
// Each round prints the step, why it comes next, what can hurt (once each), the answer given, and the risk of a wrong
// answer that is left. A step without an answer in answers.json is one this person cannot do: it is left out.
import { readFileSync } from "node:fs";
import { answerStep, nextStep } from "crankworthy/guidance";
import { renderCaution, renderEnd, renderStep, renderTicket } from "crankworthy/report";

// A reader that has seen enough (`| head`) closes the pipe: no reason to complain.
process.stdout.on("error", (error) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

const width = 80;
const { id, story, answers } = JSON.parse(readFileSync(new URL("answers.json", import.meta.url), "utf8"));

/** Each sentence on lines of its own, indented. */
function indented(text, mark) {
  return text
    .split("\n")
    .map((line, i) => (i === 0 ? mark : " ".repeat(mark.length)) + line)
    .join("\n");
}

const exclude = [];
const warned = new Set();
let draft = { id };
let round = 0;
let guidance = nextStep(draft);

console.log(`${story}\n`);
while (guidance.ok && !guidance.done) {
  const { step } = guidance;
  const answer = answers[step.code]?.shift();
  console.log(indented(renderStep(step, { width: width - 4 }), `${String(++round).padStart(2)}. `));
  for (const caution of guidance.cautions) {
    if (warned.has(caution.code)) continue;
    warned.add(caution.code);
    console.log(indented(renderCaution(caution, { width: width - 6 }), "    ! "));
  }
  if (answer) {
    draft = answerStep(draft, step, answer.values);
    console.log(`    > ${answer.said}\n`);
  } else {
    exclude.push(step.code);
    console.log("    > I cannot do that here.\n");
  }
  guidance = nextStep(draft, { exclude });
}

if (guidance.ok) {
  console.log(`${renderEnd(guidance, { width })}\n\n${"=".repeat(width)}\n`);
  if (guidance.evaluation) console.log(renderTicket(guidance.evaluation, { width }));
} else {
  for (const { message } of guidance.issues) console.error(message);
  process.exitCode = 1;
}
