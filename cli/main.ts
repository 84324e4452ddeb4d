#!/usr/bin/env node
// The version needs no parser of the command line, and a person waits for every start.
import { readFileSync } from 'node:fs';
import process from 'node:process';
import { setFlagsFromString } from 'node:v8';

if (process.argv.length === 3 && process.argv[2] === '--version') {
  const manifest: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  process.stdout.write(`${(manifest as { readonly version: string }).version}\n`);
} else {
  // A command runs each of its loops for a second or two. By its usual measure the engine compiles them again and again
  // meanwhile; with about four times that, verify takes a fifth less time, check a tenth, and nothing takes more.
  setFlagsFromString('--interrupt-budget=500000');
  await import('./start.js');
}
