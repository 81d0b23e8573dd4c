// What axe finds on the page, for the tests that walk it.

import axe from 'axe-core';
import type { Page } from 'playwright-core';

export interface Looked {
  /** Contrast alone, or everything but that, which takes most of the time; all there is where absent. */
  readonly rules?: 'contrast' | 'structure';
  /** Parts that were looked at before. */
  readonly without?: readonly string[];
  /** What is looked at; the whole page where absent. */
  readonly within?: string;
}

/** Problems that axe finds on the page, each a line. */
export async function faults(page: Page, looked: Looked = {}): Promise<readonly string[]> {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axe.source);
  return page.evaluate(async ({ rules, without, within }) => {
    const run: unknown = Reflect.get(Reflect.get(globalThis, 'axe'), 'run');
    if (typeof run !== 'function') throw new Error('axe is not in the page.');
    const context = { include: [[within ?? 'html']], exclude: (without ?? []).map((part) => [part]) };
    const options = {
      resultTypes: ['violations'],
      ...(rules === 'contrast' ? { runOnly: ['color-contrast'] } : {}),
      rules: { 'color-contrast': { enabled: rules !== 'structure' }, 'target-size': { enabled: rules !== 'contrast' } },
    };
    const { violations } = (await run.call(null, context, options)) as {
      violations: { id: string; help: string; nodes: { html: string }[] }[];
    };
    return violations.map(({ id, help, nodes }) => {
      const where = nodes.map(({ html }) => html.slice(0, 120)).join(' | ');
      return `${id}: ${help}: ${where.slice(0, 500)}`;
    });
  }, looked);
}

/** The same in light colours, and what contrast there is in dark ones. */
export async function faultsInBoth(page: Page, looked: Looked = {}): Promise<readonly string[]> {
  await page.emulateMedia({ colorScheme: 'dark' });
  const dark = await faults(page, { ...looked, rules: 'contrast' });
  await page.emulateMedia({ colorScheme: 'light' });
  return [...dark.map((line) => `dark ${line}`), ...(await faults(page, looked))];
}
