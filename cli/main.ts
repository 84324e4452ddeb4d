#!/usr/bin/env node
// The version needs no parser of the command line, and a person waits for every start.
import { readFileSync } from 'node:fs';
import process from 'node:process';

if (process.argv.length === 3 && process.argv[2] === '--version') {
  const manifest: unknown = JSON.parse(readFileSync(new URL('../../package.json', import.meta.url), 'utf8'));
  process.stdout.write(`${(manifest as { readonly version: string }).version}\n`);
} else await import('./start.js');
