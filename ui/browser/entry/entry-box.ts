// The one text box in which cells are typed, in the grid and in forms: it asks the workbook what the text would mean,
// says so under the box (the date in full, the figure in the column's unit, or the sentence that refuses it), and lists
// what can be picked. A text may have several lines, but for the name of a row: Alt Enter begins another. It changes nothing
// itself. Plain DOM, because the grid makes and throws it away cell by cell.

import { type Book, type ColumnView, sheetView, type TriedEntry, tryEntry } from '../../../engine/index.ts';
import { isFigure } from '../store/sheets.ts';
import { fetchAtRest, wantedCame } from '../store/wanted.ts';
import { matching, optionsFor } from './entry-options.ts';
import { farQuestion, questionOf } from './entry-questions.ts';

export interface EntryBoxProps {
  readonly book: Book;
  readonly sheet: string;
  readonly column: ColumnView;
  /** What the box opens with. */
  readonly text: string;
  /** The slot of the row; absent for a row that is only begun. */
  readonly row?: number | undefined;
  /** Read out as the box's name: 'Length, Bed 3'. */
  readonly label: string;
  /** Called when an item of the list is clicked: the entry is complete. */
  readonly onPick: () => void;
}

/** At most so many rows of a list stand in the page at once. */
const LISTED = 120;

/** A box grows to so many lines of a text; the others are scrolled to. */
const MOST_LINES = 8;

let boxes = 0;

export class EntryBox {
  readonly input: HTMLInputElement | HTMLTextAreaElement;
  private readonly under: HTMLDivElement;
  private readonly list: HTMLUListElement;
  private readonly answer: HTMLParagraphElement;
  private readonly options: readonly string[] | undefined;
  private readonly props: EntryBoxProps;
  private shown: readonly string[] = [];
  /** Which of the shown options Enter takes; -1: the text as typed. */
  private active = -1;
  /** True from the first key: before that the whole list is open whatever the text. */
  private typed = false;
  /** The entry about which a question was put, and the one that was taken again after it. */
  private asked: string | undefined;
  private meant: string | undefined;
  private stop = (): void => undefined;

  constructor(props: EntryBoxProps) {
    boxes += 1;
    const id = `entry-${boxes}`;
    this.props = props;
    this.options = optionsFor(props.book, props.column);
    const isName = sheetView(props.book, props.sheet)?.key === props.column.id;
    const hasLines = props.column.type?.kind === 'text' && this.options === undefined && !isName;
    this.input = document.createElement(hasLines ? 'textarea' : 'input');
    this.input.className = 'entry-box';
    this.input.dir = 'auto';
    this.input.value = props.text;
    this.input.autocomplete = 'off';
    this.input.spellcheck = false;
    this.input.setAttribute('aria-label', props.label);
    this.under = document.createElement('div');
    this.under.className = 'entry-under';
    this.list = document.createElement('ul');
    this.list.id = `${id}-list`;
    this.list.setAttribute('role', 'listbox');
    this.list.setAttribute('aria-label', `What ${props.column.name} can be`);
    this.answer = document.createElement('p');
    this.answer.id = `${id}-answer`;
    this.answer.setAttribute('role', 'status');
    this.input.setAttribute('aria-describedby', this.answer.id);
    this.under.append(this.list, this.answer);
    if (this.options !== undefined) {
      this.input.setAttribute('role', 'combobox');
      this.input.setAttribute('aria-controls', this.list.id);
      this.input.setAttribute('aria-autocomplete', 'list');
    } else if (isFigure(props.column)) {
      this.input.inputMode = 'decimal';
    }
    const box: HTMLElement = this.input;
    box.addEventListener('input', () => {
      this.typed = true;
      this.update();
    });
    box.addEventListener('keydown', (event) => this.onKey(event));
    this.showLines();
    this.list.addEventListener('mousedown', (event) => this.onListPress(event));
  }

  /** Puts what belongs under the box into the page and fills it; call once the box itself is in the page. */
  open(): void {
    // Part of the region the box is in, as the list belongs to it; inside a dialog it would lie underneath otherwise.
    (this.input.closest('dialog, main, aside') ?? document.body).append(this.under);
    window.addEventListener('scroll', this.follow, { capture: true, passive: true });
    window.addEventListener('resize', this.follow);
    this.update();
    let seen = wantedCame.peek();
    this.stop = wantedCame.subscribe((came) => {
      if (came !== seen) this.update();
      seen = came;
    });
  }

  close(): void {
    window.removeEventListener('scroll', this.follow, { capture: true });
    window.removeEventListener('resize', this.follow);
    this.stop();
    this.under.remove();
  }

  private readonly follow = (event: Event): void => {
    if (event.target !== this.list) this.place();
  };

  /** The entry as it stands. */
  text(): string {
    return this.input.value;
  }

  setText(text: string): void {
    this.input.value = text;
    this.update();
  }

  /** Whether the entry is this text, as far as a box can hold it: some hold no line breaks, others but one kind of them. */
  holds(text: string): boolean {
    const held = isLines(this.input) ? text.replace(/\r\n?/g, '\n') : text.replace(/[\r\n]/g, '');
    return this.input.value === held;
  }

  /** The sentence that refuses the entry; undefined where it can stand. */
  refusal(): string | undefined {
    const tried = this.tried();
    return tried.ok ? undefined : tried.why;
  }

  /** What is asked about the entry, for as long as nobody said that it is meant. */
  asks(): string | undefined {
    return this.meant === this.input.value ? undefined : farQuestion(this.tried());
  }

  /**
   * Why the entry isn't taken yet: what refuses it, or what is asked about it. A question is put once: the same entry taken
   * again is meant so.
   */
  held(): string | undefined {
    if (this.asked === this.input.value) this.meant = this.asked;
    const why = this.refusal() ?? this.asks();
    this.asked = this.input.value;
    return why;
  }

  private tried(): TriedEntry {
    const { book, sheet, column, row } = this.props;
    return tryEntry(book, sheet, column.id, this.input.value, row);
  }

  /** There is a list of what can be picked. */
  hasList(): boolean {
    return this.options !== undefined;
  }

  /** Takes the list's marked item as the entry, as Enter does. */
  takeActive(): void {
    const option = this.shown[this.active];
    if (option !== undefined) this.input.value = option;
  }

  private onKey(event: KeyboardEvent): void {
    if (event.key === 'Enter' && event.altKey) {
      event.preventDefault();
      event.stopPropagation();
      // Where another line was wanted and can't be, the entry stays open: what is typed next is for no other cell.
      if (!isLines(this.input)) return;
      const { selectionStart, selectionEnd } = this.input;
      this.input.setRangeText('\n', selectionStart, selectionEnd, 'end');
      this.input.dispatchEvent(new Event('input'));
      return;
    }
    if (event.key === 'Enter' || event.key === 'Tab') {
      this.takeActive();
      return;
    }
    if (this.options === undefined) return;
    if (event.key !== 'ArrowDown' && event.key !== 'ArrowUp') return;
    event.preventDefault();
    event.stopPropagation();
    const step = event.key === 'ArrowDown' ? 1 : -1;
    this.active = (this.active + step + this.shown.length) % Math.max(1, this.shown.length);
    this.markActive();
  }

  private onListPress(event: MouseEvent): void {
    event.preventDefault();
    const item = event.target instanceof Element ? event.target.closest('[role="option"]') : null;
    const index = item === null ? -1 : [...this.list.children].indexOf(item);
    const option = this.shown[index];
    if (option === undefined) return;
    this.input.value = option;
    this.active = index;
    this.props.onPick();
  }

  private update(): void {
    this.showLines();
    this.fillList();
    this.say();
    this.place();
  }

  private showLines(): void {
    if (isLines(this.input)) this.input.rows = Math.min(MOST_LINES, this.input.value.split('\n').length);
  }

  private fillList(): void {
    if (this.options === undefined) {
      this.list.hidden = true;
      return;
    }
    const matches = this.typed ? matching(this.options, this.input.value) : this.options;
    this.shown = matches.slice(0, LISTED);
    const same = this.shown.indexOf(this.input.value);
    this.active = same >= 0 ? same : this.typed && this.input.value.trim() !== '' && this.shown.length > 0 ? 0 : -1;
    this.list.replaceChildren(
      ...this.shown.map((option, index) => {
        const item = document.createElement('li');
        item.id = `${this.list.id}-${index}`;
        item.setAttribute('role', 'option');
        item.textContent = option;
        return item;
      }),
    );
    if (matches.length > LISTED) {
      const more = document.createElement('li');
      more.className = 'entry-more';
      more.textContent = `and ${matches.length - LISTED} more: type to find one`;
      this.list.append(more);
    }
    this.list.hidden = this.shown.length === 0;
    this.input.setAttribute('aria-expanded', String(this.shown.length > 0));
    this.markActive();
  }

  private markActive(): void {
    [...this.list.children].forEach((item, index) => {
      item.setAttribute('aria-selected', String(index === this.active));
    });
    const item = this.list.children[this.active];
    if (item === undefined) this.input.removeAttribute('aria-activedescendant');
    else {
      this.input.setAttribute('aria-activedescendant', item.id);
      item.scrollIntoView({ block: 'nearest' });
    }
  }

  private say(): void {
    const { column } = this.props;
    const text = this.input.value;
    const tried = this.tried();
    if (!tried.ok) fetchAtRest();
    // While a list still offers something, an unfinished word isn't wrong yet.
    const picking = this.options !== undefined && this.shown.length > 0;
    // Nor is an empty box that nobody has typed in yet.
    const begun = this.typed || text !== '';
    const refused = !tried.ok && !picking && begun;
    this.input.classList.toggle('refused', refused);
    this.input.setAttribute('aria-invalid', String(refused));
    this.answer.className = refused ? 'entry-refusal' : 'entry-meaning';
    const question = this.typed ? questionOf(tried) : undefined;
    if (question !== undefined) this.answer.className = 'entry-question';
    this.answer.textContent = question ?? (tried.ok ? meaning(tried.text, text, column) : refused ? tried.why : '');
    this.answer.hidden = this.answer.textContent === '';
  }

  /** Under the box, or above it where there is no room below. */
  private place(): void {
    const box = this.input.getBoundingClientRect();
    // Measured as it will stand: shown, and not squeezed against the edge that it stood at before.
    this.under.hidden = this.list.hidden && this.answer.hidden;
    this.under.style.minWidth = `${Math.max(box.width, 200)}px`;
    this.under.style.left = '4px';
    const height = this.under.offsetHeight;
    const width = this.under.offsetWidth;
    const below = box.bottom + 4;
    const top = below + height > window.innerHeight && box.top - height - 4 > 0 ? box.top - height - 4 : below;
    this.under.style.top = `${top}px`;
    this.under.style.left = `${Math.max(4, Math.min(box.left, window.innerWidth - width - 4))}px`;
  }
}

function isLines(input: HTMLInputElement | HTMLTextAreaElement): input is HTMLTextAreaElement {
  return input instanceof HTMLTextAreaElement;
}

/** How the entry was understood, with its unit, where that isn't what stands there already. */
function meaning(understood: string, typed: string, { type, unit }: ColumnView): string {
  const plain = typed.trim().toLowerCase();
  if (plain === '' || understood === '' || type?.kind === 'text') return '';
  const meant = understood.toLowerCase();
  return plain === meant || `${plain} ${unit}`.toLowerCase() === meant ? '' : `= ${understood}`;
}
