export { writeNgc } from './write.js';
