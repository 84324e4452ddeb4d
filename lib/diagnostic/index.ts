export { type DiagnosticCode, diagnosticCodes } from './codes.js';
export { hasHidden, visible } from './visible.js';
export {
  type Diagnostic,
  diagnostic,
  diagnosticText,
  hasError,
  type KeyPath,
  type Locate,
  pathText,
  type Place,
  type Severity,
} from './diagnostic.js';
