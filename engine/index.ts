// The public face of the engine, in tiers. Everything outside engine/ imports from here alone.

// The trade's models and their figures, where a picture needs them or a template quotes them.
export { LEFT_WHEN_LATE, LOST_A_WEEK_LATE } from './agronomy/bulb-light.ts';
export { BULBING_BASE, BULBING_THERMAL_TIME, BULBING_UPPER } from './agronomy/bulbing.ts';
export { BOLTING_DAYS, FREEZE_THAW_DAYS } from './agronomy/cold-of-year.ts';
export { dayLength } from './agronomy/day-length.ts';
export {
  DAYS_PER_DEGREE,
  FROST_DATE_DEVIATION,
  LOW_AT_FIRST_FROST,
  LOW_AT_LAST_FROST,
} from './agronomy/frost-season.ts';
export {
  LEAF_GROWTH_BASE,
  LEAF_GROWTH_LIMITS,
  LEAF_GROWTH_UPPER,
  WINTER_LEAF_LEAST,
  WINTER_LEAF_MOST,
} from './agronomy/leaf-growth.ts';
export { DEFAULT_CRITICAL_HOURS } from './agronomy/onion-types.ts';
export { BED_LAG, COOL_SUMMER_MARGIN, TEMPERATE_SUMMER } from './agronomy/planting-season.ts';
export type { ModelSource } from './agronomy/source.ts';
export { MODEL_SOURCES } from './agronomy/sources.ts';
export { type Layout, offsetVerdict, type Pattern, type Station, stationPositions } from './agronomy/spacing.ts';
export { MONTH_DAYS } from './agronomy/storage.ts';
export { LEAF_GROWTH_TOO_SMALL } from './agronomy/suitability.ts';
export { OVERWINTERED_SHARE, TOPS_DOWN_THERMAL_TIME } from './agronomy/tops-down.ts';
export { SQUARENESS_LOSS_AT_RANGE } from './agronomy/yield-density.ts';
// Commands: what a person wishes.
export { keepWork, lookIntoBranch, openBranch } from './commands/branch-work.ts';
export { MOST_BRANCHES } from './commands/branches.ts';
export type { Command } from './commands/command.ts';
export { type MessageCode, message, sayMessage } from './commands/messages.ts';
export type { Refusal } from './commands/refusal.ts';
// A document: plain data, opened, changed by transactions.
export { restoring } from './commands/restore.ts';
export { type Change, type Done, type DoOptions, Workbook, type World } from './commands/workbook.ts';
export { type ChangedCells, type ChangeSet, isChanged, joinChanges, NO_CHANGE } from './document/change-set.ts';
export type { Content, DateContent, LinkContent, Quantity } from './document/content.ts';
export { byCell, type DocumentData, type RowData } from './document/data.ts';
export { type HistoryData, historyOf, type Step } from './document/history.ts';
export { HistoryReach } from './document/history-reach.ts';
export { ONLY_ROW, pairRowId, partsOfPair } from './document/ids.ts';
export { type NewDocument, newDocument, type Start } from './document/new.ts';
export { columnOfLetters, PAPER_COLUMNS, PAPER_ROWS, type PaperData } from './document/papers.ts';
export {
  type BranchData,
  compose,
  type Message,
  type Operation,
  squash,
  type Transaction,
  type TransactionSource,
} from './document/transaction.ts';
// Formats: files and what other programs exchange.
export { type CalendarEvent, type CalendarHead, writeCalendar } from './formats/calendar-file.ts';
export { readStationCsv, type StationFailure, type StationRecord } from './formats/climate-csv.ts';
export { type CsvSplitter, type Delimiter, writeCsv } from './formats/csv.ts';
export { type CsvExportOptions, exportCsv } from './formats/csv-export.ts';
export type { Format, FormatTools, Written } from './formats/format.ts';
export type { ByHand } from './formats/headers.ts';
export { FORMATS, formatOfId, formatOfName } from './formats/list.ts';
export { readTableFile, workbookText } from './formats/read-file.ts';
export type { RefusedRow, TakenRow } from './formats/row-check.ts';
export {
  type ImportChoices,
  importCsv,
  importTable,
  type MatchedColumn,
  type MatchingChoices,
  type ReadingRows,
  type RowsFailure,
  type RowsImported,
  type RowsRead,
  readRowsOrStation,
  refusalInWords,
} from './formats/rows-import.ts';
export { type Elsewhere, missingHere } from './formats/sheets-elsewhere.ts';
export {
  bringSheets,
  readSheets,
  SHEETS_FORMAT,
  type SheetsFile,
  type SheetsRead,
  writeSheets,
} from './formats/sheets-file.ts';
export type {
  ReadCell,
  Spreadsheet,
  SpreadsheetCell,
  SpreadsheetColumn,
  SpreadsheetRead,
} from './formats/spreadsheet.ts';
export { type CellData, cellData, type TableData, tableData, unitSymbol } from './formats/table-data.ts';
export type { ReadingChoices, TableFailure, TableFile, TableRead } from './formats/table-file.ts';
export { takesStation } from './formats/takes-station.ts';
export { decodeText, ENCODING_NAMES, ENCODINGS, type Encoding } from './formats/text-encoding.ts';
export {
  earlierReader,
  readWorkbookFile,
  templateWanted,
  type WorkbookFileRead,
  workbookFileSchema,
  writeWorkbookFile,
} from './formats/workbook-file.ts';

// The language, values and units as faces need them.
export type { FunctionDefinition, RunBody } from './functions/definition.ts';
export { loadLeftOut } from './functions/elsewhere.ts';
export { loadFormerFunctions, wantsFormerFunctions } from './functions/former-wanted.ts';
export { FUNCTIONS, SIGNATURES } from './functions/index.ts';
export { type CallHelp, type Completion, type Completions, callAt, completionsAt } from './language/assist.ts';
export { nearestName } from './language/nearest.ts';
export { STRENGTH } from './language/parser.ts';
export type { ArgumentType, FunctionGroup, Parameter, Signature } from './language/signature.ts';
export { parameterAt } from './language/standing.ts';
export type { Diagnostic, Span } from './language/tree.ts';
export type { Catalog } from './language/typed.ts';
// Plans: pure reckoning for the acts of the templates.
export {
  BedPlan,
  type BedQuestion,
  costOfPlan,
  isRotated,
  NO_BED,
  type NotPlaced,
  PLAN_COSTS,
  type PlanBed,
  type PlanPlanting,
  whyNotPlaced,
} from './planning/bed-plan.ts';
export { BED_CHANGES, BedSearch } from './planning/bed-search.ts';
export { type Choice, type Chosen, choose, type Limit, type LinearProgram, type Solver } from './planning/choice.ts';
export type { Offer as OrderOffer } from './planning/order-covers.ts';
export { seededNumbers } from './planning/seeded.ts';
export { eachPlanting, harvestStarts, MOST_PLANTINGS, startsLeft } from './planning/succession.ts';
export {
  MOST_SUPPLIERS,
  type OrderQuestion,
  type OrderSupplier,
  type WholeOrder,
  wholeOrder,
} from './planning/whole-order.ts';
// Queries: asked, never changing.
export {
  type Arrangement,
  arrange,
  type FoundIn,
  type HeldValue,
  type RowGroup,
  valuesHeld,
} from './queries/arranged.ts';
export { callInFormula, completeFormula } from './queries/assist.ts';
export type { Book } from './queries/book.ts';
export type { Chances, CountedShare, DrawnInput, StreamOf, YearsDiffer } from './queries/by-chance.ts';
export { compareWeeks, type WeeklyFigure, type WeeksCompared } from './queries/by-week.ts';
export { type CellView, cellValue, cellView, type Origin } from './queries/cells.ts';
export {
  type Chance,
  chanceInWeek,
  chanceOf,
  type Interval,
  intervalOf,
  quantile,
} from './queries/chances.ts';
export { type CheckView, checksOf } from './queries/checks.ts';
export {
  type CellDifference,
  type ColumnDifference,
  type Comparison,
  compareBooks,
  type FormulaDifference,
  type NameDifference,
  type RowDifference,
} from './queries/compare.ts';
export {
  type ComparedTotal,
  type ComparedValue,
  compareCells,
  compareTotals,
  type DifferingCell,
  type DifferingRow,
  type SheetDifference,
} from './queries/compare-branches.ts';
export { meeting, valueKey } from './queries/conditions.ts';
export type { Asked, AskedWeeks, DrawnFigure, DrawnWeeks } from './queries/drawn-figures.ts';
export { type Drawn, type DrawOrder, Draws, drawnFrom, MOST_DRAWS } from './queries/draws.ts';
export { type Evaluated, evaluate } from './queries/evaluate.ts';
export { countReads, type Explanation, explain } from './queries/explain.ts';
export { type Figure, type FigureValue, figureIn, type NamedFigure, numberOf, sayNumber } from './queries/figures.ts';
export type { Finding, FindingLevel } from './queries/finding.ts';
export { FINDING_LEVELS, Findings } from './queries/findings.ts';
export { type GoalRead, readGoal } from './queries/goals.ts';
export { type HangsOn, hangsOn, leastShare, shareOfSpread } from './queries/hangs-on.ts';
export {
  type Input,
  type InputsRead,
  type InputValue,
  MOST_VALUES,
  putInput,
  readInput,
  readInputs,
  refuseInput,
  sayInput,
} from './queries/inputs.ts';
export { joinDrawn, sharesOf, toBeSent } from './queries/join-draws.ts';
export { lookThrough, type Wanted } from './queries/looking-through.ts';
export { colourRules, namingColumns, noteOn, notesOf, type View, views, viewsPutAway } from './queries/looks.ts';
export { lostChanges } from './queries/lost-changes.ts';
export type { ColumnPlace } from './queries/matching.ts';
export { namingOf } from './queries/naming.ts';
export { cellRange, type Uncertain } from './queries/ranges.ts';
export { rowId, rowName, rowNamed, rows, rowWithId } from './queries/rows.ts';
export { sayChange } from './queries/say-change.ts';
export { type Saying, sayWhy } from './queries/say-why.ts';
export { SEEK_STEPS, type SeekQuestion, type Sought, type SoughtPlace, seek } from './queries/seek.ts';
export { type Settings, settings } from './queries/settings.ts';
export { type ColumnView, columnNamed, type SheetView, sheetNamed, sheetView, sheetViews } from './queries/sheets.ts';
export { roundedInterval } from './queries/shown-range.ts';
export { type FormulaRow, type FormulaTrial, formulaSideBySide } from './queries/side-by-side.ts';
export { totalText, usualTotal } from './queries/totals.ts';
export { type TriedEntry, type TriedFormula, tryCheck, tryEntry, tryFormula } from './queries/trying.ts';
export { type InputAt, oneWay, type TwoWay, twoWay } from './queries/two-way.ts';
export { type UncertainInput, uncertainInputs } from './queries/uncertain.ts';
export {
  type FormulaChange,
  type MovedFigures,
  type NameChange,
  type OwnFormula,
  type RowsChange,
  type Upgrade,
  upgradeTo,
} from './queries/upgrade.ts';
export { whyNone } from './queries/why.ts';
export type {
  CheckDeclaration,
  ColumnDeclaration,
  Entries,
  Entry,
  EventDate,
  MadeColumn,
  RangeColumns,
  RowSource,
  SheetDeclaration,
  TypeDeclaration,
  UnitPair,
  UnitSystem,
} from './schema/declaration.ts';
export { freeName } from './schema/free-name.ts';
export type { Template, TemplateRow, TemplateShelf } from './schema/template.ts';
export { readTemplate } from './schema/template-shape.ts';
export {
  type ColourRule,
  type Condition,
  type Filter,
  type SortKey,
  TONES,
  type Tone,
  type Total,
  type ViewDeclaration,
} from './schema/views.ts';
export { isPlain, NONE, sameDimension, TIME } from './units/dimension.ts';
export { loadGeneralUnits, wantsGeneralUnits } from './units/general.ts';
export { ONE } from './units/table.ts';
export type { Unit } from './units/unit.ts';
export { fromCanonical, shownNumber, toCanonical } from './units/unit.ts';
export { createVocabulary, type Vocabulary } from './units/vocabulary.ts';
export { civilDay, civilDayOfIso, dayOfYear, isoDate, yearMonthDay } from './values/civil.ts';
export { MONTHS } from './values/date-text.ts';
export { type EntryContext, type EntryRead, readEntry } from './values/entry.ts';
export { type CellAddress, type CellError, type ErrorKind, isError, type Scalar } from './values/error.ts';
export { Figures } from './values/figures.ts';
export { mondayOf, mondayOfWeek, weekName } from './values/iso-week.ts';
export { plainDigits } from './values/number-text.ts';
export { decimalText, showDate, showValue, showWithUnit, unitLabel } from './values/show.ts';
export { nameOfType, type RecordType, type ValueType } from './values/type.ts';
export type { Writing, Writings } from './values/writing.ts';
