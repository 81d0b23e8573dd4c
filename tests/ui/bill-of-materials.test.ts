// The bill of materials against the lock file that it is made of, and against what CycloneDX 1.6 asks of its parts.

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { billOfMaterials, type LockFile } from '../../ui/shipped/bill-of-materials.ts';

const LOCK = JSON.parse(readFileSync(new URL('../../package-lock.json', import.meta.url), 'utf8')) as LockFile;
const BILL = billOfMaterials(LOCK);

test('every package of the lock file is there once, with version, licence, fingerprint and address', () => {
  const locked = Object.entries(LOCK.packages).filter(([path]) => path !== '');
  expect(BILL.components.map((component) => component['bom-ref'])).toEqual(locked.map(([path]) => path));
  for (const [i, { version, licenses, hashes, purl }] of BILL.components.entries()) {
    expect(version).toBe(locked[i]?.[1].version);
    expect(licenses).toHaveLength(1);
    for (const { alg, content } of hashes ?? [])
      expect([alg, content]).toEqual(['SHA-512', expect.stringMatching(/^[0-9a-f]{128}$/)]);
    // package-url, type npm: the scope is the namespace, its @ escaped.
    expect(purl).toMatch(/^pkg:npm\/(?:%40[\w.~-]+\/)?[\w.~-]+@\d+\.\d+\.\d+/);
  }
  const hashed = BILL.components.filter(({ hashes }) => hashes !== undefined);
  expect(hashed.length).toBe(locked.filter(([, { integrity }]) => integrity !== undefined).length);
});

test('what needs what leads to packages that are there, and from the project to each that is shipped', () => {
  const needs = new Map(BILL.dependencies.map(({ ref, dependsOn }) => [ref, dependsOn]));
  const refs = new Set(BILL.components.map((component) => component['bom-ref']));
  for (const dependsOn of needs.values()) expect(dependsOn.filter((ref) => !refs.has(ref))).toEqual([]);
  const reached = new Set<string>();
  const walk = (ref: string): void => {
    if (reached.has(ref)) return;
    reached.add(ref);
    for (const next of needs.get(ref) ?? []) walk(next);
  };
  walk(BILL.metadata.component['bom-ref']);
  const shipped = BILL.components.filter(({ scope }) => scope === 'required');
  expect(shipped.length).toBeGreaterThan(10);
  expect(shipped.map((component) => component['bom-ref']).filter((ref) => !reached.has(ref))).toEqual([]);
});

test('a package within another’s folder is the one that the other needs', () => {
  const lock: LockFile = {
    name: 'farm',
    version: '1.0.0',
    packages: {
      '': { license: 'MIT', dependencies: { spade: '^1.0.0', '@tools/hoe': '^2.0.0' } },
      'node_modules/spade': { version: '1.1.0', license: 'MIT AND ISC', dependencies: { handle: '^1.0.0' } },
      'node_modules/spade/node_modules/handle': { version: '1.0.0', license: 'ISC', dev: true },
      'node_modules/handle': { version: '2.0.0', license: 'ISC' },
      'node_modules/@tools/hoe': { version: '2.0.0', license: 'MIT', dependencies: { handle: '^2.0.0' } },
    },
  };
  const bill = billOfMaterials(lock);
  expect(bill.dependencies).toEqual([
    { ref: 'farm@1.0.0', dependsOn: ['node_modules/spade', 'node_modules/@tools/hoe'] },
    { ref: 'node_modules/spade', dependsOn: ['node_modules/spade/node_modules/handle'] },
    { ref: 'node_modules/spade/node_modules/handle', dependsOn: [] },
    { ref: 'node_modules/handle', dependsOn: [] },
    { ref: 'node_modules/@tools/hoe', dependsOn: ['node_modules/handle'] },
  ]);
  expect(bill.components[0]?.licenses).toEqual([{ expression: 'MIT AND ISC' }]);
  expect(bill.components[1]?.scope).toBe('excluded');
  expect(bill.components[3]).toMatchObject({ group: '@tools', name: 'hoe', purl: 'pkg:npm/%40tools/hoe@2.0.0' });
});
