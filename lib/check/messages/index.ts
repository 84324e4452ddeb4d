/** Every message that the proof can print, by its id: the one list that a test can go through. */
import { assemblyMessages } from './assembly.js';
import { comparisons, folderMessages } from './folder.js';
import { laserMessages } from './laser.js';
import { readingMessages } from './reading.js';
import { routerMessages } from './router.js';
import { sheetMessages } from './sheet.js';
import type { ValuesOf } from './text.js';

export const messages = {
  ...folderMessages,
  ...comparisons,
  ...assemblyMessages,
  ...readingMessages,
  ...sheetMessages,
  ...routerMessages,
  ...laserMessages,
} as const;

export type Messages = typeof messages;

export type MessageId = keyof Messages;
/** Of the tool paths of routers and lasers. */
export type RouterMessageId = keyof typeof routerMessages | keyof typeof laserMessages;
/** Messages of everything but the simulation, whose findings have codes of their own. */
export type FaultMessageId = Exclude<MessageId, RouterMessageId>;
export type ComparisonId = keyof typeof comparisons;
export type ReadingId = keyof typeof readingMessages | 'record-not-json' | 'record-value' | 'record-missing';

export type MessageValues<Id extends MessageId> = ValuesOf<Messages[Id]['text']>;

export { filled } from './text.js';
