// The grid is by far the largest part of the page, and neither the first sheet nor the phone needs it: it is fetched when a person
// reaches for the list of sheets, at the latest when a sheet with rows comes on screen. The line above it comes along.

export function fetchGrid() {
  return Promise.all([import('../grid/grid.tsx'), fetchFormulaLine()]).then(([part]) => part.Grid);
}

export function fetchFormulaLine() {
  return import('../formula-line/formula-line.tsx').then((part) => part.FormulaLine);
}
