// Every published figure against the figure the engine computes, one test each, and how many there are.
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allChecks, checksByFile, passes } from './all-checks.ts';

describe.each(Object.entries(checksByFile))('%s', (_file, checks) => {
  it.each(checks.map((check) => [`${check.what} (${check.source})`, check] as const))('%s', (_title, check) => {
    const computed = check.computed();
    expect(check.published).not.toBeNaN();
    expect(
      passes(check, computed),
      `published ${check.published}, computed ${computed}, tolerance ${check.tolerance} ${check.unit}`,
    ).toBe(true);
  });
});

describe('the checks together', () => {
  it('hold every file of checks', () => {
    const files = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.checks.ts'));
    expect(Object.keys(checksByFile).sort()).toEqual(files.map((name) => name.replace('.checks.ts', '')).sort());
  });

  it('are 150 or more from 15 or more sources', () => {
    expect(allChecks.length).toBeGreaterThanOrEqual(150);
    expect(new Set(allChecks.map((check) => check.source)).size).toBeGreaterThanOrEqual(15);
  });

  it('say each thing once and carry a tolerance', () => {
    const names = allChecks.map((check) => `${check.source}: ${check.what}`);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    for (const check of allChecks) expect(check.tolerance).toBeGreaterThanOrEqual(0);
  });
});
