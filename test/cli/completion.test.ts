import { spawnSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import { completionScripts } from '../../cli/completion.js';

describe('completion', () => {
  it('completes in bash with what the command offers, and leaves file names to the shell', () => {
    // a stand-in for the command: two words, and the words it was asked about on stderr
    const script = `
      dishwright() { printf '%s\\n' check cut; printf '<%s>' "$@" >&3; }
      ${completionScripts.bash}
      COMP_WORDS=(dishwright cu) COMP_CWORD=1
      exec 3>&1
      _dishwright_complete
      printf '|%s|' "\${COMPREPLY[@]}"
      complete -p dishwright`;
    const { stdout, status } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toContain('|cut|');
    expect(stdout).not.toContain('|check|');
    expect(stdout).toContain('complete -o default -F _dishwright_complete dishwright');
  });

  it('passes the words before the cursor on', () => {
    const script = `
      dishwright() { printf '<%s>' "$@" > "$seen"; }
      seen=$(mktemp)
      ${completionScripts.bash}
      COMP_WORDS=(dishwright explain di later) COMP_CWORD=2
      _dishwright_complete
      cat "$seen"; rm "$seen"`;
    const { stdout } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
    expect(stdout).toBe('<--get-yargs-completions><dishwright><explain><di>');
  });
});
