export { type KeySteps, type StatedKey, statedKeys } from './stated.js';
export { type NewValue, withKey } from './with-key.js';
export { notInLines, type Written } from './written.js';
