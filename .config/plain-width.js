// Width of a text in columns, for the help of the command, whose letters are all one column wide (a test holds the
// bundled help against the library's own measure). That measure loads tables of all scripts at every start.
import { stripVTControlCharacters } from 'node:util';

export default (text) => stripVTControlCharacters(text).length;
