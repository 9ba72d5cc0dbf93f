// The page: entries make a record, the record an evaluation, the evaluation the answers. Nothing is sent, nothing is stored.
import { type BatteryRecord, migrateRecord, tryEvaluate } from "crankworthy";
import { answersFor } from "./answers.js";
import { at, fill, h } from "./dom.js";
import { type Place, placeOf } from "./field.js";
import { formFor } from "./form.js";
import { showIssues } from "./issues.js";
import { type Language, languageOf, pageLanguages } from "./languages.js";
import { fragmentOf, readFragment } from "./link.js";
import { recordOf, type Values, valuesOf } from "./sheet.js";
import { startRecord } from "./start.data.js";

const PICTURE_WIDTHS = { least: 300, most: 640 };
/** The address follows the entries after this pause [ms]; browsers object to more changes. */
const PAUSE = 400;

let language: Language = pageLanguages[0];
let values: Values = new Map();
let now: Place | undefined;
let before: Place | undefined;
let frame = 0;
let pause = 0;

/** Shows a record, or the example for none. */
function take(record: unknown, notice = ""): void {
  const lifted = migrateRecord(record);
  const read = valuesOf(lifted.ok ? lifted.record : startRecord, language.mark);
  values = read.values;
  now = before = undefined;
  const names = read.leftOut.slice(0, 8).map((name) => name.slice(0, 60));
  if (read.leftOut.length > names.length) names.push("…");
  const notices = [lifted.ok ? notice : lifted.issues.map((one) => one.message).join(" ")];
  if (names.length > 0) notices.push(fill(language.words.linkLeftOut, { names: names.join(", ") }));
  at("notice").textContent = notices.filter((one) => one !== "").join(" ");
  layOut();
}

/** Builds the page anew in its language. */
function layOut(): void {
  const { words, pack, tag } = language;
  document.documentElement.lang = tag;
  document.documentElement.dir = pack.messages.direction;
  document.title = words.title;
  document.querySelectorAll<HTMLElement>("[data-word]").forEach((element) => {
    element.textContent = words[element.dataset.word as "title"];
  });
  at<HTMLSelectElement>("language").value = tag;
  at("questions").replaceChildren(...formFor(language, values, changed));
  answer();
}

function changed(): void {
  at("notice").textContent = "";
  cancelAnimationFrame(frame);
  frame = requestAnimationFrame(answer);
  clearTimeout(pause);
  pause = window.setTimeout(followInAddress, PAUSE);
}

/** Evaluates the sheet and shows the answers. */
function answer(): void {
  const record = recordOf(values, language.mark);
  const result = tryEvaluate(record, { explain: true });
  const issues = showIssues(result.ok ? [] : result.issues, language);
  const { condition, action } = language.pack.messages;
  const place = at("answers");
  if (!result.ok) {
    say(fill(language.words.look, { n: result.issues.length }));
    place.replaceChildren(...issues);
    return;
  }
  const { evaluation } = result;
  const found = placeOf(evaluation);
  if (now && (now.condition !== found.condition || now.action !== found.action)) before = now;
  now = found;
  say(`${condition[evaluation.verdict.condition][0]}. ${action[evaluation.verdict.action][0]}.`);
  const width = Math.round(Math.min(PICTURE_WIDTHS.most, Math.max(PICTURE_WIDTHS.least, place.clientWidth)));
  place.replaceChildren(
    ...answersFor({ evaluation, record: record as unknown as BatteryRecord, language, before, width }),
  );
}

/** The verdict where it is seen and read aloud; only a changed one is read again. */
function say(text: string): void {
  if (at("verdict").textContent !== text) at("verdict").textContent = text;
}

async function followInAddress(): Promise<string> {
  clearTimeout(pause);
  const fragment = await fragmentOf(recordOf(values, language.mark), language.tag);
  history.replaceState(null, "", fragment);
  return location.href;
}

async function copyLink(): Promise<void> {
  const { words } = language;
  const link = await followInAddress();
  const field = h("input", { type: "text", readonly: true, "aria-label": words.link, dir: "ltr" });
  field.value = link;
  let done = words.copied;
  try {
    await navigator.clipboard.writeText(link);
  } catch {
    // Not allowed here, for example on a page from a file.
    done = words.copyByHand;
  }
  at("link").replaceChildren(h("span", {}, done), field);
  if (done === words.copyByHand) field.select();
}

/** Links within the page lead to their place, and leave the sheet in the address. */
function followWithin(event: MouseEvent): void {
  const link =
    event.target instanceof Element ? event.target.closest<HTMLAnchorElement>("a[href^='#']") : null;
  const place = link && document.getElementById(link.hash.slice(1));
  if (!place) return;
  event.preventDefault();
  place.closest("details")?.setAttribute("open", "");
  place.focus({ preventScroll: true });
  place.scrollIntoView({ block: place.matches("section") ? "start" : "center" });
}

/** Opens what the address holds. */
async function open(): Promise<void> {
  const link = await readFragment(location.hash);
  if (link.kind === "none") {
    if (values.size > 0) return;
    language = languageOf(link.language);
    take(startRecord);
    return;
  }
  if (link.kind === "record") {
    language = languageOf(link.language);
    take(link.record);
    return;
  }
  const { words } = language;
  const said = { damaged: words.linkDamaged, newer: words.linkNewer, "too-long": words.linkTooLong };
  take(startRecord, said[link.kind]);
}

function start(): void {
  const choice = at<HTMLSelectElement>("language");
  for (const { tag, ownName } of pageLanguages)
    choice.append(h("option", { value: tag, lang: tag }, ownName));
  choice.addEventListener("change", () => {
    const record = recordOf(values, language.mark);
    language = languageOf(choice.value);
    values = valuesOf(record, language.mark).values;
    at("link").replaceChildren();
    layOut();
    void followInAddress();
  });
  at("questions").addEventListener("submit", (event) => event.preventDefault());
  at("example").addEventListener("click", () => take(startRecord));
  at("empty").addEventListener("click", () => take({}));
  at("copy").addEventListener("click", () => void copyLink());
  at("print").addEventListener("click", () => window.print());
  window.addEventListener("hashchange", () => void open());
  document.addEventListener("click", followWithin);
  window.addEventListener("beforeprint", () => {
    document.querySelectorAll("details").forEach((fold) => {
      fold.open = true;
    });
  });
  let width = window.innerWidth;
  window.addEventListener("resize", () => {
    // A phone's address bar changes the height alone.
    if (window.innerWidth !== width) answer();
    width = window.innerWidth;
  });
  void open();
}

start();
