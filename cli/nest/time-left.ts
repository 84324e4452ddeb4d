/** Time for several searches, one after the other: what one leaves over is for those after it. */
export class TimeLeft {
  #end: number | undefined;

  /**
   * @param seconds for all of them together
   * @param now milliseconds of a clock, which starts when the first search asks
   */
  constructor(
    private readonly seconds: number,
    private readonly now: () => number = Date.now,
  ) {}

  /** Seconds for a search that is this share (0 to 1) of what is still to be done; 0 when the time is up. */
  for(share: number): number {
    const end = (this.#end ??= this.now() + 1000 * this.seconds);
    return Math.max(0, ((end - this.now()) / 1000) * share);
  }
}
