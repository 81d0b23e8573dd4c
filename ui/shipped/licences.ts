// What is shipped beside the page: licences.txt with the licence of every package that is really in the built files, workers
// included, and the bill of materials. vite.config.ts uses it.

import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';
import { billOfMaterials, type LockFile } from './bill-of-materials.ts';

export interface Shipped {
  /** For the builds of workers, which come before the page's is done. */
  readonly inWorkers: () => Plugin;
  readonly inPage: Plugin;
}

/** Two plugins that share what they find; `root` is the project's folder. */
export function shipped(root: string): Shipped {
  const folders = new Set<string>();
  const collect: Plugin['generateBundle'] = (_, bundle) => {
    for (const part of Object.values(bundle)) {
      if (part.type !== 'chunk') continue;
      for (const id of part.moduleIds) {
        const folder = folderOf(id);
        if (folder !== undefined) folders.add(folder);
      }
    }
  };
  return {
    inWorkers: () => ({ name: 'licences-of-workers', generateBundle: collect }),
    inPage: {
      name: 'licences',
      apply: 'build',
      generateBundle(options, bundle, isWrite) {
        collect.call(this, options, bundle, isWrite);
        this.emitFile({ type: 'asset', fileName: 'licences.txt', source: licencesOf(root, [...folders]) });
        const lock = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')) as LockFile;
        const bill = `${JSON.stringify(billOfMaterials(lock), null, 1)}\n`;
        this.emitFile({ type: 'asset', fileName: 'bill-of-materials.json', source: bill });
      },
    },
  };
}

/** The package's folder that a module stands in. */
function folderOf(id: string): string | undefined {
  return /^\0?(.*\/node_modules\/(?:@[^/]+\/)?[^/@][^/]*)\//.exec(id)?.[1];
}

function licencesOf(root: string, folders: readonly string[]): string {
  const own = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as Named;
  const head = `Dibble ${own.version} is free software under ${own.license}. It holds the packages below, under their own licences.\n`;
  const parts = folders.map(licenceIn).sort((a, b) => (a < b ? -1 : 1));
  return [head, ...parts, `Dibble ${own.version}: ${own.license}\n\n${textIn(root)}`].join(RULE);
}

const RULE = `\n${'-'.repeat(80)}\n\n`;

interface Named {
  readonly name: string;
  readonly version: string;
  readonly license: string;
}

function licenceIn(folder: string): string {
  const { name, version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Named;
  return `${name} ${version}: ${license}\n\n${textIn(folder)}`;
}

/** The texts of its licence and notices, as they came with it. */
function textIn(folder: string): string {
  const files = existsSync(folder) ? readdirSync(folder, { withFileTypes: true }) : [];
  const texts = files.filter((file) => file.isFile() && /^(?:licen[cs]e|copying|notice)(?:[.-].*)?$/i.test(file.name));
  return texts.map(({ name }) => `${readFileSync(join(folder, name), 'utf8').trim()}\n`).join('\n');
}
