import 'server-only'

let readClock = (): Date => new Date()

/** The time now. Everything that is stored or compared takes its time from here, so that a test can set it. */
export function now(): Date {
  return readClock()
}

/**
 * Take the time from elsewhere, until the returned function is called.
 * @example const restore = replaceClock(() => new Date('2026-03-02T08:00:00Z'))
 */
export function replaceClock(read: () => Date): () => void {
  const before = readClock
  readClock = read
  return () => {
    readClock = before
  }
}
