import { replaceClock } from '@/lib/config'

const MINUTE_MS = 60_000
const DAY_MS = 86_400_000
/** Between two acts of a scene: uneven, as people are, and the same each time. */
const PAUSES_MINUTES = [6, 17, 3, 11, 8, 23, 5, 14]

/**
 * The scenario's own clock, so that its trail covers weeks rather than a second. It only goes forward, and it ends before
 * the real time: a demo record is never later than the first real one after it.
 */
export interface StoryClock {
  /** Goes on at a working day this many days before today, at this hour (UTC). */
  readonly goTo: (daysAgo: number, hour: number) => void
  /** The day this many days before today, YYYY-MM-DD; negative for a day to come. */
  readonly day: (daysAgo: number) => string
  /** A little later. */
  readonly pause: () => void
  /** Gives the clock back. */
  readonly stop: () => void
}

export function startStoryClock(today: Date = new Date()): StoryClock {
  let time = 0
  let pauses = 0
  const restore = replaceClock(() => new Date(time))
  const setForward = (to: number) => {
    if (to < time) throw new RangeError(`the story would go back from ${time} to ${to}`)
    if (to > today.getTime()) throw new RangeError('the story would go on after today')
    time = to
  }
  return {
    goTo(daysAgo, hour) {
      const midnight = Date.UTC(today.getUTCFullYear(), today.getUTCMonth(), today.getUTCDate())
      const day = new Date(midnight - daysAgo * DAY_MS)
      // Nobody works on a Saturday or Sunday: the Friday before.
      const back = { 6: 1, 0: 2 }[day.getUTCDay()] ?? 0
      setForward(Math.max(time, day.getTime() - back * DAY_MS + hour * 60 * MINUTE_MS))
    },
    day: (daysAgo) => new Date(today.getTime() - daysAgo * DAY_MS).toISOString().slice(0, 10),
    pause() {
      setForward(time + (PAUSES_MINUTES[pauses % PAUSES_MINUTES.length] ?? 1) * MINUTE_MS)
      pauses += 1
    },
    stop: restore,
  }
}
