// What the benchmark runs inside the page, each a function by itself, as the browser is handed its text: edits and pastes until they are
// painted, frames while something is dragged or scrolled. Milliseconds of the page's own clock.

export interface Slid {
  /** From a move until its frame is painted. */
  readonly whole: number;
  /** The same without the wait for the screen's next frame: what the edit takes, and its frame. */
  readonly work: number;
}

/** Moves a slider through values, one after each is painted; milliseconds of each. */
export async function slide({ name, values }: { name: string; values: readonly number[] }): Promise<readonly Slid[]> {
  const slider = document.querySelector<HTMLInputElement>(
    `input[type="range"][aria-label="${name}"], .spacing input[type="range"]`,
  );
  if (slider === null) throw new Error(`There is no slider called ${name}.`);
  /** When the next frame began, once it is painted. */
  const painted = (): Promise<number> =>
    new Promise((resolve) => {
      requestAnimationFrame((began) => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => resolve(began);
        channel.port2.postMessage(0);
      });
    });
  const times: Slid[] = [];
  for (const value of values) {
    await painted();
    const start = performance.now();
    slider.value = String(value);
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    const done = performance.now();
    const began = await painted();
    const end = performance.now();
    times.push({ whole: end - start, work: done - start + end - Math.max(done, began) });
  }
  return times;
}

/** Moves a slider at every frame, as a hand does; the milliseconds between frames. */
export function drag({ frames, low, high }: { frames: number; low: number; high: number }): Promise<readonly number[]> {
  const slider = document.querySelector<HTMLInputElement>('.spacing input[type="range"]');
  if (slider === null) throw new Error('There is no slider of the spacing.');
  return new Promise((resolve) => {
    const times: number[] = [];
    let last = performance.now();
    const frame = (): void => {
      const now = performance.now();
      times.push(now - last);
      last = now;
      if (times.length > frames) {
        resolve(times.slice(1));
        return;
      }
      const turn = (1 - Math.cos((times.length / frames) * 4 * Math.PI)) / 2;
      slider.value = String(low + (high - low) * turn);
      slider.dispatchEvent(new Event('input', { bubbles: true }));
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
}

/** Pastes a text into the cell in hand; the milliseconds until it is painted. */
export function paste(text: string): Promise<number> {
  return new Promise((resolve) => {
    const start = performance.now();
    const clipboardData = new DataTransfer();
    clipboardData.setData('text/plain', text);
    const event = new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true });
    document.activeElement?.dispatchEvent(event);
    requestAnimationFrame(() => {
      const channel = new MessageChannel();
      channel.port1.onmessage = () => resolve(performance.now() - start);
      channel.port2.postMessage(0);
    });
  });
}

/** Presses the button of a sheet; the milliseconds until cells of it are painted. */
export function switchTo(name: string): Promise<number> {
  const buttons = document.querySelectorAll<HTMLButtonElement>('nav[aria-label="Sheets"] button');
  const button = [...buttons].find((one) => new RegExp(`^${name}\\s*(,|\\d|$)`).test(one.textContent.trim()));
  if (button === undefined) throw new Error(`There is no button for ${name}.`);
  return new Promise((resolve) => {
    const start = performance.now();
    button.click();
    const look = (): void => {
      const shown = document.querySelector(`main[aria-label="${name}"] .ag-row [class*="role-"]`);
      if (shown !== null && shown.textContent !== '') resolve(performance.now() - start);
      else requestAnimationFrame(look);
    };
    requestAnimationFrame(look);
  });
}

/** From now on notes how long each frame took, for framesSince(). */
export function noteFrames(): void {
  const times: number[] = [];
  Reflect.set(globalThis, 'framesNoted', times);
  let last = performance.now();
  const frame = (): void => {
    const now = performance.now();
    times.push(now - last);
    last = now;
    requestAnimationFrame(frame);
  };
  requestAnimationFrame(frame);
}

/** The milliseconds of each frame since it was last asked. */
export function framesSince(): readonly number[] {
  const times: unknown = Reflect.get(globalThis, 'framesNoted');
  return Array.isArray(times) ? times.splice(0).map(Number) : [];
}

/** Scrolls the sheet down by so many rows in so many frames; the milliseconds between frames, and how far it came. */
export function scrollDown({
  rows,
  frames,
}: {
  rows: number;
  frames: number;
}): Promise<{ times: readonly number[]; rows: number }> {
  const grid = document.querySelector('.ag-grid-viewport');
  const row = document.querySelector('.ag-row');
  if (grid === null || row === null) throw new Error('There is no sheet to scroll.');
  const height = row.getBoundingClientRect().height;
  return new Promise((resolve) => {
    const times: number[] = [];
    let last = performance.now();
    const frame = (): void => {
      const now = performance.now();
      times.push(now - last);
      last = now;
      if (times.length > frames) {
        resolve({ times: times.slice(1), rows: Math.round(grid.scrollTop / height) });
        return;
      }
      grid.scrollTop = (rows * height * times.length) / frames;
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
}
