/** What comes of writing single values into a file whose other lines stay to the letter. */
export type Written =
  | { readonly kind: 'text'; readonly text: string }
  /** The file has its keys in a form into which nothing can be put. */
  | { readonly kind: 'refused'; readonly message: string; readonly remedy: string };

export const notInLines: Written = {
  kind: 'refused',
  message: 'the file is not written one key per line',
  remedy: 'write one key per line',
};
