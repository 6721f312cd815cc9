import type { LimitOverride } from '../../context'
import { DECIDED_WHEN, DECIDED_WHEN_WORDS, type ItemDefinition } from '../define-item'
import { getDefaultLimit, isLimitKey } from '../limits'
import { SEVERITIES, type Severity } from '../severity'
import type { Profile, ProfileItem, RequiredField } from './profile'

/*
 * Several profiles at once. Each profile is the whole catalogue with its changes laid over it; what holds for a project is, for each item and
 * each limit, the strictest of them: asked before not asked, the higher severity, the earlier stage, every design before some, the limit
 * that is harder to meet, and every field that any of them requires. What a profile does not speak of is as the catalogue has it, so one
 * profile alone can switch an item off or relax a limit, and another one that is silent about it keeps it. Adding a profile to others
 * therefore never makes a verdict better, their order does not matter, and one taken twice is one.
 */

type Asking = Pick<ItemDefinition, 'severity' | 'decidedWhen' | 'isForEveryDesign' | 'becauseOf'>

/** What the profiles make of an item. */
export type ProfiledItem =
  | { readonly isAsked: true; readonly changed: Partial<Asking> }
  | {
      readonly isAsked: false
      /** Why, of each profile that takes it out; empty where the catalogue does not ask it by itself. */
      readonly reasons: readonly string[]
    }

/** @param isAskedOtherwise  is it asked where no profile speaks of it? */
export function profileItem(
  item: ItemDefinition,
  isAskedOtherwise: boolean,
  profiles: readonly Profile[],
): ProfiledItem {
  if (profiles.length === 0) return isAskedOtherwise ? { isAsked: true, changed: {} } : { isAsked: false, reasons: [] }
  const views = profiles.map((profile) => {
    const says = profile.items.find(({ itemId }) => itemId === item.id) ?? null
    return { profile, says, isAsked: says?.asked == null ? isAskedOtherwise : says.asked === 'on' }
  })
  const asking = views.filter(({ isAsked }) => isAsked)
  if (asking.length === 0) {
    return {
      isAsked: false,
      reasons: views.flatMap(({ profile, says }) =>
        says?.asked === 'off' ? [`profile ${profile.name}: ${says.reason}`] : [],
      ),
    }
  }
  const severity = asking
    .map(({ says }) => says?.severity ?? item.severity)
    .reduce((one, other) => (SEVERITY_RANK[other] < SEVERITY_RANK[one] ? other : one))
  const decidedWhen = asking
    .map(({ says }) => says?.decidedWhen ?? item.decidedWhen)
    .reduce((one, other) => (DECIDED_WHEN.indexOf(other) < DECIDED_WHEN.indexOf(one) ? other : one))
  const isForEveryDesign = item.isForEveryDesign === true || asking.some(({ says }) => says?.isForEveryDesign === true)
  const becauseOf: string[] = []
  const say = (what: string, does: (says: ProfileItem) => boolean) => {
    for (const { profile, says } of asking) {
      if (says !== null && does(says)) becauseOf.push(`${what} because of profile ${profile.name}: ${says.reason}`)
    }
  }
  if (!isAskedOtherwise) say('Asked', ({ asked }) => asked === 'on')
  if (severity !== item.severity) {
    say(`Severity ${severity}, otherwise ${item.severity},`, (says) => says.severity === severity)
  }
  if (decidedWhen !== item.decidedWhen) {
    say(`Decided in ${DECIDED_WHEN_WORDS[decidedWhen]}`, (says) => says.decidedWhen === decidedWhen)
  }
  if (isForEveryDesign && item.isForEveryDesign !== true) say('Asked of every design', (says) => says.isForEveryDesign)
  return {
    isAsked: true,
    changed: {
      ...(severity === item.severity ? {} : { severity }),
      ...(decidedWhen === item.decidedWhen ? {} : { decidedWhen }),
      ...(isForEveryDesign && item.isForEveryDesign !== true ? { isForEveryDesign } : {}),
      ...(becauseOf.length === 0 ? {} : { becauseOf }),
    },
  }
}

const SEVERITY_RANK = Object.fromEntries(Object.keys(SEVERITIES).map((severity, rank) => [severity, rank])) as Record<
  Severity,
  number
>

/**
 * Limits of the workspace and of fabricators, with those of profiles laid over them. A profile that relaxes a limit does so against
 * the delivered one alone: a limit that somebody set goes before it where it is harder to meet.
 *
 * @param overrides  later ones win, as everywhere; handed back with those of the profiles behind them
 */
export function layProfileLimits(overrides: readonly LimitOverride[], profiles: readonly Profile[]): LimitOverride[] {
  const set = new Map(overrides.map((override) => [override.key, override]))
  const keys = [...new Set(profiles.flatMap(({ limits }) => limits.map(({ key }) => key)))].filter(isLimitKey).sort()
  return [
    ...overrides,
    ...keys.flatMap((key): LimitOverride[] => {
      const usual = getDefaultLimit(key)
      const isStricter = (one: number, other: number) => (usual.sense === 'at-most' ? one < other : one > other)
      const own = set.get(key)
      const asked = profiles.map((profile) => ({ profile, limit: profile.limits.find((limit) => limit.key === key) }))
      const isBaseLeft = own === undefined && asked.every(({ limit }) => limit?.isRelaxed === true)
      const base = isBaseLeft ? null : (own?.value ?? usual.value)
      const spoken = asked.flatMap(({ profile, limit }) => (limit === undefined ? [] : [{ profile, limit }]))
      const strictest = spoken
        .map(({ limit }) => limit.value)
        .reduce((one, other) => (isStricter(other, one) ? other : one))
      if (base !== null && !isStricter(strictest, base)) return []
      const owners = spoken.filter(({ limit }) => limit.value === strictest)
      return [
        {
          key,
          value: strictest,
          owner: { kind: 'profile', name: owners.map(({ profile }) => profile.name).join(', ') },
          sourceKey: owners[0]?.limit.sourceKey ?? usual.sourceKey,
        },
      ]
    }),
  ]
}

/** A field that is required, and by which profiles. */
export interface FieldDemand extends Pick<RequiredField, 'field' | 'where'> {
  readonly profileNames: readonly string[]
}

/** Every field that any of the profiles requires, each once, in the order of their places. */
export function listFieldDemands(profiles: readonly Profile[]): FieldDemand[] {
  const demands = new Map<string, { field: string; where: RequiredField['where']; profileNames: string[] }>()
  for (const { name, requiredFields } of profiles) {
    for (const { field, where } of requiredFields) {
      const key = JSON.stringify([field, where?.field ?? '', where?.value ?? ''])
      const known = demands.get(key)
      if (known === undefined) demands.set(key, { field, where, profileNames: [name] })
      else if (!known.profileNames.includes(name)) known.profileNames.push(name)
    }
  }
  return [...demands.entries()].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)).map(([, demand]) => demand)
}
