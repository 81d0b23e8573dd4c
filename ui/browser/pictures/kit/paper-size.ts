// How large pictures are drawn for paper, in their own pixels, which the page then makes so large or small that they are as wide as what
// is printed on. Letter and A4 both have room for them, and letters of 13 pixels are 7 to 8 points tall. Pure.

export interface PaperSize {
  readonly width: number;
  /** The most that a drawing may be tall, what stands above it counted off. */
  readonly tall: number;
}

/** The short side across. Between the margins Letter is 192 mm wide and 249 tall, A4 186 and 267. */
export const UPRIGHT: PaperSize = { width: 900, tall: 980 };

/** The long side across: Letter 255 mm wide and 186 tall, A4 273 and 180. */
export const ACROSS: PaperSize = { width: 1280, tall: 700 };
