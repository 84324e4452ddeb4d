/** How long a test waits for what comes by itself: what it takes depends on what else the machine is doing. */
export const patience = { timeout: 240_000 };
