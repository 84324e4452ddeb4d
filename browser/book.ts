/** The book's own script: the dish in space, pictures that zoom, parts that light up. */
import { lightParts } from './light.js';
import { spatialDish } from './spatial.js';
import { makeZoomable } from './zoom.js';

document.documentElement.classList.add('live');
for (const figure of document.querySelectorAll<HTMLElement>('figure.zoom')) makeZoomable(figure);
const stage = document.getElementById('stage');
const view = stage === null ? null : spatialDish(stage);
lightParts((part) => view?.light(part));
