// Every fact at every point, one test each; and that the facts are what they say: each once, each with a source that a stranger finds,
// none claiming more than its kind allows.
import { readdirSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { allFacts, factsByFile } from './all-checks.ts';
import { judge, type Publication, restsOn } from './check.ts';
import { sourceOf } from './summary.ts';

describe.each(Object.entries(factsByFile))('%s', (_file, facts) => {
  it.each(facts.flatMap((fact) => fact.points.map((point) => [`${fact.fact}: ${point.what}`, point] as const)))(
    '%s',
    (_title, point) => {
      const { computed, verdict } = judge(point);
      expect(point.given).not.toBeNaN();
      expect(verdict, `given ${point.given}, computed ${computed}, tolerance ${point.tolerance}`).toBe(
        point.off === undefined ? 'agrees' : 'known to be off',
      );
    },
  );
});

const publications: readonly Publication[] = allFacts.flatMap((fact) => {
  if (fact.kind === 'published') return [fact.source];
  if (fact.kind === 're-fitted') return [fact.data];
  return fact.kind === 'library' && fact.data !== undefined ? [fact.data] : [];
});

/** Words of sources that nobody finds again. */
const VAGUE =
  /\b(trade page|growers’|a magazine|one station|public chart|mirror|sheet of makers|page of the trade|somewhere)\b/i;

describe('the facts together', () => {
  it('hold every file of checks', () => {
    const files = readdirSync(import.meta.dirname).filter((name) => name.endsWith('.checks.ts'));
    expect(Object.keys(factsByFile).sort()).toEqual(files.map((name) => name.replace('.checks.ts', '')).sort());
  });

  it('say each thing once, at one point or more, each point once and with a tolerance', () => {
    const names = allFacts.map(({ fact }) => fact);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
    for (const { fact, points } of allFacts) {
      expect(points.length, fact).toBeGreaterThan(0);
      const whats = points.map(({ what }) => what);
      expect(
        whats.filter((what, index) => whats.indexOf(what) !== index),
        fact,
      ).toEqual([]);
      for (const { tolerance, off } of points) {
        expect(tolerance, fact).toBeGreaterThanOrEqual(0);
        if (off !== undefined) expect(off.upTo, fact).toBeGreaterThan(tolerance);
      }
    }
  });

  it('name publications so that a stranger finds them', () => {
    for (const { author, year, title, publisher } of publications) {
      for (const part of [author, title, publisher]) {
        expect(part.trim().length, title).toBeGreaterThan(3);
        expect(part).not.toMatch(VAGUE);
      }
      if (typeof year === 'number') {
        expect(year, title).toBeGreaterThan(1800);
        expect(year, title).toBeLessThan(2100);
      } else expect(year).toMatch(/^undated, /);
    }
    for (const fact of allFacts) {
      expect(restsOn(fact)).not.toMatch(VAGUE);
      if (fact.kind === 'published' || fact.kind === 're-fitted') expect(fact.at.length, fact.fact).toBeGreaterThan(4);
    }
  });

  it('have one spelling of each publication', () => {
    const titles = new Map<string, Publication>();
    for (const publication of publications) {
      expect(titles.get(publication.title) ?? publication).toEqual(publication);
      titles.set(publication.title, publication);
    }
  });

  it('claim no publication for what is arithmetic or common practice', () => {
    for (const fact of allFacts) {
      if (fact.kind === 'arithmetic' || fact.kind === 'common practice') {
        expect(restsOn(fact), fact.fact).not.toMatch(/\b(19|20)\d\d\b|https?:/);
      }
    }
  });

  it('are as many published ones as there have been', () => {
    const published = allFacts.filter(({ kind }) => kind === 'published');
    expect(published.length).toBeGreaterThanOrEqual(330);
    expect(new Set(published.map(sourceOf)).size).toBeGreaterThanOrEqual(70);
  });
});
