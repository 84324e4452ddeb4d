/**
 * The index colours of DXF, for readers that know no true colour. 1 to 6 are the pure colours, 7 black or white as the
 * background asks, 8 and 9 grey; 10 to 249 go round the colour circle in steps of 15 degrees, each hue in five values
 * and, at the odd numbers, at half saturation. The greys 250 to 255 differ from program to program and are not used.
 */
interface Rgb {
  readonly red: number;
  readonly green: number;
  readonly blue: number;
}

const values = [255, 165, 127, 76, 38];
const pure = [0xff0000, 0xffff00, 0x00ff00, 0x00ffff, 0x0000ff, 0xff00ff, 0xffffff, 0x808080, 0xc0c0c0];

const split = (rgb: number): Rgb => ({ red: rgb >> 16, green: (rgb >> 8) & 255, blue: rgb & 255 });

/** The colour of a DXF index, 1 to 249. */
export function indexColour(index: number): Rgb {
  if (index < 10) return split(pure[index - 1] ?? 0);
  const hue = Math.floor((index - 10) / 10) / 4; // sixths of the circle
  const value = values[Math.floor((index % 10) / 2)] ?? 0;
  const min = index % 2 === 0 ? 0 : 0.5;
  // a channel is full within a sixth of its own hue, and fades over the next sixth
  const channel = (own: number) => {
    const away = Math.abs(((hue - own + 9) % 6) - 3);
    const part = Math.min(1, Math.max(0, 2 - away));
    return Math.floor(value * (min + (1 - min) * part));
  };
  return { red: channel(0), green: channel(2), blue: channel(4) };
}

/** `#RRGGBB` as the number that group code 420 takes. Throws RangeError for anything else. */
export function trueColour(colour: string): number {
  if (!/^#[0-9a-f]{6}$/i.test(colour)) throw new RangeError(`${JSON.stringify(colour)} is no colour such as #009E73`);
  return parseInt(colour.slice(1), 16);
}

/** The index colour nearest to `#RRGGBB`. Never 7, which turns black or white with the background. */
export function nearestIndex(colour: string): number {
  const wanted = split(trueColour(colour));
  let best = 1;
  let min = Infinity;
  for (let index = 1; index < 250; index++) {
    if (index === 7) continue;
    const { red, green, blue } = indexColour(index);
    const off = (red - wanted.red) ** 2 + (green - wanted.green) ** 2 + (blue - wanted.blue) ** 2;
    if (off < min) {
      min = off;
      best = index;
    }
  }
  return best;
}
