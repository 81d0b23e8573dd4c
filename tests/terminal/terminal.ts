// Runs the terminal's commands inside the test's own process, in a folder of its own that goes away afterwards.

import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { civilDay } from '../../engine/index.ts';
import { templateShelf } from '../../sheets-templates/index.ts';
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

  /** Runs a command; its error lines name files without the folder. */
  async run(words: readonly string[], input: readonly string[] = []): Promise<Ran> {
    let out = '';
    let err = '';
    const status = await run(words, {
      out: (text) => {
        out += text;
      },
      warn: (line) => {
        err += `${line}\n`;
      },
      lines: async function* () {
        yield* input;
      },
      today: civilDay(2026, 11, 20),
      now: () => 0,
      templates: async (wanted) =>
        wanted?.name === SMALL.name ? { today: () => SMALL, earlier: () => undefined } : templateShelf(),
    });
    return { status, out, err: err.replaceAll(`${this.path}/`, '') };
  }
}
