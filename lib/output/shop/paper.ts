/** Paper and scale. Lengths in mm. */

export interface Paper {
  readonly name: 'A4' | 'Letter';
  readonly width: number;
  readonly height: number;
}

/** ISO 216 and ANSI/ASME Y14.1 (size A), upright. */
export const papers = {
  a4: { name: 'A4', width: 210, height: 297 },
  letter: { name: 'Letter', width: 215.9, height: 279.4 },
} as const satisfies Record<string, Paper>;

/** Edges outside the frame: 20 mm for filing at the left, 10 mm elsewhere (ISO 5457). */
export const MARGINS = { left: 20, other: 10 } as const;

export interface Scale {
  /** `1:5`. */
  readonly name: string;
  readonly factor: number;
}

/** The scales of ISO 5455 that a dish and its parts can need, from large to small. */
export const scales: readonly Scale[] = [
  { name: '2:1', factor: 2 },
  { name: '1:1', factor: 1 },
  { name: '1:2', factor: 1 / 2 },
  { name: '1:5', factor: 1 / 5 },
  { name: '1:10', factor: 1 / 10 },
  { name: '1:20', factor: 1 / 20 },
  { name: '1:50', factor: 1 / 50 },
  { name: '1:100', factor: 1 / 100 },
  { name: '1:200', factor: 1 / 200 },
  { name: '1:500', factor: 1 / 500 },
];
