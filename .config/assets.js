// Makes what the compiler does not: marks the command as executable.
import { chmodSync, existsSync } from 'node:fs';

const bin = new URL('../dist/cli/main.js', import.meta.url);
if (existsSync(bin)) chmodSync(bin, 0o755);
