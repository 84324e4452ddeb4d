/** How much work may still be done. */
export interface Budget {
  /** Share of the work that is spent, from 0 up to 1. */
  share(): number;
  /** True when the work has to end. */
  over(): boolean;
  /** Counts work done, in edges looked at. */
  spend(work: number): void;
  /** Counts as spent what was meant for work that is done already, where effort and not time is the limit. */
  skipTo(share: number): void;
}

/** Edges looked at in one unit of effort. */
const UNIT = 1.5e8;

/**
 * A budget of `effort` units that may be ended early.
 * @param stop asked at every look
 * @param elapsed share of the time that has gone, where time is the limit
 */
export function budgetOf(
  effort: number,
  stop: (share: number) => boolean = () => false,
  elapsed: () => number = () => 0,
): Budget {
  const all = effort * UNIT;
  let spent = 0;
  let stopped = false;
  const share = (): number => Math.min(1, Math.max(all > 0 ? spent / all : 1, elapsed()));
  return {
    share,
    over: () => {
      const now = share();
      return (stopped ||= now >= 1 || stop(now));
    },
    spend: (work) => {
      spent += work;
    },
    skipTo: (to) => {
      if (Number.isFinite(all)) spent = Math.max(spent, to * all);
    },
  };
}

/** A part of a budget: from the share spent now up to `until`. */
export function budgetPart(budget: Budget, until: number): Budget {
  const from = budget.share();
  const share = (): number => (until <= from ? 1 : Math.min(1, (budget.share() - from) / (until - from)));
  return {
    share,
    over: () => share() >= 1 || budget.over(),
    spend: (work) => budget.spend(work),
    skipTo: (to) => budget.skipTo(from + to * (until - from)),
  };
}
