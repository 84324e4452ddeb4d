/** Sheets shared out among threads: each takes the next one when it is done with the last. */

export const sharedCounter = (): Int32Array => new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));

/** Gives the numbers from 0 on, each to one caller of all threads only. */
export const takerOf =
  (next: Int32Array): (() => number) =>
  () =>
    Atomics.add(next, 0, 1);
