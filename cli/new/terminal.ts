/** Questions to the person at the terminal. */
import process from 'node:process';
import { createInterface } from 'node:readline';
import { exitCode, stop } from '../exit.js';
import { say } from '../console.js';
import type { Ask, Report } from './questions.js';

/** Says why an answer does not do, below the question. */
export const sayWhy: Report = (message, remedy) => say(`  ${message}; ${remedy}`);

/** Whether there is a person to ask. */
export const hasTerminal = (): boolean => process.stdin.isTTY && process.stderr.isTTY;

/**
 * Runs questions at the terminal.
 * @throws Stop when the input ends before the answers do
 */
export async function atTerminal<T>(questions: (ask: Ask) => Promise<T>): Promise<T> {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  // the iterator keeps lines that are pasted ahead of their question
  const typed = lines[Symbol.asyncIterator]();
  try {
    return await questions(async (question, usual) => {
      lines.setPrompt(`${question} [${usual}]: `);
      lines.prompt();
      const line = await typed.next();
      if (line.done === true)
        throw stop(
          exitCode.wrongInput,
          'usage',
          'no answer; nothing was written',
          'answer each question, or press Enter for the default',
        );
      return line.value;
    });
  } finally {
    lines.close();
  }
}
