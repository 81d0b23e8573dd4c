// What a paste would do, before it is done: where it lands, how it is read, and each cell that doesn't simply fit, to be mended or
// left out.

import { rowName, settings } from '../../../engine/index.ts';
import type { PasteJob } from '../grid/clipboard/paste-job.ts';
import { cellKey, type PastePlan, type PlannedCell, rowWords } from '../grid/clipboard/paste-plan.ts';
import { workbook } from '../store/workbook.ts';
import { Dialog } from './dialog.tsx';
import { mendPaste, readPaste, skipPaste, takePaste } from './paste-edits.ts';
import { givePasteUp, type PendingPaste, pendingPaste } from './paste-state.ts';

/** So many cells are listed one by one; the others are counted. */
const LISTED = 200;

export function PasteDialog() {
  const pending = pendingPaste.value;
  return pending === undefined ? null : <Pending pending={pending} />;
}

function Pending({ pending }: { readonly pending: PendingPaste }) {
  const { job, skipped, refused } = pending;
  const plan = job.plan();
  const { sheet } = job.parts;
  const questions = job.questions(plan);
  const doubtful = plan.cells.filter(({ state }) => state === 'refused' || state === 'open' || state === 'far');
  const stuck = doubtful.filter(
    ({ state, line, across }) => state === 'refused' && !skipped.has(cellKey(line, across)),
  );
  const count = job.count(plan, skipped);
  return (
    <Dialog
      id="paste"
      class="paste"
      title={`Paste into ${sheet.name}`}
      takes={count === 1 ? 'Paste 1 cell' : `Paste ${count} cells`}
      canTake={count > 0 && stuck.length === 0}
      leaves="Cancel"
      onTake={takePaste}
      onLeave={givePasteUp}
    >
      <p>{landingWords(job, plan)}</p>
      <ul class="paste-questions">
        {questions.map((question) => (
          <li key={question}>{question}</li>
        ))}
      </ul>
      <Reading job={job} />
      <Columns plan={plan} />
      {doubtful.length === 0 ? (
        <Sample plan={plan} />
      ) : (
        <Doubtful cells={doubtful} skipped={skipped} stuck={stuck} job={job} />
      )}
      {refused === undefined ? null : (
        <p class="refusal" role="alert">
          {refused}
        </p>
      )}
    </Dialog>
  );
}

/** 'From Length, Barn 1: 3 lines of 2 columns into Barn 1 to Barn 3.' */
function landingWords(job: PasteJob, plan: PastePlan): string {
  const landing = { ...plan.landing, rows: job.parts.rows(job.lines.length) };
  const [column] = landing.columns.filter((each) => each !== undefined);
  const [into] = landing.rows;
  const book = workbook();
  const first = into === undefined ? '' : 'row' in into ? rowName(book, landing.sheet.id, into.row.slot) : 'a new row';
  const lines = job.lines.length === 1 ? '1 line' : `${job.lines.length} lines`;
  const columns = job.width === 1 ? '1 column' : `${job.width} columns`;
  return `From ${column?.name ?? 'here'}, ${first}: ${lines} of ${columns} into ${rowWords(book, landing)}.`;
}

function Reading({ job }: { readonly job: PasteJob }) {
  const { options, named } = job;
  const { reading } = options;
  const { writing } = settings(workbook());
  return (
    <fieldset class="paste-reading">
      <legend class="spoken">How it is read</legend>
      {named === undefined ? null : (
        <label>
          <input
            type="checkbox"
            checked={options.byName}
            onChange={({ currentTarget }) => readPaste({ byName: currentTarget.checked })}
          />
          The first line names the columns
        </label>
      )}
      {job.width === 1 || job.asNamed() === undefined ? null : (
        <label>
          <input
            type="checkbox"
            checked={options.toNamed}
            onChange={({ currentTarget }) => readPaste({ toNamed: currentTarget.checked })}
          />
          Each line goes to the row that it names
        </label>
      )}
      <label>
        Figures
        <select
          value={reading.decimal}
          onChange={({ currentTarget }) =>
            readPaste({ reading: { ...reading, decimal: currentTarget.value === ',' ? ',' : '.' } })
          }
        >
          <option value=".">1,234.5</option>
          <option value=",">{writing?.group === '\u202f' ? '1 234,5' : '1.234,5'}</option>
        </select>
      </label>
      <label>
        Days
        <select
          value={reading.dayFirst ? 'day' : 'month'}
          onChange={({ currentTarget }) =>
            readPaste({ reading: { ...reading, dayFirst: currentTarget.value === 'day' } })
          }
        >
          <option value="day">day/month</option>
          <option value="month">month/day</option>
        </select>
      </label>
      <label>
        <input
          type="checkbox"
          checked={options.keepFormulas}
          onChange={({ currentTarget }) => readPaste({ keepFormulas: currentTarget.checked })}
        />
        Never over a formula
      </label>
    </fieldset>
  );
}

/** Which column of the block lands where. */
function Columns({ plan: { landing } }: { readonly plan: PastePlan }) {
  return (
    <p class="paste-columns">
      {landing.columns.map((column, at) => `${at + 1}: ${column?.name ?? 'left out'}`).join(', ')}
    </p>
  );
}

/** Where all fits: the first lines as they would be read. */
function Sample({ plan }: { readonly plan: PastePlan }) {
  const lines = [...new Set(plan.cells.map(({ line }) => line))].slice(0, 5);
  return (
    <table class="paste-cells">
      <thead>
        <tr>
          {plan.landing.columns.map((column, at) => (
            <th key={`${column?.id ?? ''} ${at}`} scope="col">
              {column?.name ?? 'left out'}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line}>
            {plan.landing.columns.map((column, across) => {
              const cell = plan.cells.find((each) => each.line === line && each.across === across);
              return <td key={`${column?.id ?? ''} ${across}`}>{cell?.state === 'kept' ? '' : (cell?.says ?? '')}</td>;
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

interface DoubtfulProps {
  readonly cells: readonly PlannedCell[];
  readonly stuck: readonly PlannedCell[];
  readonly skipped: ReadonlySet<string>;
  readonly job: PasteJob;
}

function Doubtful({ cells, stuck, skipped, job }: DoubtfulProps) {
  const first = job.options.byName ? 2 : 1;
  return (
    <>
      <div class="paste-list">
        <table class="paste-cells">
          <thead>
            <tr>
              <th scope="col">Line</th>
              <th scope="col">Column</th>
              <th scope="col">As it is typed here</th>
              <th scope="col">How it reads, or why it can’t</th>
              <th scope="col">Skip</th>
            </tr>
          </thead>
          <tbody>
            {cells.slice(0, LISTED).map((cell) => {
              const key = cellKey(cell.line, cell.across);
              const name = `${cell.column.name}, line ${cell.line + first}`;
              return (
                <tr key={key} class={cell.state}>
                  <td>{cell.line + first}</td>
                  <th scope="row">{cell.column.name}</th>
                  <td>
                    <input
                      type="text"
                      aria-label={`Entry of ${name}`}
                      value={cell.entry}
                      disabled={skipped.has(key)}
                      onChange={({ currentTarget }) => mendPaste(key, currentTarget.value)}
                    />
                  </td>
                  <td>{cell.says}</td>
                  <td>
                    <input
                      type="checkbox"
                      aria-label={`Skip ${name}`}
                      checked={skipped.has(key)}
                      onChange={({ currentTarget }) => skipPaste(key, currentTarget.checked)}
                    />
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </div>
      {cells.length > LISTED ? <p>{`And ${cells.length - LISTED} more.`}</p> : null}
      {stuck.length === 0 ? null : (
        <p>
          <button
            type="button"
            onClick={() => {
              for (const { line, across } of stuck) skipPaste(cellKey(line, across), true);
            }}
          >
            {stuck.length === 1 ? 'Skip the one that doesn’t fit' : `Skip the ${stuck.length} that don’t fit`}
          </button>
        </p>
      )}
    </>
  );
}
