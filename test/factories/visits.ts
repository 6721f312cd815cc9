import type { Visit } from '@/lib/data'

/** A request from somewhere else, by a browser that nobody has signed in on. */
export function visitFrom(source: string): Visit {
  return { sourceKey: source, isThisMachine: false, device: 'Firefox on Linux', known: null }
}

/** A request by a browser on which this person has signed in before. */
export function visitOnDeviceOf(userId: string, source = 'at home'): Visit {
  return { ...visitFrom(source), known: { deviceId: `device of ${userId}`, userIds: [userId] } }
}

/** A request on the server's own machine. */
export const VISIT_HERE: Visit = { ...visitFrom('here'), isThisMachine: true }
