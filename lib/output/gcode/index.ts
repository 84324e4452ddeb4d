export { writeNgc } from './write.js';
export { writeLaserNgc } from './laser.js';
