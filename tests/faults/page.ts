// The built page for the trials that need a browser: served as `npm start` serves it, opened in a Chromium that can be killed, and
// worked in the lengths of its first beds, whose figures tell what was kept. Everything is found by what the page shows.

import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type BrowserContext, chromium, type Locator, type Page } from 'playwright-core';
import { build, preview } from 'vite';
import { chromiumPath } from '../../ui/set-up.mjs';
import { yardText } from '../yard.ts';

const QUIET = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export interface Served {
  readonly address: string;
  close(): Promise<void>;
}

/** Builds the page into a folder of its own and serves it. */
export async function servePage(): Promise<Served> {
  const folder = mkdtempSync(join(tmpdir(), 'dibble-faults-'));
  await build({ logLevel: 'error', build: { outDir: folder, emptyOutDir: true } });
  const server = await preview({ logLevel: 'warn', preview: { port: 0 }, build: { outDir: folder } });
  return {
    address: server.resolvedUrls?.local[0] ?? '',
    close: async () => {
      await server.close();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function executable(): string {
  const path = chromiumPath();
  if (path === undefined) throw new Error('There is no Chromium: npm run faults installs one or says how to.');
  return path;
}

/** A browser that stays up. */
export function launch(): Promise<Browser> {
  return chromium.launch({ executablePath: executable(), args: QUIET });
}

/** A browser as a person has it, with a profile on the disk, that can be killed at once with all its processes. */
export class KillableBrowser {
  readonly context: BrowserContext;
  readonly #browser: Browser;
  readonly #process: ChildProcess;

  private constructor(browser: Browser, context: BrowserContext, process: ChildProcess) {
    this.#browser = browser;
    this.context = context;
    this.#process = process;
  }

  static async start(profile: string): Promise<KillableBrowser> {
    const args = [...QUIET, '--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'];
    const child = spawn(executable(), args, { stdio: ['ignore', 'ignore', 'pipe'], detached: true });
    const address = await new Promise<string>((resolve, reject) => {
      let said = '';
      child.once('error', reject);
      child.once('exit', () => reject(new Error('Chromium ended before it could be used.')));
      child.stderr.on('data', (part: Buffer) => {
        said += part.toString();
        const [, found] = /DevTools listening on (ws:\S+)/.exec(said) ?? [];
        if (found !== undefined) resolve(found);
      });
    });
    const browser = await chromium.connectOverCDP(address);
    const [context] = browser.contexts();
    if (context === undefined) throw new Error('Chromium has no window.');
    return new KillableBrowser(browser, context, child);
  }

  /** As when the power of the program goes: nothing is written, closed or said any more. */
  async kill(): Promise<void> {
    const ended = new Promise((resolve) => this.#process.once('exit', resolve));
    if (this.#process.pid !== undefined) process.kill(-this.#process.pid, 'SIGKILL');
    await ended;
    await this.#browser.close().catch(() => undefined);
  }
}

/** So many beds are worked in. */
export const BEDS = 5;

/** What stands in the lengths of the first beds. */
export type Lengths = readonly string[];

// Run in the page, as text: the figures of the first beds as they stand there.
const READ = `[...Array(${BEDS}).keys()].map((row) =>
  (document.querySelector('.ag-row[row-index="' + row + '"] .ag-cell[col-id="length"]')?.textContent ?? '').trim())`;

// Tells the figures whenever the page begins to say that all is kept.
const TELL = `(() => {
  let was = false;
  new MutationObserver(() => {
    const is = (document.querySelector('.kept')?.textContent ?? '').startsWith('kept on this computer');
    if (is && !was) globalThis.toldAsKept(JSON.stringify(${READ}));
    was = is;
  }).observe(document, { subtree: true, childList: true, characterData: true });
})();`;

/** One tab with the beds on screen. */
export class BedsPage {
  readonly page: Page;
  readonly #first: 'demo farm' | 'yard';

  private constructor(page: Page, first: 'demo farm' | 'yard') {
    this.page = page;
    this.#first = first;
  }

  /**
   * Where nothing is kept yet, of the demo farm, or of a few beds that open in a fraction of its time. `kept` hears the figures
   * whenever the page has said that they are kept.
   */
  static async open(
    context: BrowserContext,
    address: string,
    first: 'demo farm' | 'yard',
    kept: (lengths: Lengths) => void = () => undefined,
  ) {
    const page = await context.newPage();
    await page.setViewportSize({ width: 1440, height: 900 });
    page.setDefaultTimeout(60_000);
    await page.exposeFunction('toldAsKept', (told: string) => {
      const lengths: unknown = JSON.parse(told);
      // Figures of a sheet that isn't drawn yet tell nothing.
      if (Array.isArray(lengths) && lengths.every((each) => each !== '')) kept(lengths.map(String));
    });
    await page.addInitScript(TELL);
    // The browser's own dialogs of files can't be answered from outside.
    await page.addInitScript("Reflect.deleteProperty(window, 'showOpenFilePicker')");
    await page.goto(address);
    const beds = new BedsPage(page, first);
    await beds.show();
    return beds;
  }

  /** The beds of the workbook that was worked on last; where nothing is kept, of the first. */
  async show(): Promise<void> {
    const desk = this.page.locator('.desk');
    const choice = this.page.locator('.first-choice');
    await desk.or(choice).first().waitFor();
    if (await choice.isVisible()) await this.#begin(choice);
    await desk.waitFor();
    await this.page
      .getByRole('navigation', { name: 'Sheets' })
      .getByRole('button', { name: /^Beds\s*(,|\d|$)/ })
      .click();
    await this.#cell(BEDS - 1)
      .and(this.page.locator('[class*="role-"]'))
      .waitFor();
  }

  async #begin(choice: Locator): Promise<void> {
    if (this.#first === 'demo farm') {
      await choice.getByRole('button', { name: 'Open the demo farm' }).click();
      return;
    }
    const chooser = this.page.waitForEvent('filechooser');
    await choice.getByRole('button', { name: 'Open a file' }).click();
    const buffer = Buffer.from(yardText());
    await (await chooser).setFiles({ name: 'yard.json', mimeType: 'application/json', buffer });
  }

  async reload(): Promise<void> {
    await this.page.reload();
    await this.show();
  }

  #cell(row: number) {
    return this.page.locator(`.ag-row[row-index="${row}"] .ag-cell[col-id="length"]`);
  }

  read(): Promise<Lengths> {
    return this.page.evaluate<string[]>(READ);
  }

  async type(row: number, entry: string): Promise<void> {
    await this.#cell(row).click();
    await this.page.keyboard.type(entry);
    await this.page.keyboard.press('Enter');
  }

  /** What undo would take back, as its button says. */
  async undoWords(): Promise<string> {
    return (await this.page.getByRole('button', { name: /^Undo/ }).getAttribute('title')) ?? '';
  }

  async undo(): Promise<void> {
    await this.page.getByRole('button', { name: /^Undo/ }).click();
  }

  /** Waits until the page says that all is kept; it says of which day where the clock was changed since. */
  async kept(): Promise<void> {
    await this.page.getByText(/^kept on this computer, (?:\d+-\d\d-\d\d )?\d\d:\d\d$/).waitFor();
  }

  /** Waits until the lengths read so; gives what they read otherwise. */
  async reads(wanted: Lengths): Promise<string | undefined> {
    let found: Lengths = [];
    for (let tries = 0; tries < 200; tries += 1) {
      found = await this.read();
      if (found.join() === wanted.join()) return undefined;
      await this.page.waitForTimeout(50);
    }
    return `${found.join()} instead of ${wanted.join()}`;
  }
}
