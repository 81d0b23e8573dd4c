// The public face of the engine. Everything outside engine/ imports from here alone: the workbook and its declarations, the
// types of values, the language's editing help, the sources of the models and what a picture needs to be drawn to scale.

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
export { COOL_SUMMER_MARGIN, TEMPERATE_SUMMER } from './agronomy/planting-season.ts';
export type { ModelSource } from './agronomy/source.ts';
export { MODEL_SOURCES } from './agronomy/sources.ts';
export { type Layout, offsetVerdict, type Pattern, type Station, stationPositions } from './agronomy/spacing.ts';
export { LEAF_GROWTH_TOO_SMALL } from './agronomy/suitability.ts';
export { OVERWINTERED_SHARE, TOPS_DOWN_THERMAL_TIME } from './agronomy/tops-down.ts';
export { SQUARENESS_LOSS_AT_RANGE } from './agronomy/yield-density.ts';
export { isStationCsv, readStationCsv, type StationFailure, type StationRecord } from './files/climate-csv.ts';
export type { CsvSplitter, Delimiter } from './files/csv.ts';
export { type CsvExportOptions, exportCsv } from './files/csv-export.ts';
export { type CsvFailure, type CsvImported, type CsvRows, importCsv, readCsvRows } from './files/csv-import.ts';
export { type CellData, cellData, type TableData, tableData, unitSymbol } from './files/table-data.ts';
export { packWorkbook, readWorkbookFile, type WorkbookFileRead, writeWorkbookFile } from './files/workbook-file.ts';
export type { FunctionDefinition } from './functions/definition.ts';
export { FUNCTIONS, SIGNATURES } from './functions/index.ts';
export { type CallHelp, type Completion, type Completions, callAt, completionsAt } from './language/assist.ts';
export { nearestName } from './language/nearest.ts';
export type { FunctionGroup, Parameter, Signature } from './language/signature.ts';
export type { Complaint, Span } from './language/tree.ts';
export type { Catalog } from './language/typed.ts';
export type { Unit } from './units/unit.ts';
export { fromCanonical, shownNumber, toCanonical } from './units/unit.ts';
export { createVocabulary, type Vocabulary } from './units/vocabulary.ts';
export { civilDay, civilDayOfIso, dayOfYear, isoDate, yearMonthDay } from './values/civil.ts';
export { type EntryContext, type EntryRead, readEntry } from './values/entry.ts';
export { type CellAddress, type CellError, type ErrorKind, isError, type Scalar } from './values/error.ts';
export { showDate, showValue, showWithUnit, unitLabel } from './values/show.ts';
export { nameOfType, type ValueType } from './values/type.ts';
export type {
  CheckDeclaration,
  ColumnDeclaration,
  Entry,
  RowEntries,
  RowSource,
  SheetDeclaration,
  TypeDeclaration,
  UnitPair,
  WorkbookDeclaration,
} from './workbook/declaration.ts';
export type { Evaluated, Evaluator } from './workbook/evaluate.ts';
export type {
  Attention,
  CellView,
  ChangeSet,
  ColumnView,
  Edit,
  Explanation,
  Refusal,
  Standing,
  TableView,
  UndoState,
  WorkbookFace,
} from './workbook/face.ts';
export { createWorkbook, Workbook, type WorkbookOpened } from './workbook/workbook.ts';
