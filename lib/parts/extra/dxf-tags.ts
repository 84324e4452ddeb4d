/**
 * The tags of a DXF file: a line with a group code, a line with a value (Autodesk, DXF Reference, edition of 2012). Read
 * strictly and with line numbers: a reader that skips what it does not understand would lose vertices without a word.
 */
import { element } from '../../geometry/index.js';
import { ExtraFault, quoted } from './drawing.js';

export interface Tag {
  readonly code: number;
  readonly value: string;
  /** Line of the value. */
  readonly line: number;
}

const integerPattern = /^[-+]?\d{1,9}$/;
const decimalNumber = /^[-+]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d{1,3})?$/;

/** @throws ExtraFault for a file that is binary, cut short or not a DXF */
export function tagsOf(text: string): Tag[] {
  if (text.startsWith('AutoCAD Binary DXF'))
    throw new ExtraFault('extra-binary', 'it is a binary DXF', 'save it as an ASCII (text) DXF');
  const lines = text.replace(/^\uFEFF/, '').split(/\r\n|\r|\n/);
  while (lines.length > 0 && lines.at(-1)?.trim() === '') lines.pop();
  const tags: Tag[] = [];
  for (let i = 0; i < lines.length; i += 2) {
    const code = (lines[i] ?? '').trim();
    const value = lines[i + 1];
    if (!integerPattern.test(code))
      throw new ExtraFault(
        'extra-broken',
        `line ${i + 1} should be a DXF group code, not ${quoted(code)}`,
        'export the drawing again as a DXF',
      );
    if (value === undefined)
      throw new ExtraFault('extra-broken', `it ends after a group code, in line ${i + 1}: it is cut short`);
    tags.push({ code: Number(code), value: value.trim(), line: i + 2 });
  }
  const last = tags.at(-1);
  if (last?.code !== 0 || last.value !== 'EOF')
    throw new ExtraFault('extra-broken', 'it does not end with EOF: it is cut short, or not a DXF', 'export it again');
  return tags;
}

/** The value as a finite number. @throws ExtraFault */
export function real({ value, line }: Tag): number {
  const number = decimalNumber.test(value) ? Number(value) : NaN;
  if (!Number.isFinite(number))
    throw new ExtraFault('extra-number', `line ${line} should be a number, not ${quoted(value)}`);
  return number;
}

/** The value as a whole number. @throws ExtraFault */
export function integerValue({ value, line }: Tag): number {
  if (!integerPattern.test(value))
    throw new ExtraFault('extra-number', `line ${line} should be a whole number, not ${quoted(value)}`);
  return Number(value);
}

/** The number under a group code, or what it is when left out. */
export function realOr(tags: readonly Tag[], code: number, otherwise: number): number {
  const found = tags.find((tag) => tag.code === code);
  return found ? real(found) : otherwise;
}

export function integerValueOr(tags: readonly Tag[], code: number, otherwise: number): number {
  const found = tags.find((tag) => tag.code === code);
  return found ? integerValue(found) : otherwise;
}

/** The number under a group code. @throws ExtraFault when it is missing */
export function realAt(tags: readonly Tag[], code: number): number {
  const found = tags.find((tag) => tag.code === code);
  if (!found) throw new ExtraFault('extra-broken', `it lacks group code ${code}`);
  return real(found);
}

/** Tags of each section, by name; a section that stands twice is taken once, the first. */
export function sectionsOf(tags: readonly Tag[]): Map<string, readonly Tag[]> {
  const sections = new Map<string, readonly Tag[]>();
  for (let i = 0; i < tags.length; i++) {
    const tag = element(tags, i);
    if (tag.code !== 0 || tag.value !== 'SECTION') continue;
    const name = tags[i + 1];
    let end = i + 2;
    while (end < tags.length && !(element(tags, end).code === 0 && element(tags, end).value === 'ENDSEC')) end += 1;
    if (end === tags.length)
      throw new ExtraFault('extra-broken', `the section in line ${tag.line} has no end: it is cut short`);
    if (name?.code === 2 && !sections.has(name.value)) sections.set(name.value, tags.slice(i + 2, end));
    i = end;
  }
  return sections;
}

/** Records of a section: the tag that begins each, and the tags that follow it. */
export interface DxfRecord {
  readonly type: Tag;
  readonly tags: readonly Tag[];
}

export function recordsOf(tags: readonly Tag[]): DxfRecord[] {
  const records: DxfRecord[] = [];
  for (let i = 0; i < tags.length;) {
    let end = i + 1;
    while (end < tags.length && element(tags, end).code !== 0) end += 1;
    const type = element(tags, i);
    if (type.code === 0) records.push({ type, tags: tags.slice(i + 1, end) });
    i = end;
  }
  return records;
}
