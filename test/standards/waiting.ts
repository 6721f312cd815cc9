/** What a check value waits for before anything here can answer it. */
export const WAITS_FOR = {
  artwork: 'hatches of one family of bars',
  materials: 'constants above the glass transition',
} as const

interface Waiting {
  readonly ids: RegExp
  readonly for: keyof typeof WAITS_FOR
  readonly reason: string
  /** How many check values these are, so that none joins them unseen. */
  readonly count: number
}

/** Check values that nothing here computes yet. A row goes when its handlers come. */
export const WAITING: readonly Waiting[] = [
  {
    ids: /^hatch-one-way$/,
    for: 'artwork',
    reason: 'a hatched plane has two families of bars at right angles: one alone cannot be entered',
    count: 1,
  },
  {
    ids: /^mat-fr4-across-tg$/,
    for: 'materials',
    reason: 'records hold constants below the glass transition alone',
    count: 1,
  },
]

export function findWaiting(id: string): Waiting | null {
  return WAITING.find(({ ids }) => ids.test(id)) ?? null
}

/** Sources of figures that nothing computed can be held against, and why. */
export const WITHOUT_CHECK = {
  flexLifeClasses:
    'it gives cycles by class of foil "with the right radius and section", and neither strain, radius, section nor share of survivors',
} as const
