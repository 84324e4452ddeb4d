/** What the build step makes of the live page's script: see .config/assets.js. */
declare module '#watch-assets' {
  /** Safe inside a script element. */
  export const watchScript: string;
}
