/** A workbook file's text but for who changed what and when, which taking a change back does not take back. */
export function withoutChanged(text: string): string {
  return text.replace(/,\n {2}"changed": [\s\S]*\n}\n$/, '\n}\n');
}
