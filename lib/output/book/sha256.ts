/** SHA-256 as in FIPS 180-4; the library has no file system and no crypto module of its own. */

const primes = (count: number): number[] => {
  const found: number[] = [];
  for (let n = 2; found.length < count; n += 1) if (found.every((prime) => n % prime !== 0)) found.push(n);
  return found;
};

/** The first 32 bits of the fraction of a root: FIPS 180-4, 4.2.2 and 5.3.3. */
const fraction = (root: number): number => Math.floor((root - Math.floor(root)) * 2 ** 32) >>> 0;
const roundConstants = Uint32Array.from(primes(64), (prime) => fraction(Math.cbrt(prime)));
const start = Uint32Array.from(primes(8), (prime) => fraction(Math.sqrt(prime)));

const right = (x: number, n: number): number => (x >>> n) | (x << (32 - n));

/** One block of 16 words into the eight words of the state. */
function compress(state: Uint32Array, block: DataView, at: number): void {
  const w = new Uint32Array(64);
  const word = (i: number): number => w[i] ?? 0;
  for (let t = 0; t < 16; t += 1) w[t] = block.getUint32(at + 4 * t);
  for (let t = 16; t < 64; t += 1) {
    const [a, b] = [word(t - 15), word(t - 2)];
    const s0 = right(a, 7) ^ right(a, 18) ^ (a >>> 3);
    const s1 = right(b, 17) ^ right(b, 19) ^ (b >>> 10);
    w[t] = word(t - 16) + s0 + word(t - 7) + s1;
  }
  let [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0] = state;
  for (let t = 0; t < 64; t += 1) {
    const sum1 = right(e, 6) ^ right(e, 11) ^ right(e, 25);
    const t1 = (h + sum1 + ((e & f) ^ (~e & g)) + (roundConstants[t] ?? 0) + word(t)) >>> 0;
    const sum0 = right(a, 2) ^ right(a, 13) ^ right(a, 22);
    const t2 = (sum0 + ((a & b) ^ (a & c) ^ (b & c))) >>> 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) >>> 0, c, b, a, (t1 + t2) >>> 0];
  }
  [a, b, c, d, e, f, g, h].forEach((value, i) => (state[i] = (state[i] ?? 0) + value));
}

/** The hash of a text in UTF-8, in base64. */
export function sha256Base64(text: string): string {
  const bytes = new TextEncoder().encode(text);
  const padded = new Uint8Array(64 * Math.ceil((bytes.length + 9) / 64));
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor((bytes.length * 8) / 2 ** 32));
  view.setUint32(padded.length - 4, (bytes.length * 8) >>> 0);
  const state = start.slice();
  for (let at = 0; at < padded.length; at += 64) compress(state, view, at);
  const out = new DataView(new ArrayBuffer(32));
  state.forEach((word, i) => out.setUint32(4 * i, word));
  return btoa(String.fromCharCode(...new Uint8Array(out.buffer)));
}
