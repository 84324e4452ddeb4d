/** What a job comes to, in sentences: what is bought, what it costs and weighs, how long the machine takes. */
import { formatLength, formatMass, type LengthUnit, type Totals } from '../lib/index.js';

/** `3 h 46 min`, `12 min`. */
export function durationText(minutes: number): string {
  const whole = Math.max(1, Math.round(minutes));
  const hours = Math.floor(whole / 60);
  return hours === 0 ? `${whole} min` : `${hours} h ${whole % 60} min`;
}

/** @param minutes of the machine; null where they are not known, or nothing is cut by one */
export function totalsLines(totals: Totals, unit: LengthUnit, minutes: number | null): string[] {
  const size = (mm: number) => formatLength(mm, unit);
  const stock = totals.bought.map(({ material, roll, count, width, height, cost }) => {
    const money = cost === null ? ', no price' : ` for ${cost.toFixed(2)}`;
    return roll
      ? `${size(width)} of ${material}, ${size(height)} wide${money}`
      : `${count} x ${material} ${size(width)} x ${size(height)}${money}`;
  });
  const cost =
    totals.cost === null
      ? 'no prices are stated'
      : `${totals.cost.toFixed(2)}${totals.unpriced.length > 0 ? ` without ${totals.unpriced.join(', ')}` : ''}`;
  const weight = (kg: number) => formatMass(kg, unit);
  return [
    `To buy: ${stock.join('; ')}.`,
    `Together: ${cost}; ${weight(totals.boughtKg)} to carry home, ${weight(totals.partsKg)} of it parts; ${Math.round(100 * totals.waste)} % waste, not counting pieces worth keeping.`,
    ...(minutes === null ? [] : [`The machine takes about ${durationText(minutes)}.`]),
  ];
}
