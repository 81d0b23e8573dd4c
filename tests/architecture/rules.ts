// The rules of the house as functions from source files to findings: which way imports run, what the engine may touch,
// what no file may hold. The architecture test applies them to the project and to small made-up files that break them.

import { isFields, type Node, type Source } from './sources.ts';

/** 'engine/values/civil.ts:3 imports ...': the file, the line, what is wrong there. */
export type Finding = string;

/** Each room of the house with its storey; imports go to the same room or to one on a lower storey. */
const storeys: readonly (readonly [room: string, storey: number])[] = [
  ['engine/units/', 0],
  ['engine/values/', 1],
  ['engine/agronomy/', 2],
  ['engine/planning/', 2.5],
  ['engine/language/', 2],
  ['engine/functions/', 3],
  ['engine/calculation/', 4],
  ['engine/schema/', 5],
  ['engine/document/', 6],
  ['engine/commands/', 7],
  ['engine/queries/', 8],
  ['engine/formats/', 9],
  ['engine/index.ts', 10],
  ['sheets-templates/', 11],
  ['demo/', 12],
  // Reads the tables, and no table, page or command reads it back: found before the rest of ui/.
  ['ui/scratch/', 12.5],
  ['ui/', 13],
  ['tests/', 14],
];

/** Rooms closed to each other although the storeys would allow it: a model knows no units and no tables. */
const closed: readonly (readonly [from: string, to: string])[] = [['engine/agronomy/', 'engine/units/']];

/** The packages that the engine may use, each in one file alone. */
const enginePackages: readonly (readonly [file: string, name: string])[] = [
  ['engine/units/general-units.ts', 'mathjs'],
];

/** Names of the browser, of Node, of the clock and of chance: the engine has none of them. */
const outside = new Set(
  (
    'window document navigator localStorage sessionStorage indexedDB location history fetch XMLHttpRequest WebSocket ' +
    'Worker HTMLElement alert confirm prompt console process Buffer require global globalThis setTimeout setInterval ' +
    'setImmediate requestAnimationFrame queueMicrotask performance crypto Date'
  ).split(' '),
);

/** Imports run one way, and a relative import names a file that is there, with its extension. */
export function oneWay(sources: readonly Source[], exists: (path: string) => boolean): readonly Finding[] {
  return sources.flatMap((source) =>
    source.imports.flatMap(({ file, written, line }) => {
      if (file === undefined) return [];
      if (!exists(file)) return [`${source.path}:${line} imports ${written}, which is no file`];
      const from = roomOf(source.path);
      const to = roomOf(file);
      if (from === undefined || to === undefined || from.room === to.room) return [];
      const barred = closed.some((pair) => pair[0] === from.room && pair[1] === to.room);
      return barred || to.storey >= from.storey
        ? [`${source.path}:${line} imports ${written}: ${from.room} may not import ${to.room}`]
        : [];
    }),
  );
}

/** No file reaches itself through its imports. Each circle is given once, as the walk around it. */
export function circles(sources: readonly Source[]): readonly Finding[] {
  const byPath = new Map(sources.map((source) => [source.path, source]));
  const done = new Set<string>();
  const found: Finding[] = [];
  const visit = (path: string, walk: readonly string[]): void => {
    const source = byPath.get(path);
    if (source === undefined || done.has(path)) return;
    const seen = walk.indexOf(path);
    if (seen >= 0) {
      found.push([...walk.slice(seen), path].join(' -> '));
      return;
    }
    for (const { file } of source.imports) if (file !== undefined) visit(file, [...walk, path]);
    done.add(path);
  };
  for (const source of sources) visit(source.path, []);
  return found;
}

/** Outside the engine and the tests, only the engine's public face is imported. */
export function publicFace(sources: readonly Source[]): readonly Finding[] {
  return sources
    .filter(({ path }) => !path.startsWith('engine/') && !path.startsWith('tests/'))
    .flatMap(({ path, imports }) =>
      imports
        .filter(({ file }) => file?.startsWith('engine/') === true && file !== 'engine/index.ts')
        .map(({ written, line }) => `${path}:${line} imports ${written}: only engine/index.ts is public`),
    );
}

/** The engine uses no package but the two that stand at its borders, and nothing of Node's. */
export function engineStandsAlone(sources: readonly Source[]): readonly Finding[] {
  return inEngine(sources).flatMap(({ path, imports }) =>
    imports
      .filter(({ file, written }) => {
        const allowed = enginePackages.some(
          ([only, name]) => path === only && (written === name || written.startsWith(`${name}/`)),
        );
        return file === undefined ? !allowed : !file.startsWith('engine/');
      })
      .map(({ written, line }) => `${path}:${line} imports ${written} from outside the engine`),
  );
}

/** hyperformula runs on scratch papers alone; the tests hold the engine against it. */
export function scratchAlone(sources: readonly Source[]): readonly Finding[] {
  return sources
    .filter(({ path }) => !path.startsWith('ui/scratch/') && !path.startsWith('tests/'))
    .flatMap(({ path, imports }) =>
      imports
        .filter(({ written }) => written === 'hyperformula' || written.startsWith('hyperformula/'))
        .map(({ line }) => `${path}:${line} imports hyperformula, which is for ui/scratch/ alone`),
    );
}

/** The engine reads no screen, no file, no clock and no chance. A file's own variable of such a name is its own. */
export function engineIsPure(sources: readonly Source[]): readonly Finding[] {
  return inEngine(sources).flatMap(({ path, nodes }) => {
    const own = new Set(nodes.filter(declaresName).map((node) => node.fields.name));
    return nodes.flatMap((node) => {
      if (isMember(node, 'Math', 'random')) return [`${path}:${node.line} uses Math.random`];
      const { name } = node.fields;
      const reads = node.type === 'Identifier' && typeof name === 'string' && outside.has(name);
      return reads && !own.has(name) && standsForValue(node) ? [`${path}:${node.line} uses ${name}`] : [];
    });
  });
}

/** No code made from text, and no way around the type checker. */
export function honestTypes(sources: readonly Source[]): readonly Finding[] {
  return sources.flatMap(({ path, nodes, comments }) => [
    ...nodes.flatMap((node) => {
      const what = dishonest(node);
      return what === undefined ? [] : [`${path}:${node.line} has ${what}`];
    }),
    ...comments
      .filter((comment) => /^\s*@ts-(ignore|nocheck)/.test(comment))
      .map((comment) => `${path} silences the type checker: ${comment.trim()}`),
  ]);
}

/** Every engine file says first what it holds. */
export function opensWithComment(sources: readonly Source[]): readonly Finding[] {
  return inEngine(sources)
    .filter(({ text }) => !/^\/[/*]/.test(text))
    .map(({ path }) => `${path} does not begin with a comment that says what it holds`);
}

/** Files of more than so many lines. */
export function longerThan(limit: number, sources: readonly Source[]): readonly Finding[] {
  return sources
    .filter(({ lines }) => lines > limit)
    .map(({ path, lines }) => `${path} has ${lines} lines, more than ${limit}`);
}

const suites = new Set(['test', 'it', 'describe', 'suite', 'bench']);
const leavesOut = new Set(['skip', 'only', 'todo', 'skipIf', 'runIf', 'fails']);

/** No test is left out, alone, or planned. */
export function noTestLeftOut(sources: readonly Source[]): readonly Finding[] {
  return sources
    .filter(({ path }) => path.startsWith('tests/'))
    .flatMap(({ path, nodes }) =>
      nodes.flatMap((node) => {
        const called = node.type === 'Identifier' ? node.fields.name : undefined;
        if (node.role === 'callee' && /^x(it|test|describe)$/.test(String(called)))
          return [`${path}:${node.line} ${called}`];
        const name = memberName(node);
        return name !== undefined && leavesOut.has(name) && suites.has(firstName(node.fields.object) ?? '')
          ? [`${path}:${node.line} leaves tests out with .${name}`]
          : [];
      }),
    );
}

function inEngine(sources: readonly Source[]): readonly Source[] {
  return sources.filter(({ path }) => path.startsWith('engine/'));
}

function roomOf(path: string): { readonly room: string; readonly storey: number } | undefined {
  const found = storeys.find(([room]) => path.startsWith(room));
  return found === undefined ? undefined : { room: found[0], storey: found[1] };
}

function dishonest(node: Node): string | undefined {
  const { fields } = node;
  if (node.type === 'TSAnyKeyword') return 'the type any';
  if (node.type === 'TSNonNullExpression') return 'a "!" that says a value is there';
  if (node.type === 'TSAsExpression' && isUnknownCast(fields.expression)) return 'a cast by way of unknown';
  if (node.type === 'CallExpression' && nameOf(fields.callee) === 'eval') return 'eval';
  if (/^(New|Call)Expression$/.test(node.type) && nameOf(fields.callee) === 'Function') return 'the Function maker';
  const markup =
    memberName(node) ?? (node.type === 'JSXIdentifier' && typeof fields.name === 'string' ? fields.name : '');
  if (MARKUP_FROM_TEXT.has(markup)) return `markup made from text, ${markup}`;
  return undefined;
}

/** Ways to put a text on the page as elements: a name in a workbook would be a program. */
const MARKUP_FROM_TEXT: ReadonlySet<string> = new Set([
  'innerHTML',
  'outerHTML',
  'insertAdjacentHTML',
  'dangerouslySetInnerHTML',
  'createContextualFragment',
  'srcdoc',
]);

function isUnknownCast(value: unknown): boolean {
  if (!isFields(value)) return false;
  if (value.type === 'ParenthesizedExpression') return isUnknownCast(value.expression);
  return (
    value.type === 'TSAsExpression' &&
    isFields(value.typeAnnotation) &&
    value.typeAnnotation.type === 'TSUnknownKeyword'
  );
}

function isMember(node: Node, object: string, property: string): boolean {
  return memberName(node) === property && nameOf(node.fields.object) === object;
}

/** The property that a node takes with a dot. */
function memberName(node: Node): string | undefined {
  if (node.type !== 'MemberExpression' || node.fields.computed === true) return undefined;
  return nameOf(node.fields.property);
}

function nameOf(value: unknown): string | undefined {
  return isFields(value) && value.type === 'Identifier' && typeof value.name === 'string' ? value.name : undefined;
}

/** The name that a chain begins with: test in test.each([...]).skip. */
function firstName(value: unknown): string | undefined {
  if (!isFields(value)) return undefined;
  if (value.type === 'MemberExpression') return firstName(value.object);
  if (value.type === 'CallExpression' || value.type === 'TaggedTemplateExpression')
    return firstName(value.callee ?? value.tag);
  return nameOf(value);
}

/** Where an identifier makes a name in the file: a parameter, variable, function, class, import, or piece of a pattern. */
function declaresName(node: Node): boolean {
  if (node.type !== 'Identifier') return false;
  const above = node.above?.type ?? '';
  if (['params', 'param', 'local'].includes(node.role)) return true;
  if (node.role === 'id') return /^(VariableDeclarator|Function|Class|TSInterface|TSTypeAlias)/.test(above);
  if (above === 'AssignmentPattern') return node.role === 'left';
  if (above === 'Property') return node.role === 'value' && node.above?.above?.type === 'ObjectPattern';
  return above === 'ArrayPattern' || above === 'RestElement';
}

/** Where an identifier reads a variable, not where it only names a property. */
function standsForValue(node: Node): boolean {
  const { role, above } = node;
  if (role === 'property') return above?.fields.computed === true;
  if (role === 'key') return above?.fields.computed === true;
  return !(role === 'imported' || role === 'exported' || role === 'label');
}
