/** Thicknesses of boards that are beyond what is sold in the unit of the file, and usual in another. */
import { type Diagnostic, diagnostic } from '../diagnostic/index.js';
import { LengthError, parseLength, refuseOtherUnit, type UsualRange } from '../units/index.js';
import type { DesignFile } from './schema.js';
import type { MaterialKind } from './sections/materials.js';

/** Boards as timber yards sell them, mm: common practice, no source. Thinner ones are taken with their unit. */
const usual: UsualRange = [1, 50];
const boards: ReadonlySet<MaterialKind> = new Set(['plywood', 'osb', 'mdf', 'hardboard']);

const isRaw = (value: unknown): value is number | string => typeof value === 'number' || typeof value === 'string';

/** @param raw what the file states, as a bare number shows there only */
export function checkThickness(file: DesignFile, raw: { readonly materials?: unknown }): Diagnostic[] {
  const stated = raw.materials as Readonly<Record<string, { readonly thickness?: unknown }>>;
  return Object.entries(file.materials).flatMap(([name, { kind }]) => {
    const thickness = stated[name]?.thickness;
    if (!boards.has(kind)) return [];
    const places = (Array.isArray(thickness) ? (thickness as readonly unknown[]) : [thickness]).filter(isRaw);
    try {
      for (const place of places) refuseOtherUnit(place, (unit) => [parseLength(place, unit)], file.units, usual);
      return [];
    } catch (error) {
      if (!(error instanceof LengthError)) throw error;
      const path = ['materials', name, 'thickness'];
      return [diagnostic('wrong-unit', path, `${path.join('.')}, a ${kind}: ${error.message}`, error.remedy)];
    }
  });
}
