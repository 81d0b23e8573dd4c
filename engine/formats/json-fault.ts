// Where a text stops being JSON (RFC 8259), for a sentence that helps: the line, what stands there, and whether the text
// merely ends too early. Called only once reading has failed; JSON.parse does the reading.

export interface JsonFault {
  /** From 1. */
  readonly line: number;
  /** The text ends before the document does: it was cut short. */
  readonly cutShort: boolean;
  /** What stands at the fault, at most a few words of it. */
  readonly found: string;
}

const TOKEN =
  /\s*(?:([{}[\],:])|("[^"\\\n\r]*(?:\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})[^"\\\n\r]*)*")|(-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)(?![\w.+-]))/y;

/** What may come next: a value, a name, the end of the list or group. */
type Wants = 'value' | 'value or ]' | 'name' | 'name or }' | ':' | ', or end' | 'nothing';

/** The first place at which `text` is not JSON; undefined where it is. */
export function jsonFault(text: string): JsonFault | undefined {
  const open: ('{' | '[')[] = [];
  let wants: Wants = 'value';
  let at = 0;
  for (;;) {
    TOKEN.lastIndex = at;
    const token = TOKEN.exec(text);
    if (token === null) return wants === 'nothing' && text.slice(at).trim() === '' ? undefined : faultAt(text, at);
    const next = after(token[1] ?? (token[2] === undefined ? 'scalar' : 'text'), wants, open);
    if (next === undefined) return faultAt(text, at);
    wants = next;
    at = TOKEN.lastIndex;
  }
}

function after(token: string, wants: Wants, open: ('{' | '[')[]): Wants | undefined {
  const value = wants === 'value' || wants === 'value or ]';
  const done = (): Wants => (open.length === 0 ? 'nothing' : ', or end');
  switch (token) {
    case '{':
    case '[':
      if (!value) return undefined;
      open.push(token);
      return token === '{' ? 'name or }' : 'value or ]';
    case '}':
      if (open.at(-1) !== '{' || (wants !== 'name or }' && wants !== ', or end')) return undefined;
      open.pop();
      return done();
    case ']':
      if (open.at(-1) !== '[' || (wants !== 'value or ]' && wants !== ', or end')) return undefined;
      open.pop();
      return done();
    case ',':
      if (wants !== ', or end') return undefined;
      return open.at(-1) === '{' ? 'name' : 'value';
    case ':':
      return wants === ':' ? 'value' : undefined;
    case 'text':
      if (wants === 'name' || wants === 'name or }') return ':';
      return value ? done() : undefined;
    default:
      return value ? done() : undefined;
  }
}

function faultAt(text: string, from: number): JsonFault {
  const at = from + (/^\s*/.exec(text.slice(from))?.[0].length ?? 0);
  const rest = text.slice(at);
  const line = text.slice(0, at).split('\n').length;
  // A text, number or word that the end of the file cut in two reaches the end without a break.
  const cutShort =
    rest === '' || /^(?:"(?:[^"\\\n\r]|\\.)*\\?|-?[\d.eE+-]*|t|tr|tru|f|fa|fal|fals|n|nu|nul)$/.test(rest);
  return { line, cutShort, found: rest.split(/[\n\r]/, 1)[0]?.slice(0, 20) ?? '' };
}
