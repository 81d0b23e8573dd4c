// Reads the project's own TypeScript files into what the architecture rules look at: the text, what it imports, and its
// syntax tree from vite's parser. Only the architecture rules and their test call this file; it judges nothing itself.

import { readdirSync, readFileSync } from 'node:fs';
import { posix } from 'node:path';
import { parseSync } from 'vite';

export interface Import {
  /** As written: './tree.ts', 'mathjs', 'node:fs'. */
  readonly written: string;
  /** The project's file meant, from the project's root, where it is a relative path. */
  readonly file?: string;
  readonly line: number;
}

/** A node of the syntax tree with what stands above it; fields are read by name, since a rule looks at few kinds. */
export interface Node {
  readonly type: string;
  readonly line: number;
  readonly fields: Readonly<Record<string, unknown>>;
  readonly above?: Node;
  /** The field of the node above that this one stands in. */
  readonly role: string;
}

export interface Source {
  /** From the project's root, with forward slashes: 'engine/values/civil.ts'. */
  readonly path: string;
  readonly text: string;
  readonly lines: number;
  readonly imports: readonly Import[];
  readonly comments: readonly string[];
  readonly nodes: readonly Node[];
}

/** One file's source; `text` need not stand on the disk, so a rule can be tried on a made-up file. */
export function sourceOf(path: string, text: string): Source {
  const parsed = parseSync(path, text);
  const fault = parsed.errors[0];
  if (fault !== undefined) throw new Error(`${path}: ${fault.message}`);
  const nodes: Node[] = [];
  const lineOf = lineFinder(text);
  collect(parsed.program, lineOf, nodes);
  return {
    path,
    text,
    lines: text.split('\n').length - (text.endsWith('\n') ? 1 : 0),
    imports: nodes.flatMap((node) => importOf(path, node)),
    comments: parsed.comments.map((comment) => comment.value),
    nodes,
  };
}

/** Every .ts and .tsx file under these folders of the project, in order of path. */
export function sourcesUnder(root: string, folders: readonly string[]): readonly Source[] {
  return folders
    .flatMap((folder) => filesUnder(root, folder))
    .filter((path) => /\.tsx?$/.test(path))
    .sort()
    .map((path) => sourceOf(path, readFileSync(posix.join(root, path), 'utf8')));
}

function filesUnder(root: string, folder: string): readonly string[] {
  return readdirSync(posix.join(root, folder), { withFileTypes: true }).flatMap((item) => {
    const path = posix.join(folder, item.name);
    return item.isDirectory() ? filesUnder(root, path) : [path];
  });
}

function collect(program: unknown, lineOf: (offset: number) => number, into: Node[]): void {
  const visit = (value: unknown, role: string, above?: Node): void => {
    if (Array.isArray(value)) {
      for (const item of value) visit(item, role, above);
    } else if (isFields(value)) {
      const { type, start } = value;
      if (typeof type !== 'string' || typeof start !== 'number') return;
      const node: Node = { type, line: lineOf(start), fields: value, role, ...(above === undefined ? {} : { above }) };
      into.push(node);
      for (const [field, held] of Object.entries(value)) visit(held, field, node);
    }
  };
  visit(program, 'program');
}

function lineFinder(text: string): (offset: number) => number {
  const starts = [0, ...[...text.matchAll(/\n/g)].map((found) => found.index + 1)];
  return (offset) => {
    let low = 0;
    let high = starts.length;
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if ((starts[middle] ?? 0) <= offset) low = middle;
      else high = middle;
    }
    return low + 1;
  };
}

const importing = new Set([
  'ImportDeclaration',
  'ExportNamedDeclaration',
  'ExportAllDeclaration',
  'ImportExpression',
  'TSImportType',
]);

function importOf(path: string, node: Node): readonly Import[] {
  if (!importing.has(node.type)) return [];
  const source = node.fields.source;
  const written = isFields(source) ? source.value : undefined;
  if (typeof written !== 'string') return [];
  const relative = written.startsWith('.');
  // A suffix such as ?url or ?worker is a wish to the builder, not part of the file's name.
  const file = posix.join(posix.dirname(path), written.replace(/\?.*$/, ''));
  return [{ written, line: node.line, ...(relative ? { file } : {}) }];
}

/** Whether a value has named fields, as every node of the tree does. */
export function isFields(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null;
}
