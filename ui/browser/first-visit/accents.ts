// Names as people type them and as lists have them, so that accents and case make no difference. Pure.

/** In small letters without accents, dots and other marks on letters: 'jalapeno', 'zurich'. */
export function withoutAccents(text: string): string {
  return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();
}
