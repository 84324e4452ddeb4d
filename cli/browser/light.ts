/** Lights up a part wherever it is drawn, at the press of its button in the part list. */

/** @param lightInSpace called with the part, or of null when none is lit */
export function lightParts(lightInSpace: (part: string | null) => void): void {
  const buttons = [...document.querySelectorAll<HTMLButtonElement>('button[data-light]')];
  const show = (part: string | null): void => {
    for (const button of buttons) button.setAttribute('aria-pressed', String(button.dataset['light'] === part));
    for (const drawn of document.querySelectorAll<SVGElement>('[data-part]')) {
      const parts = (drawn.dataset['part'] ?? '').split(' ');
      drawn.classList.toggle('lit', part !== null && parts.includes(part));
    }
    lightInSpace(part);
  };
  for (const button of buttons)
    button.addEventListener('click', () => {
      const pressed = button.getAttribute('aria-pressed') === 'true';
      show(pressed ? null : (button.dataset['light'] ?? null));
    });
}
