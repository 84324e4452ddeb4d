export type { Body, Look, Note, Piece, Scene, SurfaceLine } from './scene.js';
export type { Standpoint } from './camera.js';
export { picture } from './picture.js';
