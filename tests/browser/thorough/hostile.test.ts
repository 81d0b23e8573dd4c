// Names, notes, choices, headers and file names that would be programs if a page took texts for markup, in every place that shows
// them: nothing runs, nothing is blocked because nothing asks, and nobody is asked for anything.

import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { demoFarm } from '../../../demo/farm.ts';
import { type Command, message, sheetViews, type Workbook } from '../../../engine/index.ts';
import { SEASON } from '../../../sheets-templates/index.ts';
import { started } from '../../book.ts';
import { workbookAddress } from '../harness.ts';
import { openSmallWorkbook } from '../small-workbook.ts';

const SCRIPT = 'globalThis.ran = true';
/** One of each kind; each is told by its number wherever it comes up. */
const HOSTILE = [
  `<img src=x onerror="${SCRIPT}">`,
  `<script>${SCRIPT}</script>`,
  `"><svg onload="${SCRIPT}">`,
  `' onmouseover='${SCRIPT}' x='`,
  `<iframe srcdoc="<script>parent.ran = true</script>"></iframe>`,
  `<a href="javascript:${SCRIPT}">link</a>`,
  `{{constructor.constructor("${SCRIPT}")()}}`,
  `<style>@import "http://127.0.0.1:9/x.css"</style>`,
  `<img src="http://127.0.0.1:9/x.png">`,
];

const hostile = (n: number): string => `${HOSTILE[n % HOSTILE.length]} ${n}`;

function done(workbook: Workbook, commands: readonly Command[]): void {
  const answer = workbook.do(commands, message('import', { sheet: hostile(0) }));
  if (answer.refused) throw new Error(answer.why);
}

interface HostileFarm {
  readonly text: string;
  /** What its plantings are called. */
  readonly plantings: string;
}

/** The demo farm with hostile words for everything that a person names. */
function hostileFarm(): HostileFarm {
  const opened = started(SEASON, demoFarm);
  if (!opened.ok) throw new Error(opened.problems.join(' '));
  const { workbook } = opened.workbook;
  const view = (id: string) => sheetViews(workbook).find((sheet) => sheet.id === id);
  let n = 0;
  const next = (): string => hostile(n++);
  const named = (): string => `Name ${n++}`;
  done(workbook, [{ command: 'set title', title: next() }]);
  for (const sheet of ['beds', 'varieties', 'plantings']) {
    const columns = view(sheet)?.columns ?? [];
    const texts = columns.filter(({ role, type }) => role === 'entered' && type?.kind === 'text').map(({ id }) => id);
    for (const row of (workbook.data().rows[sheet] ?? []).slice(0, 4)) {
      done(
        workbook,
        texts.map((column): Command => ({ command: 'set cell', sheet, row: row.id, column, entry: next() })),
      );
    }
    done(workbook, [
      { command: 'add column', sheet, name: named(), type: { type: 'choice', options: [next(), next()] } },
    ]);
    done(workbook, [{ command: 'add formula', sheet, name: named(), formula: `"${next().replaceAll('"', '""')}"` }]);
    const first = columns[0]?.id ?? '';
    const says = `"${next().replaceAll('"', '""')}"`;
    done(workbook, [
      { command: 'set check', sheet, check: { id: 'own-1', name: next(), level: 'error', column: first, says } },
    ]);
  }
  done(workbook, [{ command: 'add sheet', name: named(), about: next(), rows: { from: 'entry' } }]);
  const plantings = hostile(n);
  done(workbook, [{ command: 'rename sheet', sheet: 'plantings', name: named() }]);
  // A file can hold names that nobody could type.
  const text = opened.workbook.file().replace(/"Name (\d+)"/g, (_, which) => JSON.stringify(hostile(Number(which))));
  return { text, plantings };
}

async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
}

/** What a text that was taken for markup would have left on the page. */
async function madeFromText(page: Page): Promise<readonly string[]> {
  return page.evaluate(() => {
    const found = [...document.querySelectorAll('*')].filter((element) => {
      const acts = [...element.attributes].some(
        ({ name, value }) => name.startsWith('on') || /^\s*javascript:/i.test(value),
      );
      return acts || element.matches('img, iframe, object, embed, script:not([src]), a[href^="javascript"]');
    });
    const ran = Reflect.get(globalThis, 'ran') === true ? ['a script ran'] : [];
    return [
      ...ran,
      ...found.map(
        ({ tagName, attributes }) =>
          `${tagName} ${[...attributes].map(({ name, value }) => `${name}=${value}`).join(' ')}`,
      ),
    ];
  });
}

test('nothing that a person names is ever a program, wherever it is shown', { timeout: 180_000 }, async () => {
  const { page, problems, requestsElsewhere, requestsAfterLoad } = await openSmallWorkbook();
  page.setDefaultTimeout(20_000);
  const shows = async (count: number): Promise<void> => {
    const text = (await page.locator('body').textContent()) ?? '';
    expect(HOSTILE.filter((words) => text.includes(words)).length).toBeGreaterThanOrEqual(count);
    expect(await madeFromText(page)).toEqual([]);
  };
  const { text: farm, plantings } = hostileFarm();
  await openFile(page, `${hostile(1).replaceAll('/', '_')}.json`, farm);
  await expect.poll(() => page.getByRole('heading', { level: 1 }).textContent(), { timeout: 30_000 }).toBe(hostile(0));
  await shows(2);

  // Every sheet with hostile rows and columns, a cell with its menu, its formula line and its picture.
  const sheets = page.getByRole('navigation', { name: 'Sheets' });
  for (const name of ['Beds', 'Varieties', plantings]) {
    await sheets.getByRole('button', { name }).first().click();
    const cell = page.locator('.ag-row[row-index="0"] .ag-cell').first();
    await cell.waitFor();
    await cell.click();
    await shows(2);
    await cell.click({ button: 'right' });
    await page.getByRole('menu').waitFor();
    await shows(2);
    await page.keyboard.press('Escape');
    const header = page.locator('.ag-header-cell').last();
    await header.hover();
    await shows(2);
  }

  // What needs attention, going to a name, undo and its words.
  await page.keyboard.press('Control+k');
  await page.keyboard.type('onerror');
  await shows(1);
  await page.keyboard.press('Escape');

  // A table with hostile headers, fields and name.
  await sheets.getByRole('button', { name: /^Beds\s*(,|\d|$)/ }).click();
  const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
  const rows = [
    ['Bed', 'Length (ft)', ...HOSTILE],
    [HOSTILE[0] ?? '', 'many', ...HOSTILE],
    [HOSTILE[1] ?? '', '12', ...HOSTILE],
  ];
  const chooser = page.waitForEvent('filechooser');
  await page.getByRole('button', { name: 'Import rows' }).click();
  const buffer = Buffer.from(rows.map((fields) => fields.map(quoted).join(',')).join('\n'));
  await (await chooser).setFiles({ name: `${HOSTILE[1]?.replaceAll('/', '_')}.csv`, mimeType: 'text/csv', buffer });
  const dialog = page.getByRole('dialog');
  await expect.poll(() => dialog.textContent(), { timeout: 30_000 }).toMatch(/has no column/);
  await shows(HOSTILE.length);
  await page.keyboard.press('Escape');

  // The lists of what is kept.
  for (const list of ['Versions', 'Workbooks in this browser']) {
    await page.getByRole('button', { name: 'More', exact: true }).click();
    await page.getByRole('menuitem', { name: list, exact: true }).click();
    await dialog.waitFor();
    await shows(1);
    await page.keyboard.press('Escape');
    await expect.poll(() => dialog.count()).toBe(0);
  }

  // On a phone.
  await page.setViewportSize({ width: 390, height: 844 });
  await page.locator('.phone').waitFor();
  await shows(1);
  expect(problems).toEqual([]);
  expect(requestsElsewhere).toEqual([]);
  expect(requestsAfterLoad).toEqual([]);
});

test('a file of another kind is named as what it is, and nothing changes', async () => {
  const { page, problems } = await openSmallWorkbook();
  const before = await page.getByRole('heading', { level: 1 }).textContent();
  for (const [name, content, says] of [
    ['a.json', Buffer.from('PK\u0003\u0004'), /a\.json was not opened\. This is/],
    ['b.json', Buffer.from('%PDF-1.7\n'), /b\.json was not opened\. This is a PDF/],
    ['c.json', Buffer.from('{"format":"dibble-workbook","format":1}'), /c\.json was not opened\./],
    ['d.json', Buffer.from([0x7b, 0xff, 0xfe, 0x00]), /d\.json was not opened\./],
  ] as const) {
    // Nothing, and then this, before what was nothing was read: what is said last is of the one picked last.
    await openFile(page, name, '');
    const chooser = page.waitForEvent('filechooser');
    await page.getByRole('button', { name: 'Open', exact: true }).click();
    await (await chooser).setFiles({ name, mimeType: 'application/json', buffer: content });
    await expect.poll(() => page.locator('.message').textContent(), { timeout: 30_000 }).toMatch(says);
    expect(await page.getByRole('heading', { level: 1 }).textContent()).toBe(before);
  }
  expect(problems).toEqual([]);
});

test('the built page lists the licences of what is in it, and its bill of materials', async () => {
  const served = (file: string) => fetch(new URL(file, workbookAddress()));
  const licences = await (await served('licences.txt')).text();
  const own = JSON.parse(await readFile(new URL('../../../package.json', import.meta.url), 'utf8')) as {
    readonly license: string;
  };
  expect(licences).toContain(`is free software under ${own.license}`);
  for (const name of [
    'preact',
    'ag-grid-community',
    'papaparse',
    'idb',
    'mathjs',
    'read-excel-file',
    'write-excel-file',
    'fflate',
  ]) {
    expect(licences).toMatch(new RegExp(`^${name} \\d+\\.\\d+\\.\\d+: \\S+`, 'm'));
  }
  const bill = (await (await served('bill-of-materials.json')).json()) as {
    readonly bomFormat: string;
    readonly components: readonly { readonly name: string }[];
  };
  expect(bill.bomFormat).toBe('CycloneDX');
  expect(bill.components.map(({ name }) => name)).toContain('preact');
});
