export function ImportDialog() {
  return null;
}
