/** What a laser leaves to the bench: it cuts no countersinks, so the part that has some says so. */
import type { Design } from '../design/index.js';
import type { Part } from '../part/index.js';
import { formatLength } from '../units/index.js';

/** The part with a note of its countersinks, when a laser cuts it. */
export function withLaserNotes(design: Design, part: Part): Part {
  if (design.materials[part.material]?.cut !== 'laser') return part;
  const sizes = [...new Set(part.holes.flatMap(({ countersink }) => countersink ?? []))];
  if (sizes.length === 0) return part;
  const counts = sizes.map((size) => {
    const count = part.holes.filter(({ countersink }) => countersink === size).length;
    return `${count} of ${formatLength(size, design.units)}`;
  });
  const note = `The laser cuts no countersinks: make them with a countersink bit; each piece has ${counts.join(', ')} across.`;
  return { ...part, notes: [...part.notes, note] };
}
