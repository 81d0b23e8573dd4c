// The grid is by far the largest part of the page, and neither the first sheet nor the phone needs it: it is fetched when a person
// reaches for the list of sheets, at the latest when a sheet with rows comes on screen.

export function fetchGrid() {
  return import('../grid/grid.tsx').then((part) => part.Grid);
}
