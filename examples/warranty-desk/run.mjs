// A warranty desk: eight claims settled line by line, a dispute decided by the dossier, and what the promise costs.
//
//   node examples/warranty-desk/run.mjs
import { readFileSync } from "node:fs";
import { differencesBetween, evaluate, LIBRARY_VERSION, reopenDossier } from "crankworthy/evaluate";
import { english, layOutTicket, reportSections } from "crankworthy/report";
import {
  canonicalJson,
  claimReference,
  expectedWarrantyCost,
  fitWeibullLife,
  noDefectShare,
  promiseOf,
  readClaimReference,
  sealDossier,
  verifyDossier,
} from "crankworthy/warranty";

// In a real desk the key comes from a safe place outside the program, 32 random bytes, and the customer never has it.
const deskKey = "an example's key, which is no secret at all";
const width = 80;
const shown = new Set(["now", "warranty"]);

const { terms, claims, sales, returns } = JSON.parse(
  readFileSync(new URL("claims.json", import.meta.url), "utf8"),
);

// A reader that has seen enough (`| head`) closes the pipe: no reason to complain.
process.stdout.on("error", (error) => {
  if (error.code !== "EPIPE") throw error;
  process.exit();
});

const print = (text = "") => console.log(text);
const heading = (text) => print(`${text}\n${"-".repeat(text.length)}`);
const percent = (share) => `${(100 * share).toFixed(1)} %`;

/** The claim's record with the terms it was sold under, and the reference as its id. */
function recordOf(claim) {
  const { claimedOn } = claim.record.warranty;
  const id = claimReference(["CLM", claimedOn.slice(0, 4), claim.number]);
  return { ...claim.record, id, warranty: { ...claim.record.warranty, terms: terms[claim.terms] } };
}

function showClaim(claim) {
  const record = recordOf(claim);
  heading(`${record.id}, ${claim.terms} terms`);
  print(`${claim.story}\n`);
  if (claim.typed) showTyped(claim.typed, record.id);
  const sections = reportSections(evaluate(record), english).filter(({ question }) => shown.has(question));
  print(`${layOutTicket(sections, width)}\n`);
}

function showTyped(typed, id) {
  const read = readClaimReference(typed);
  print(`The e-mail says ${typed}: ${read.valid ? "a valid reference" : "no valid reference"}.`);
  const on = read.typos.find(({ corrected }) => corrected === id);
  if (on)
    print(`${on.kind} at character ${on.position}: ${on.written} for ${on.instead} gives ${on.corrected}.\n`);
}

/** The dossier as the desk sealed it, and the copy that came back: another sale date, evaluated and hashed anew. */
async function dossiersOf(claim) {
  const record = recordOf(claim);
  const sealed = await sealDossier(
    { record, evaluation: evaluate(record), libraryVersion: LIBRARY_VERSION },
    { key: deskKey },
  );
  const purchase = { ...record.warranty.purchase, ...claim.disputed };
  const altered = { ...record, warranty: { ...record.warranty, purchase } };
  const copy = await sealDossier({
    record: altered,
    evaluation: evaluate(altered),
    libraryVersion: LIBRARY_VERSION,
  });
  const presented = { ...copy, seal: { ...copy.seal, keyed: sealed.seal.keyed } };
  return [canonicalJson(sealed), canonicalJson(presented)];
}

function showCheck(whose, { answer, digestHolds, keyedSeal, changes }) {
  print(`${whose}: ${answer} (hashes ${digestHolds ? "hold" : "broken"}, keyed seal ${keyedSeal})`);
  for (const { path, kind, shownBy } of changes) print(`    ${path}: ${kind}, shown by the ${shownBy} marks`);
}

async function showDispute(claim) {
  heading(`The dispute about ${recordOf(claim).id}`);
  const [ours, theirs] = await dossiersOf(claim);
  print("The copy alone, without the desk's key, looks right, because its hashes were computed anew:");
  showCheck("  the copy", await verifyDossier(theirs));
  print("\nWith the key:");
  const presented = await verifyDossier(theirs, { key: deskKey });
  showCheck("  the copy", presented);
  const original = await reopenDossier(ours, { key: deskKey });
  showCheck("  the desk's own", original.check);
  print("\nWhat the copy says instead of the original:");
  for (const { path, before, after } of differencesBetween(
    original.check.dossier.record,
    presented.dossier.record,
  ))
    print(`  record.${path}: sealed ${before}, presented ${after}`);
  const outcome = (dossier) => dossier.evaluation.warranty.settlement;
  for (const [whose, dossier] of [
    ["original", original.check.dossier],
    ["presented", presented.dossier],
  ])
    print(
      `  ${whose}: ${outcome(dossier).outcome}, rebate ${outcome(dossier).rebate} ${outcome(dossier).currency}`,
    );
  const { versions, differences } = original;
  print(
    `\nThe original evaluated again, sealed by version ${versions.sealed}, opened by ${versions.opened}:`,
  );
  if (differences.length === 0)
    print("  no number and no verdict moved. The settlement of last April stands.");
  for (const { path, before, after } of differences) print(`  ${path}: ${before} became ${after}`);
  print();
}

function showPromise() {
  heading("What the promise costs");
  const fit = fitWeibullLife(sales);
  const between = ({ lower, upper }) => `95 % limits ${lower.toFixed(1)} to ${upper.toFixed(1)}`;
  print(`${sales.note}`);
  print(`${fit.failures} failed, ${fit.running} still run.`);
  print(`Weibull shape ${fit.shape.value.toFixed(2)}, ${between(fit.shapeInterval)}`);
  print(`Weibull scale ${fit.scaleMonths.value.toFixed(1)} months, ${between(fit.scaleMonthsInterval)}\n`);
  print(
    `Expected cost per battery sold, first claim only, a replacement costing ${sales.costPerReplacement} EUR:`,
  );
  const { house } = terms;
  const promises = {
    "house terms as they are": promiseOf(house),
    "with proration from the end of the free period": promiseOf({
      ...house,
      prorationOrigin: "end-of-free-period",
    }),
    "free to the last month": promiseOf({ ...house, freeMonths: house.totalMonths }),
    "prorated from the first day": promiseOf({ ...house, freeMonths: 0 }),
  };
  for (const [name, promise] of Object.entries(promises)) {
    const { expectedCost, failureShareInTerm } = expectedWarrantyCost({
      ...fit,
      ...promise,
      costPerReplacement: sales.costPerReplacement,
    });
    const money = `${expectedCost.value.toFixed(2)} ± ${expectedCost.standardUncertainty.toFixed(2)} EUR`;
    print(`  ${name.padEnd(48)} ${money}   (${percent(failureShareInTerm)} fail in the term)`);
  }
  const { share, interval } = noDefectShare(returns);
  print(`\n${returns.note}`);
  print(
    `No defect in ${returns.withoutDefect} of ${returns.returned}: ${percent(share)}, 95 % interval ${percent(interval.lower)} to ${percent(interval.upper)}.`,
  );
}

for (const claim of claims) showClaim(claim);
for (const claim of claims) if (claim.disputed) await showDispute(claim);
showPromise();
