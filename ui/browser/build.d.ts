// What the build tells the page of itself.

interface ImportMeta {
  readonly env: {
    /** Whether this is the built page, not the one that `npm run dev` serves from source. */
    readonly BUILT: boolean;
  };
}
