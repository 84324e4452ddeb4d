/** What a printer can make of 100 mm, mm: what is farther off was fitted to the page. Common practice, no source. */
export const printedRange = { min: 90, max: 110 } as const;
