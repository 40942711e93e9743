import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import { chromium, type Browser, type BrowserContextOptions, type Page } from "playwright-core";

const flags = [
  "--no-sandbox",
  "--disable-quic",
  "--no-first-run",
  "--disable-background-networking",
  "--disable-component-update",
  "--disable-sync",
];

/** The browser named by CHROMIUM, else the one of the operating system. */
export const launch = (): Promise<Browser> =>
  chromium.launch({ executablePath: process.env["CHROMIUM"] ?? "/usr/bin/chromium", args: flags });

export const wide: BrowserContextOptions = { viewport: { width: 1440, height: 900 } };
export const phone: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
};

/** A page that remembers every complaint of the browser: errors, refused styles and scripts, failed requests. */
export interface WatchedPage {
  readonly page: Page;
  readonly complaints: string[];
}

export async function openPage(browser: Browser, options: BrowserContextOptions): Promise<WatchedPage> {
  const page = await browser.newPage({ reducedMotion: "reduce", ...options });
  page.setDefaultTimeout(120_000);
  const complaints: string[] = [];
  page.on("console", (m) => {
    if (m.type() === "error") complaints.push(m.text());
  });
  page.on("pageerror", (error) => complaints.push(error.message));
  return { page, complaints };
}

const out = resolve(import.meta.dirname, "../../../.test-out");

/** Keeps a picture of the page for people to look at. */
export async function picture(page: Page, name: string): Promise<void> {
  mkdirSync(out, { recursive: true });
  await page.screenshot({ path: join(out, `${name}.png`) });
}
