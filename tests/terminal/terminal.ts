// Runs the terminal's commands inside the test's own process, in a folder of its own that goes away afterwards.

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { civilDay } from '../../engine/index.ts';
import { earlierTemplate } from '../../sheets-templates/earlier.ts';
import { templateShelf, todaysTemplate } from '../../sheets-templates/index.ts';
import { run } from '../../ui/terminal/run.ts';
import { templateOf } from '../book.ts';
import { open, SMALL_FARM } from '../formats/small-farm.ts';

const SMALL = templateOf(SMALL_FARM);

export interface Ran {
  readonly status: number;
  readonly out: string;
  readonly err: string;
}

export class Folder {
  readonly path = mkdtempSync(join(tmpdir(), 'dibble-'));

  remove(): void {
    rmSync(this.path, { recursive: true, force: true });
  }

  file(name: string): string {
    return join(this.path, name);
  }

  /** Writes a file and gives its path. */
  put(name: string, content: string | Uint8Array): string {
    writeFileSync(this.file(name), content);
    return this.file(name);
  }

  text(name: string): string {
    return readFileSync(this.file(name), 'utf8');
  }

  names(): readonly string[] {
    return readdirSync(this.path).sort();
  }

  /** The small farm as a workbook file. */
  farm(name = 'farm.json'): string {
    return this.put(name, open().file());
  }

  /** Runs a command; its error lines name files without the folder. `whenOpening` is called when a workbook has been read. */
  async run(words: readonly string[], input: readonly string[] = [], whenOpening?: () => void): Promise<Ran> {
    const { status, out, err } = await runWith(words, input, whenOpening);
    return { status, out, err: err.replaceAll(`${this.path}/`, '') };
  }
}

/** Runs a command in a world that knows the small farm's template too, and whose clock stands still. */
export async function runWith(
  words: readonly string[],
  input: readonly string[] = [],
  whenOpening?: () => void,
  progress?: (line: string | undefined) => void,
): Promise<Ran> {
  let out = '';
  let err = '';
  const status = await run(words, {
    out: (content) => {
      out += typeof content === 'string' ? content : Buffer.from(content).toString('latin1');
    },
    warn: (line) => {
      err += `${line}\n`;
    },
    ...(progress === undefined ? {} : { progress }),
    lines: async function* () {
      yield* input;
    },
    input: async () => Buffer.from(input.join('\n')),
    today: civilDay(2026, 11, 20),
    now: () => 0,
    templates: async (wanted) => {
      whenOpening?.();
      if (wanted?.name === SMALL.name) return { today: () => SMALL, earlier: () => undefined };
      if (wanted === undefined) return templateShelf();
      const earlier = await earlierTemplate(wanted.name, wanted.version);
      return templateShelf(earlier === undefined ? [] : [earlier], [await todaysTemplate(wanted.name)]);
    },
  });
  return { status, out, err };
}
