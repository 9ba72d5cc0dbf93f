import type { Browser } from "playwright-core";
import { afterAll, afterEach, beforeAll, describe, expect, it } from "vitest";
import { languageOf, pageLanguages } from "../../examples/worksheet/languages.js";
import { fragmentOf } from "../../examples/worksheet/link.js";
// For the type checker: the page's own files belong to no other program.
import type {} from "../../examples/worksheet/main.js";
import { startRecord } from "../../examples/worksheet/start.data.js";
import { addressOfPage, CHROMIUM, hasBrowser, launch, type Opened, open, tabTo } from "./browser.js";

const title = hasBrowser ? "the worksheet page" : `the worksheet page (skipped: no browser at ${CHROMIUM})`;

describe.skipIf(!hasBrowser)(title, () => {
  let browser: Browser;
  let address: string;
  let opened: Opened[] = [];

  const start = async (fragment = "", options: Parameters<typeof open>[2] = {}): Promise<Opened> => {
    const one = await open(browser, address + fragment, options);
    opened.push(one);
    return one;
  };
  const verdict = ({ page }: Opened): Promise<string | null> => page.locator("#verdict").textContent();
  const verdictOf = (
    condition: "serviceable" | "worn" | "not-established",
    action: "keep" | "repeat",
    tag = "en",
  ) => {
    const { messages } = languageOf(tag).pack;
    return `${messages.condition[condition][0]}. ${messages.action[action][0]}.`;
  };

  beforeAll(async () => {
    [browser, address] = await Promise.all([launch(), addressOfPage()]);
  });
  afterAll(async () => {
    await browser?.close();
  });
  // Holds for every test: nothing is asked of a network, nothing is complained of.
  afterEach(async () => {
    const seen = opened;
    opened = [];
    for (const { errors, requests, close } of seen) {
      await close();
      expect(errors).toEqual([]);
      expect(requests).toEqual([]);
    }
  });

  it("shows the example with verdict, pictures, cautions and working, from a file and without a network", async () => {
    const one = await start();
    expect(await verdict(one)).toBe(verdictOf("worn", "keep"));
    const { page } = one;
    expect(await page.locator("figure svg[role=img] > title").allTextContents()).toHaveLength(4);
    for (const box of await page.locator("figure svg[role=img]").all())
      expect((await box.boundingBox())!.height).toBeGreaterThan(100);
    expect(await page.locator(".hurt li").count()).toBeGreaterThan(2);
    expect(await page.locator(".working li").count()).toBeGreaterThan(20);
    expect(await page.locator(".working math mfrac").count()).toBeGreaterThan(1);
    expect(await page.locator(".side li.chosen").allTextContents()).toEqual(["Worn", "Keep it in use"]);
  });

  it("is filled in with the keyboard alone, and the verdict follows", async () => {
    const one = await start();
    const { page } = one;
    await page.keyboard.press("Tab");
    expect(await page.evaluate(() => document.activeElement?.className)).toBe("skip");
    await tabTo(page, "at-measurements-cranking-amperes");
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("600 605");
    await expect.poll(() => verdict(one)).toBe(verdictOf("serviceable", "keep"));
    expect(await page.locator("figcaption").textContent()).toBe(languageOf("en").words.before);
    // The slider stands before its entry; both readings move together.
    await page.keyboard.press("Shift+Tab");
    for (let i = 0; i < 3; i++) await page.keyboard.press("ArrowLeft");
    expect(await page.locator("#at-measurements-cranking-amperes").inputValue()).toMatch(/^59\d 60\d$/);
    await page.keyboard.press("Home");
    await expect.poll(() => verdict(one)).not.toBe(verdictOf("serviceable", "keep"));
  });

  it("leads the focus through everything once, in order, visibly and named, and out again", async () => {
    const { page } = await start();
    const passed: string[] = [];
    for (let i = 0; i < 300; i++) {
      await page.keyboard.press("Tab");
      const now = await page.evaluate(() => {
        const element = document.activeElement as HTMLElement & { labels?: NodeListOf<HTMLElement> };
        if (element === document.body) return undefined;
        const name =
          element.getAttribute("aria-label") ?? element.labels?.[0]?.textContent ?? element.textContent ?? "";
        return {
          id: element.id || element.outerHTML.slice(0, 60),
          name,
          ring: getComputedStyle(element).outlineStyle,
        };
      });
      if (!now) break;
      expect(now.name.trim(), now.id).not.toBe("");
      expect(now.ring, now.id).not.toBe("none");
      passed.push(now.id);
    }
    expect(passed.length).toBeGreaterThan(60);
    expect(passed.length).toBeLessThan(299);
    const order = await page.evaluate(() => {
      const all = document.querySelectorAll<HTMLElement>(
        "#questions input, #questions select, #questions summary",
      );
      return Array.from(all)
        .filter((one) => one.checkVisibility())
        .map((one) => one.id || one.outerHTML.slice(0, 60));
    });
    expect(passed.filter((id) => order.includes(id))).toEqual(order);
  });

  it("shows what is wrong beside the field, and the answers again when it is right", async () => {
    const one = await start();
    const { page } = one;
    await page.fill("#at-conditions-temperatureCelsius", "77");
    const place = page.locator("#at-conditions-temperatureCelsius-issue");
    await place.filter({ hasText: "this looks like °F" }).waitFor();
    expect(await page.getAttribute("#at-conditions-temperatureCelsius", "aria-invalid")).toBe("true");
    expect(await page.locator(".field-of-answers").count()).toBe(0);
    await page.locator(".issues a").click();
    expect(await page.evaluate(() => document.activeElement?.id)).toBe("at-conditions-temperatureCelsius");
    await page.keyboard.press("ControlOrMeta+A");
    await page.keyboard.type("25");
    await page.locator(".field-of-answers").waitFor();
    expect(await place.isVisible()).toBe(false);
    // In another language the sentence stays English and is marked so.
    await page.selectOption("#language", "de");
    await page.fill("#at-measurements-restVolts", "12600");
    const spoken = page.locator("#at-measurements-restVolts-issue");
    await spoken.filter({ hasText: languageOf("de").words.issue!["wrong-unit"] }).waitFor();
    expect(await spoken.locator("[lang=en]").textContent()).toContain("millivolts");
  });

  it("a blank sheet asks for what it needs, and a closed fold opens for its issue", async () => {
    const { page } = await start();
    await page.locator("#empty").click();
    expect(await page.locator(".issues li").count()).toBeGreaterThan(0);
    await page.locator("#at-warranty").check();
    await page.locator("#at-warranty-terms-rounding-issue:not([hidden])").waitFor();
    expect(await page.locator("#at-warranty-terms-rounding").isVisible()).toBe(true);
  });

  it("goes into the address and comes back from it, in its language", async () => {
    const first = await start();
    await first.page.selectOption("#language", "de");
    await first.page.fill("#at-id", "Blatt ä&#");
    await first.page.fill("#at-measurements-cranking-amperes", "600,5 605");
    await first.page.locator("#copy").click();
    await first.page.locator("#link input").waitFor();
    const link = await first.page.locator("#link input").inputValue();
    expect(link).toBe(first.page.url());
    expect(link).toContain("#v=1&lang=de&record=");
    const second = await start(link.slice(link.indexOf("#")));
    expect(await verdict(second)).toBe(await verdict(first));
    expect(await second.page.locator("#at-id").inputValue()).toBe("Blatt ä&#");
    expect(await second.page.locator("#at-measurements-cranking-amperes").inputValue()).toBe("600,5 605");
    const [sent, received] = await Promise.all(
      [first, second].map(({ page }) => page.locator("#answers").textContent()),
    );
    expect(received).toBe(sent!.replace(languageOf("de").words.before, ""));
    // A link within the page leaves the sheet in the address.
    await second.page.locator(".steps a").first().click();
    expect(second.page.url()).toBe(link);
    expect(await second.page.evaluate(() => document.activeElement?.id)).toMatch(/^step-\d+$/);
  });

  it("says what is wrong with a broken link, and shows the example", async () => {
    for (const [fragment, word] of [
      ["#v=1&record=AAAA", "linkDamaged"],
      ["#v=1&record=<script>pwned=1</script>", "linkDamaged"],
      ["#v=7&record=AAAA", "linkNewer"],
      [`#v=1&record=${"A".repeat(25_000)}`, "linkTooLong"],
    ] as const) {
      const one = await start(fragment);
      expect(await one.page.locator("#notice").textContent()).toBe(languageOf("en").words[word]);
      expect(await verdict(one)).toBe(verdictOf("worn", "keep"));
    }
    const newer = await start(await fragmentOf({ ...startRecord, schemaVersion: 9 }, "en"));
    expect(await newer.page.locator("#notice").textContent()).toContain("a schema version up to 1");
  });

  it("runs nothing and makes no element of what a link holds", async () => {
    const attack = `"><img src=x onerror="window.pwned=1"><script>window.pwned=1</script></svg>`;
    const hostile = {
      ...startRecord,
      id: attack,
      identity: {
        ...startRecord.identity,
        dateCode: { text: "<svg onload=pwned=1>" },
        labelCode: { scheme: attack, text: attack },
      },
      [attack]: { deep: attack },
      constructor: { prototype: { pwned: 1 } },
    };
    const fragments = [
      await fragmentOf(hostile, attack),
      await fragmentOf({ ...hostile, identity: { ...hostile.identity, labelCode: undefined } }, "ar"),
      await fragmentOf(
        JSON.parse('{"__proto__":{"pwned":1},"identity":{"__proto__":{"pwned":1}},"measurements":7}'),
        "en",
      ),
      await fragmentOf([attack], "en"),
      await fragmentOf(attack, "en"),
      await fragmentOf(null, "en"),
    ];
    for (const fragment of fragments) {
      const { page } = await start(fragment);
      const found = await page.evaluate(() => ({
        pwned: (window as unknown as { pwned?: number }).pwned ?? null,
        elements: document.querySelectorAll(
          "img, iframe, object, embed, body script:not(:last-of-type), [onload], [onerror]",
        ).length,
        scripts: document.scripts.length,
      }));
      expect(found).toEqual({ pwned: null, elements: 0, scripts: 1 });
    }
    // The name is shown as it is.
    const { page } = await start(fragments[1]);
    expect(await page.locator("#at-id").inputValue()).toBe(attack);
    expect(await page.locator("#notice").textContent()).toContain("img src=x");
  });

  it.each(pageLanguages.map(({ tag }) => tag))("speaks %s throughout", async (tag) => {
    const one = await start(`#lang=${tag}`);
    const { page } = one;
    const { pack, words } = languageOf(tag);
    expect(await page.evaluate(() => [document.documentElement.lang, document.documentElement.dir])).toEqual([
      tag,
      pack.messages.direction,
    ]);
    expect(await verdict(one)).toBe(verdictOf("worn", "keep", tag));
    expect(await page.locator("h1").textContent()).toBe(words.title);
    expect(await page.locator("#answer-charge").textContent()).toBe(pack.messages.question.charge);
    const titles = await page.locator("figure svg[role=img] > title").allTextContents();
    expect(titles).toEqual(
      (["charge.title", "ability.title", "start.title", "warranty.title"] as const).map(
        (word) => pack.pictures[word],
      ),
    );
  });

  it("fits a phone and a narrow window, in every language", async () => {
    for (const width of [390, 320]) {
      const { page } = await start("", { viewport: { width, height: 800 } });
      for (const { tag } of pageLanguages) {
        await page.selectOption("#language", tag);
        expect(await page.evaluate(() => document.documentElement.scrollWidth), tag).toBe(width);
      }
    }
  });

  it("follows the reader's preference for dark pages and prints without its tools", async () => {
    const { page } = await start("", { colorScheme: "dark" });
    const paper = () => page.evaluate(() => getComputedStyle(document.body).backgroundColor);
    expect(await paper()).toBe("rgb(23, 25, 27)");
    await page.emulateMedia({ media: "print" });
    expect(await paper()).toBe("rgb(255, 255, 255)");
    expect(await page.locator(".tools").isVisible()).toBe(false);
    expect(await page.locator("#at-measurements-restVolts").isVisible()).toBe(true);
    expect(await page.locator("#at-measurements-cellGravities").isVisible()).toBe(false);
  });
});
