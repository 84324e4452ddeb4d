/** Messages of the proof as templates: `{name}` stands for a value. */

/** What is reported, as a sentence without the file and the place. */
export interface MessageSource<Code extends string = string> {
  readonly code: Code;
  readonly text: string;
}

/** The names of the values that a template takes. */
export type ValueNames<Text extends string> = Text extends `${string}{${infer Name}}${infer Rest}`
  ? Name | ValueNames<Rest>
  : never;

/** Values by name, already printed with their unit. */
export type ValuesOf<Text extends string> = Readonly<Record<ValueNames<Text>, string | number>>;

/** The template with its values put in. */
export function filled(text: string, values: Readonly<Record<string, string | number>>): string {
  return text.replace(/\{(\w+)\}/g, (_, name: string) => String(values[name]));
}
