/** The forms of what the page may ask, and nothing else. */
import * as z from 'zod';

const path = z
  .array(z.union([z.string().min(1).max(120), z.int().min(0).max(999)]))
  .min(1)
  .max(8);
const value = z
  .string()
  .max(2000)
  .regex(/^[^\r\n\0]*$/)
  .nullable();
const revision = z.string().max(64);

export const askedEdit = z.strictObject({ path, value, was: value, revision });
export const askedDraft = z.strictObject({ edits: z.array(z.strictObject({ path, value })).min(1).max(8) });
export const askedAnswer = z.strictObject({ text: z.string().max(200) });
export const askedNothing = z.strictObject({});
export const askedKeep = z.strictObject({ name: z.string().min(1).max(60) });
export const askedVariant = z.strictObject({ id: z.int(), revision });
export const askedDrop = z.strictObject({ id: z.int() });
export const askedWork = z.strictObject({
  kind: z.enum(['cut', 'template', 'stock', 'verify']),
  /** Sheet sizes to compare. */
  sizes: z
    .array(z.string().regex(/^\d[\w .x×'"/-]{1,38}$/))
    .max(4)
    .default([]),
});
