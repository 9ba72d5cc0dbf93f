import { existsSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { type Browser, type BrowserContextOptions, chromium, type Page } from "playwright-core";

/** Where Debian's package puts the browser. */
export const CHROMIUM = "/usr/bin/chromium";
export const hasBrowser = existsSync(CHROMIUM);

/** A page, what it wrote to the console as an error, and what it asked for beside itself. */
export interface Opened {
  readonly page: Page;
  readonly errors: readonly string[];
  readonly requests: readonly string[];
  readonly close: () => Promise<void>;
}

/** A fresh browser with a fresh profile. */
export function launch(): Promise<Browser> {
  return chromium.launch({
    executablePath: CHROMIUM,
    args: [
      "--headless",
      "--no-sandbox",
      "--disable-gpu",
      "--disable-quic",
      "--no-first-run",
      "--disable-background-networking",
      "--disable-component-update",
      "--disable-sync",
    ],
  });
}

/** The address of the page: built from the sources, or the file that WORKSHEET_PAGE names. */
export async function addressOfPage(): Promise<string> {
  const given = process.env.WORKSHEET_PAGE;
  if (given) return pathToFileURL(given).href;
  const { buildPage } = (await import("../../examples/worksheet/build.mjs" as string)) as {
    buildPage: (options: { sources: boolean }) => Promise<string>;
  };
  const file = join(mkdtempSync(join(tmpdir(), "worksheet-")), "worksheet.html");
  writeFileSync(file, await buildPage({ sources: true }));
  return pathToFileURL(file).href;
}

/** Opens an address in a context of its own, without a network. */
export async function open(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<Opened> {
  const context = await browser.newContext({ offline: true, ...options });
  const page = await context.newPage();
  const errors: string[] = [];
  const requests: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error" || message.type() === "warning") errors.push(message.text());
  });
  page.on("pageerror", (error) => errors.push(error.message));
  page.on("request", (request) => {
    if (!request.url().startsWith(address.replace(/#.*/, "")) && !request.url().startsWith("data:"))
      requests.push(request.url());
  });
  await page.goto(address);
  await page.locator("#verdict:not(:empty)").waitFor();
  return { page, errors, requests, close: () => context.close() };
}

/** Goes on with the Tab key until an element has the focus. */
export async function tabTo(page: Page, id: string): Promise<void> {
  for (let i = 0; i < 150; i++) {
    await page.keyboard.press("Tab");
    if ((await page.evaluate(() => document.activeElement?.id)) === id) return;
  }
  throw new Error(`Tab does not lead to #${id}`);
}
