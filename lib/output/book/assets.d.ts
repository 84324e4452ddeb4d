/** What the build step makes of the page's own script: see .config/assets.js. */
declare module '#book-assets' {
  /** The book's script with all it needs, safe inside a script element. */
  export const bookScript: string;
  /** Licence texts of the libraries in it. */
  export const inlinedLicences: string;
}
