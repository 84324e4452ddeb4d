/** What the columns of a log hold, and the units that they may be in. */

export const columnNames = ['time', 'load', 'ambient', 'irradiance', 'wind', 'covered'] as const;
export type ColumnName = (typeof columnNames)[number];

/** Columns that a log may leave out. */
export const optionalColumns: readonly ColumnName[] = ['covered'];

export type QuantityName = 'load' | 'ambient' | 'irradiance' | 'wind';

/** To the unit used inside: °C, W/m², m/s. By unit as written, in small letters, without degree sign. */
export type UnitTable = Readonly<Record<string, (value: number) => number>>;

interface Quantity {
  readonly units: UnitTable;
  /** What is possible, in the unit used inside. */
  readonly from: number;
  readonly to: number;
  readonly unit: string;
}

const temperature: UnitTable = {
  c: (value) => value,
  f: (value) => ((value - 32) * 5) / 9,
  k: (value) => value - 273.15,
};
/** International mile and nautical mile: 1609.344 m and 1852 m (exact). */
const MILE_M = 1609.344;
const NAUTICAL_MILE_M = 1852;

export const quantities: Readonly<Record<QuantityName, Quantity>> = {
  load: { units: temperature, from: -50, to: 1000, unit: '°C' },
  ambient: { units: temperature, from: -50, to: 60, unit: '°C' },
  irradiance: {
    units: { 'w/m2': (value) => value, 'kw/m2': (value) => 1000 * value },
    from: -10,
    to: 1500,
    unit: 'W/m²',
  },
  wind: {
    units: {
      'm/s': (value) => value,
      'km/h': (value) => value / 3.6,
      mph: (value) => (value * MILE_M) / 3600,
      kn: (value) => (value * NAUTICAL_MILE_M) / 3600,
    },
    from: 0,
    to: 60,
    unit: 'm/s',
  },
};

/** `load (°C)`, `wind [m/s]`, `irradiance W/m²`: the first word and the unit after it, in small letters. */
export function headOf(text: string): { readonly name: string; readonly unit: string } {
  const [, name = '', rest = ''] = /^\s*([a-z]*)(.*)$/i.exec(text) ?? [];
  const unit = rest
    .replaceAll(/[()[\]\s]/g, '')
    .toLowerCase()
    .replace('²', '2')
    .replace('^2', '2')
    .replace(/^(?:°|deg)/, '');
  return { name: name.toLowerCase(), unit };
}
