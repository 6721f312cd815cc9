import type { LimitOverride } from '../context'
import type { Limit, LimitOwner } from '../results'
import { SOURCE_KINDS, SOURCES, type Source, type SourceKey } from '../sources'
import type { LimitDefinition } from './limit-definition'
import { CONSTRUCTION_LIMITS } from './limits-construction'
import { DIMENSION_LIMITS } from './limits-dimensions'
import { PROCESS_LIMITS } from './limits-process'
import { TERM_LIMITS } from './limits-terms'

/** The dictionary of limits: each key ends in its unit. */
export const LIMITS = {
  ...CONSTRUCTION_LIMITS,
  ...DIMENSION_LIMITS,
  ...PROCESS_LIMITS,
  ...TERM_LIMITS,
} as const satisfies Record<string, LimitDefinition>

export type LimitKey = keyof typeof LIMITS

export const LIMIT_KEYS = Object.keys(LIMITS) as readonly LimitKey[]

export function isLimitKey(key: string): key is LimitKey {
  return Object.hasOwn(LIMITS, key)
}

/** @throws RangeError for a key that the dictionary lacks */
export function getLimitDefinition(key: string): LimitDefinition {
  if (!isLimitKey(key)) throw new RangeError(`no limit "${key}" in the dictionary of limits`)
  return LIMITS[key]
}

/** Who stands behind a limit that nobody has overridden. */
export function getSourceOwner(sourceKey: SourceKey): LimitOwner {
  return OWNERS[sourceKey]
}

function makeSourceOwner(source: Source): LimitOwner {
  const name = source.number ?? source.title
  switch (source.kind) {
    case 'published':
    case 'abstract':
      return { kind: source.kind, name }
    case 'quoted':
      return { kind: 'quoted', name: `${name}, as quoted by ${source.quotedBy}` }
    case 'memory':
      return { kind: 'memory', name: `${name}, ${SOURCE_KINDS.memory}` }
    default:
      return { kind: source.kind, name: SOURCE_KINDS[source.kind] }
  }
}

/** Made once: every outcome of every evaluation points at one of these. */
const OWNERS = Object.fromEntries(
  Object.entries(SOURCES).map(([key, source]) => [key, makeSourceOwner(source)]),
) as Record<SourceKey, LimitOwner>

/** The limit as the dictionary has it. */
export function getDefaultLimit(key: string): Limit {
  const { value, unit, sense, sourceKey } = getLimitDefinition(key)
  return { key, value, unit, sense, sourceKey, owner: getSourceOwner(sourceKey) }
}

/**
 * What is wrong with a value that somebody wants to set, as a sentence; null when it may be set.
 *
 * @example findLimitProblem('crossingAngleDeg', 95) gives 'Angle of conductors to the bend axis must lie between 0 and 90 deg; 95 was given.'
 */
export function findLimitProblem(key: string, value: number): string | null {
  if (!isLimitKey(key)) return `There is no limit "${key}".`
  const { label, unit, allowed } = LIMITS[key]
  if (Number.isFinite(value) && value >= allowed.min && value <= allowed.max) return null
  return `${label} must lie between ${allowed.min} and ${allowed.max} ${unit}; ${value} was given.`
}

/**
 * Limits in force. Later overrides win; one with an unknown key or a value that may not be set is passed over, since
 * the list may be newer than this catalogue.
 *
 * @returns a lookup that throws RangeError for a key that the dictionary lacks
 */
export function makeLimitLookup(overrides: readonly LimitOverride[]): (key: string) => Limit {
  const overridden = new Map<string, Limit>()
  const find = (key: string) => overridden.get(key) ?? DEFAULT_LIMITS.get(key)
  for (const { key, value, owner, sourceKey } of overrides) {
    const limit = find(key)
    if (limit === undefined || findLimitProblem(key, value) !== null) continue
    overridden.set(key, { ...limit, value, owner, ...(sourceKey === undefined ? {} : { sourceKey }) })
  }
  return (key) => {
    const limit = find(key)
    if (limit === undefined) throw new RangeError(`no limit "${key}" in the dictionary of limits`)
    return limit
  }
}

const DEFAULT_LIMITS: ReadonlyMap<string, Limit> = new Map(LIMIT_KEYS.map((key) => [key, getDefaultLimit(key)]))
