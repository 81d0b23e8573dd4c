// Opens the built workbook in the system's Chromium and listens for what must not happen: errors on the console or in
// the page, anything the content security policy blocked, and requests to the network. Browser tests call this file;
// each opening has storage of its own, so no test sees another's working copy.

import { type Browser, type BrowserContext, type BrowserContextOptions, chromium, type Page } from 'playwright-core';
import { inject, onTestFinished } from 'vitest';
import { headlessChromiumPath } from '../../ui/set-up.mjs';

export interface Opening {
  readonly width?: number;
  readonly height?: number;
  readonly colorScheme?: 'light' | 'dark';
  /** How the person's browser writes figures and days; English of the United States unless told otherwise. */
  readonly locale?: string;
  /** Colours of the person's own choosing, as the system gives them. */
  readonly forcedColors?: 'active';
  /** What points at the page is a finger, as on a phone. */
  readonly touch?: boolean;
  /** The page may keep its own parts for when there is no network; else each test fetches them from the server. */
  readonly offline?: boolean;
  /** The page's address alone, as a person comes to it the first time; else the demo farm's, where nothing is kept already. */
  readonly bare?: boolean;
  /** Another address than that of the build of this run. */
  readonly address?: string;
  /** What is done to the browser before the page opens. */
  readonly prepare?: (context: BrowserContext) => Promise<unknown>;
  /** What the browser keeps for the page already. */
  readonly storage?: Exclude<BrowserContextOptions['storageState'], undefined>;
  /** The page stays open when the test is finished; whoever asks for it closes it. Else it goes with its test. */
  readonly stays?: boolean;
}

export interface OpenedWorkbook {
  readonly page: Page;
  /** Console errors and warnings, uncaught errors and blocked loads so far, each a line. */
  readonly problems: string[];
  /** Every address asked for so far that is not the page's own origin. */
  readonly requestsElsewhere: string[];
  /** Every address asked for since the page had loaded, its own origin too, but not the parts of the page itself that come later. */
  readonly requestsAfterLoad: string[];
  /** Closes the page with its storage. */
  readonly close: () => Promise<void>;
}

const quiet = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-quic',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  // A page of a test lives for seconds: machine code made well costs a sixth of all work and comes too late.
  '--js-flags=--no-turbofan,--invocation-count-for-maglev=4000',
];

/** One Chromium for all files that run in this process; it ends with the process. */
let launched: Promise<Browser> | undefined;

/** Where the built workbook is served during this run. */
export function workbookAddress(): string {
  return inject('workbookAddress');
}

/** The address of the demo farm as it comes. */
export function demoAt(address: string): string {
  return new URL('#demo', address).href;
}

/** A fresh visit to the demo farm, or what else is asked for: a 1280 by 800 window in light colours unless told otherwise. */
export async function openWorkbook(opening: Opening = {}): Promise<OpenedWorkbook> {
  const browser = await launch();
  const context = await browser.newContext({
    viewport: { width: opening.width ?? 1280, height: opening.height ?? 800 },
    colorScheme: opening.colorScheme ?? 'light',
    locale: opening.locale ?? 'en-US',
    forcedColors: opening.forcedColors ?? 'none',
    ...(opening.touch === true ? { hasTouch: true, isMobile: true } : {}),
    permissions: ['clipboard-read', 'clipboard-write'],
    timezoneId: 'UTC',
    ...(opening.storage === undefined ? {} : { storageState: opening.storage }),
  });
  if (opening.stays !== true) onTestFinished(() => context.close());
  // Playwright can't answer the dialogs of the File System Access API; tests of it bring files of their own.
  await context.addInitScript((offline) => {
    Reflect.deleteProperty(window, 'showOpenFilePicker');
    Reflect.deleteProperty(window, 'showSaveFilePicker');
    if (!offline) Reflect.deleteProperty(Navigator.prototype, 'serviceWorker');
  }, opening.offline === true);
  await opening.prepare?.(context);
  const page = await context.newPage();
  const address = opening.address ?? workbookAddress();
  const heard = await listen(context, page, address);
  const bare = opening.bare === true || opening.storage !== undefined;
  await page.goto(bare ? address : demoAt(address), { waitUntil: 'load' });
  await page.locator('.desk, .phone, .first-choice').waitFor();
  heard.pageHasLoaded();
  return { page, ...heard.lists, close: () => context.close() };
}

/** Loads the page again, as a person does, and waits until its workbook is there. */
export async function reload(page: Page): Promise<void> {
  await page.reload({ waitUntil: 'load' });
  await page.locator('.desk, .phone, .first-choice').waitFor();
}

/** Waits until the page has drawn so many more frames: what was to happen in them has happened. */
export async function drawFrames(page: Page, count = 3): Promise<void> {
  await page.evaluate(async (frames) => {
    for (let drawn = 0; drawn < frames; drawn += 1) await new Promise((resolve) => requestAnimationFrame(resolve));
  }, count);
}

function launch(): Promise<Browser> {
  const executablePath = headlessChromiumPath();
  if (executablePath === undefined) throw new Error('There is no Chromium: npm test installs one or says how to.');
  launched ??= chromium.launch({ executablePath, args: quiet });
  return launched;
}

async function listen(context: BrowserContext, page: Page, address: string) {
  const { origin } = new URL(address);
  const problems: string[] = [];
  const requestsElsewhere: string[] = [];
  const requestsAfterLoad: string[] = [];
  let loaded = false;

  const request = (address: string): void => {
    const { protocol, origin: asked, pathname } = new URL(address);
    // A blob: or data: address is the page's own memory, not the network.
    if (protocol === 'blob:' || protocol === 'data:') return;
    if (asked !== origin) requestsElsewhere.push(address);
    const isPart = asked === origin && /^\/assets\/[\w-]+\.(js|css|svg)$/.test(pathname);
    if (loaded && !isPart) requestsAfterLoad.push(address);
  };
  context.on('request', (made) => request(made.url()));
  page.on('websocket', (socket) => request(socket.url()));
  page.on('pageerror', (error) => problems.push(`uncaught: ${error.message}`));
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') {
      problems.push(`console ${message.type()}: ${message.text()}`);
    }
  });
  // Most blocked loads reach the console as well, but not those that the page's code handles.
  await page.exposeFunction('tellBlocked', (what: string) => problems.push(`blocked by the policy: ${what}`));
  await page.addInitScript(() => {
    document.addEventListener('securitypolicyviolation', (event) => {
      const tell: unknown = Reflect.get(globalThis, 'tellBlocked');
      if (typeof tell === 'function') tell(`${event.effectiveDirective} ${event.blockedURI} ${event.sourceFile}`);
    });
  });
  return {
    lists: { problems, requestsElsewhere, requestsAfterLoad },
    pageHasLoaded: () => {
      loaded = true;
    },
  };
}
