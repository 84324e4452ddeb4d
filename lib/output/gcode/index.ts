export { routerCautions } from './cautions.js';
export { type NgcHeader, writeNgc } from './write.js';
