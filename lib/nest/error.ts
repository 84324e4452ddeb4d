/** What was wrong with a nest's request. */
export type NestErrorCode =
  | 'not-a-number'
  | 'zero-area'
  | 'self-crossing'
  | 'duplicate-id'
  | 'bad-quantity'
  | 'no-rotation'
  | 'bad-stock'
  | 'bad-spacing';

/** Thrown for parts or stock that cannot be nested whatever the room. */
export class NestError extends Error {
  override readonly name = 'NestError';

  /**
   * @param code kind of fault
   * @param id of the part or stock at fault
   */
  constructor(
    readonly code: NestErrorCode,
    readonly id: string,
    message: string,
  ) {
    super(message);
  }
}
