/**
 * Completion scripts. The command itself is asked for the candidates at each Tab, so a script never falls behind;
 * where it knows none, the shell completes file names.
 */
export const shells = ['bash', 'zsh', 'fish'] as const;
export type Shell = (typeof shells)[number];

const bash = `# dishwright completion for bash: source this file, or copy it to
# ~/.local/share/bash-completion/completions/dishwright
_dishwright_complete() {
  local current="\${COMP_WORDS[COMP_CWORD]}"
  local IFS=$'\\n'
  COMPREPLY=($(compgen -W "$(dishwright --get-yargs-completions "\${COMP_WORDS[@]:0:COMP_CWORD+1}" 2>/dev/null)" -- "$current"))
}
complete -o default -F _dishwright_complete dishwright
`;

const zsh = `#compdef dishwright
# dishwright completion for zsh: copy this file to a folder of $fpath as _dishwright
_dishwright() {
  local -a candidates
  candidates=("\${(@f)$(dishwright --get-yargs-completions "\${(@)words[1,CURRENT]}" 2>/dev/null)}")
  if [[ \${#candidates} -gt 0 && -n "\${candidates[1]}" ]]; then
    _describe 'dishwright' candidates
  else
    _files
  fi
}
if [[ "$funcstack[1]" = _dishwright ]]; then
  _dishwright "$@"
else
  compdef _dishwright dishwright
fi
`;

const fish = `# dishwright completion for fish: copy this file to ~/.config/fish/completions/dishwright.fish
function __dishwright_complete
  set -l words (commandline -opc) (commandline -ct)
  dishwright --get-yargs-completions $words 2>/dev/null | string replace -r '^([^:]+):(.*)$' '$1\\t$2'
end
complete -c dishwright -a '(__dishwright_complete)'
`;

const scripts: Readonly<Record<Shell, string>> = { bash, zsh, fish };

const quoted = (word: string): string => `'${word.replace(/'/g, `'\\''`)}'`;

/**
 * The script to source, by shell.
 * @param program how this very command is started, word by word: where no `dishwright` is installed, as in a checkout,
 *   the script makes one of it for the shell
 */
export function completionScript(shell: Shell, program: readonly string[]): string {
  const start = program.map(quoted).join(' ');
  const own =
    shell === 'fish'
      ? `type -q dishwright; or function dishwright; ${start} $argv; end\n`
      : `command -v dishwright >/dev/null || dishwright() { ${start} "$@"; }\n`;
  const [first = '', ...rest] = scripts[shell].split('\n');
  // zsh reads the first line of a file in $fpath
  return [first, own.trimEnd(), ...rest].join('\n');
}
