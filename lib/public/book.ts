/** `dishwright/book`: the build book as one HTML page, apart from the rest because it is large. */
export { bookOf, type BookSource } from '../pipeline/book-file.js';
export { bookStyle } from '../output/book/index.js';
