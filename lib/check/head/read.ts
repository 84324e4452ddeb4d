/** The head of a tool path: the comments before its first word. */
import { Findings } from '../router-simulation/findings.js';
import { eachBlock } from '../router-simulation/reader.js';
import { squashed } from './words.js';

const noteWord = 'NOTE:';

export interface Head {
  /** All before the first note. */
  readonly said: string;
  readonly notes: readonly string[];
}

/** The head as it is compared. What is wrong with the language of its lines is for the simulation to find. */
export function readHead(name: string, text: string): Head {
  const comments: string[] = [];
  for (const block of eachBlock(name, text, new Findings())) {
    if (block.g.length + block.m.length + block.words.size > 0) break;
    comments.push(...block.comments);
  }
  const note = comments.findIndex((comment) => squashed(comment).startsWith(noteWord));
  const end = note < 0 ? comments.length : note;
  return {
    said: squashed(comments.slice(0, end).join(' ')),
    notes: squashed(comments.slice(end).join(' ')).split(noteWord).slice(1),
  };
}
