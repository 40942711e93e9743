import type { Browser, BrowserContextOptions } from "playwright-core";
import { afterAll, beforeAll, expect } from "vitest";
import { launch, openPage, type WatchedPage } from "./browser.ts";
import { openSheet } from "./sheet.ts";
import { startCausey, type Running } from "./start.ts";

/** A server with its own store and a browser, for the tests of one file. */
export interface Session {
  /** The start address: whoever opens it is let in. */
  readonly url: string;
  readonly browser: Browser;
}

/** Starts both before the file's tests and closes them after; the server must have come to no fault. */
export function causeySession(): Session {
  let causey: Running | undefined;
  let browser: Browser | undefined;
  beforeAll(async () => {
    causey = await startCausey();
    browser = await launch();
  });
  afterAll(async () => {
    await browser?.close();
    await causey?.close();
    expect(causey?.faults).toEqual([]);
  });
  return {
    get url() {
      return causey!.url;
    },
    get browser() {
      return browser!;
    },
  };
}

/** The same with one page, opened by `open` before the first test: the demo with its first layout, unless told otherwise. */
export function sheetSession(
  screen: BrowserContextOptions,
  open: (page: WatchedPage["page"], url: string) => Promise<void> = openSheet,
): Session & WatchedPage {
  const session = causeySession();
  let sheet: WatchedPage | undefined;
  beforeAll(async () => {
    sheet = await openPage(session.browser, screen);
    await open(sheet.page, session.url);
  });
  return {
    get url() {
      return session.url;
    },
    get browser() {
      return session.browser;
    },
    get page() {
      return sheet!.page;
    },
    get complaints() {
      return sheet!.complaints;
    },
  };
}
