import { spawnSync } from 'node:child_process';
import process from 'node:process';
import { describe, expect, it } from 'vitest';
import { completionScript } from '../../cli/completion.js';
import { commandPath } from '../helpers/command.js';

describe('completion in a checkout, where no dishwright is installed', () => {
  it('makes the command for the shell, and completes with what it offers', () => {
    // the tests run with a PATH that has no dishwright
    const script = `
      source <("${process.execPath}" "${commandPath}" completion bash)
      COMP_WORDS=(dishwright ch) COMP_CWORD=1
      _dishwright_complete
      printf '|%s|' "\${COMPREPLY[@]}"
      dishwright explain dish.aperture`;
    const { stdout, stderr } = spawnSync('bash', ['--norc', '-c', script], {
      encoding: 'utf8',
      env: { PATH: '/usr/bin:/bin' },
    });
    expect(stderr).not.toContain('dishwright');
    expect(stdout).toContain('|check|');
    expect(stdout).toContain('Diameter across the rib ends');
  });

  it('takes a path with a space and an apostrophe', () => {
    const script = `${completionScript('bash', ['printf', '<%s>', "/it's here/main.js"])}\ndishwright one`;
    const { stdout } = spawnSync('bash', ['--norc', '-c', script], {
      encoding: 'utf8',
      env: { PATH: '/usr/bin:/bin' },
    });
    expect(stdout).toBe("</it's here/main.js><one>");
  });
});

describe('completion', () => {
  it('completes in bash with what the command offers, and leaves file names to the shell', () => {
    // a stand-in for the command: two words, and the words it was asked about on stderr
    const script = `
      dishwright() { printf '%s\\n' check cut; printf '<%s>' "$@" >&3; }
      ${completionScript('bash', ['node', 'main.js'])}
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
      ${completionScript('bash', ['node', 'main.js'])}
      COMP_WORDS=(dishwright explain di later) COMP_CWORD=2
      _dishwright_complete
      cat "$seen"; rm "$seen"`;
    const { stdout } = spawnSync('bash', ['-c', script], { encoding: 'utf8' });
    expect(stdout).toBe('<--get-yargs-completions><dishwright><explain><di>');
  });
});
