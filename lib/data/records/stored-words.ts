import 'server-only'
import { isProjectRole } from './authorization'

/** A stored word as one of those that this version knows. @throws Error for another: damage, or a newer version's data */
export function readWord<W extends string>(word: string, known: readonly W[], what: string): W {
  const found = known.find((candidate) => candidate === word)
  if (found === undefined) throw new Error(`"${word}" is not a known ${what}`)
  return found
}

export function readRole(role: string) {
  if (!isProjectRole(role)) throw new Error(`"${role}" is not a known role`)
  return role
}
