import type { Design } from '../design'
import { LIMITS, type LimitKey } from './limits'
import type { CatalogueTemplate, ItemChange } from './template'

/*
 * Items and limits that are no longer asked, and what asks in their place. What was stored under an old id is read under its successor's, marked as to be
 * confirmed: an answer to one question is no answer to another. Nothing stored is rewritten.
 */

interface Succession {
  /** Null where nothing asks in its place. */
  readonly itemId: string | null
  /** As it was asked. */
  readonly question: string
}

export const SUCCESSORS: Readonly<Record<string, Succession>> = {
  'hole-to-transition': {
    itemId: 'transition-strip',
    question: 'Are holes kept away from the rigid-to-flex transition?',
  },
  'component-to-transition': {
    itemId: 'transition-strip',
    question: 'Are components kept away from the rigid-to-flex transition?',
  },
  'stiffener-to-bend': { itemId: 'straight-film', question: 'Do stiffeners end well before a bend?' },
  'bend-to-rigid': { itemId: 'straight-film', question: 'Is each bend kept clear of the rigid edge?' },
  'handbook-radius': {
    itemId: 'radius-rules',
    question: 'Is each inside radius at least the minimum of the published design standard?',
  },
  'radius-ratio': {
    itemId: 'radius-rules',
    question: 'Is the ratio of inside radius to thickness at least that of the chosen table?',
  },
  'pad-anchors': {
    itemId: 'land-hold',
    question: 'Do pads without a plated hole have anchors under the coverlay?',
  },
  'coverlay-capture': {
    itemId: 'land-hold',
    question: 'Does the coverlay hold down the rim of pads that have no plated hole?',
  },
  'tolerance-scheme': {
    itemId: 'tolerances-given',
    question: 'Do datums and tolerances suit a part that is not rigid?',
  },
  'bake-before-assembly': { itemId: 'floor-life', question: 'Is drying or baking before soldering agreed?' },
  'tight-bend-cut-outs': {
    itemId: null,
    question: 'Have cut-outs or slits been considered where a bend is tight and has room for them?',
  },
}

/** What decides which of two items asks. */
type AskedOf = Pick<Design, 'bends' | 'brief' | 'construction' | 'features'>

interface PartialSuccession extends Succession {
  /** Designs in which it is no longer asked. */
  readonly isGoneFrom: (design: AskedOf) => boolean
}

/** Items that are still asked, and of some designs no longer, as they were asked. */
const PARTIAL_SUCCESSORS: Readonly<Record<string, PartialSuccession>> = {
  // The strain of a bend that moves is judged by its life.
  'bend-strain': {
    itemId: 'fatigue-life',
    question: 'Does the copper strain in each bend stay below what its foil and use allow?',
    isGoneFrom: ({ bends }) =>
      bends.length > 0 && bends.every(({ use, foldedToRadiusMm }) => use === 'dynamic' && foldedToRadiusMm === null),
  },
  'plane-in-bend': {
    itemId: 'plane-in-fold',
    question: 'Are planes hatched or split where they bend?',
    isGoneFrom: ({ bends }) => bends.length > 0 && bends.every(({ use }) => use === 'fold-once'),
  },
  'rolling-direction': {
    itemId: 'rolling-direction-moving',
    question: 'Does the rolling direction of the foil run along the conductors through the bends?',
    isGoneFrom: ({ bends }) => bends.some(({ use }) => use === 'dynamic'),
  },
  bead: {
    itemId: 'bead-beside-moving-bend',
    question: 'Is the bead along each rigid edge called out with material, width and height, or ruled out?',
    isGoneFrom: ({ bends }) => bends.some(({ use }) => use === 'dynamic'),
  },
  'transition-strip': {
    itemId: 'transition-strip-class-three',
    question: 'Is the strip on either side of each rigid edge free of holes and components?',
    isGoneFrom: ({ brief }) => brief.performanceClass === 'class-3',
  },
  'flexible-adhesive-in-rigid': {
    itemId: 'flexible-adhesive-in-rigid-class-three',
    question: 'Do the plated holes of rigid zones pass through no acrylic adhesive?',
    isGoneFrom: ({ brief }) => brief.performanceClass === 'class-3',
  },
  'fold-model': {
    itemId: 'fold-order-model',
    question: 'Have slack, developed length and fold order been tried on a paper or film model?',
    isGoneFrom: ({ bends }) => bends.length > 1,
  },
  'thickness-tolerance': {
    itemId: 'fitted-thickness',
    question: 'Does the finished thickness of each zone stay within its tolerance?',
    isGoneFrom: ({ construction, features }) =>
      construction.zones.some(
        ({ id, kind, connectorWindow }) =>
          kind === 'finger' || connectorWindow !== null || features.connectors.some(({ zoneId }) => zoneId === id),
      ),
  },
}

interface LimitSuccession {
  readonly key: LimitKey
  readonly label: string
}

export const LIMIT_SUCCESSORS: Readonly<Record<string, LimitSuccession>> = {
  holeToTransitionMm: { key: 'transitionStripMm', label: 'Hole edge to the rigid-to-flex transition' },
  componentToTransitionMm: { key: 'transitionStripMm', label: 'Component to the rigid-to-flex transition' },
  nickelToBendMm: { key: 'openingToBendMm', label: 'Nickel-finished opening to the nearest bend' },
  stiffenerToBendMm: { key: 'bendToRigidMm', label: 'Stiffener edge to the nearest bend' },
}

/** The item that asks in place of one that is gone; the id itself where the item is still asked, or nothing asks in its place. */
export function findPresentItemId(itemId: string, design?: AskedOf): string {
  const next = readSuccession(itemId)?.itemId ?? itemId
  const partial = readPartial(next)
  return partial !== null && design !== undefined && partial.isGoneFrom(design) ? (partial.itemId ?? next) : next
}

/** How an item was asked before another took its place; null where none did. */
export function findEarlierQuestion(itemId: string): string | null {
  return (readSuccession(itemId) ?? readPartial(itemId))?.question ?? null
}

function readPartial(itemId: string): PartialSuccession | null {
  return Object.hasOwn(PARTIAL_SUCCESSORS, itemId) ? (PARTIAL_SUCCESSORS[itemId] ?? null) : null
}

function readSuccession(itemId: string): Succession | null {
  return Object.hasOwn(SUCCESSORS, itemId) ? (SUCCESSORS[itemId] ?? null) : null
}

/**
 * Limits under the keys of today. Of several that pass to one key the strictest goes on; one that somebody set under the new key goes before them. What is
 * laxer than the delivered limit waits until somebody sets it again: it was not set for what is asked now.
 */
export function passLimitsOn<T extends { readonly key: string; readonly value: number; readonly note?: string }>(
  limits: readonly T[],
): T[] {
  const passed = new Map<string, T>()
  const kept: T[] = []
  for (const limit of limits) {
    const next = Object.hasOwn(LIMIT_SUCCESSORS, limit.key) ? LIMIT_SUCCESSORS[limit.key] : undefined
    if (next === undefined) {
      kept.push(limit)
      continue
    }
    const { sense, value: delivered } = LIMITS[next.key]
    const isStricter = (one: number, other: number) => (sense === 'at-least' ? one > other : one < other)
    const best = passed.get(next.key)?.value ?? delivered
    if (!isStricter(limit.value, best)) continue
    const note = `To confirm: set for "${next.label}".${limit.note === undefined || limit.note === '' ? '' : ` ${limit.note}`}`
    passed.set(next.key, { ...limit, key: next.key, ...(limit.note === undefined ? {} : { note }) })
  }
  const set = new Set(kept.map(({ key }) => key))
  return [...kept, ...[...passed.values()].filter(({ key }) => !set.has(key))]
}

/**
 * A stored edition of the catalogue under the ids of today. What a workspace said of an item that is gone passes on as a remark to be confirmed: the
 * roles stay, its words and its being switched off do not, since they were about another question.
 */
export function passTemplateOn(template: CatalogueTemplate): CatalogueTemplate {
  const { itemChanges, limits, profiles } = template
  return {
    ...template,
    itemChanges: passChangesOn(itemChanges),
    limits: passLimitsOn(limits),
    ...(profiles === undefined ? {} : { profiles: profiles.map(passProfileOn) }),
  }
}

function passChangesOn(changes: readonly ItemChange[]): ItemChange[] {
  const kept = changes.filter(({ itemId }) => readSuccession(itemId) === null)
  const taken = new Set(kept.map(({ itemId }) => itemId))
  const passed: ItemChange[] = []
  for (const change of changes) {
    const next = readSuccession(change.itemId)
    if (next?.itemId == null || taken.has(next.itemId)) continue
    taken.add(next.itemId)
    passed.push({
      itemId: next.itemId,
      isOff: false,
      reason: `To confirm: said of "${next.question}"${change.isOff ? ', which was switched off' : ''}. ${change.reason}`,
      question: null,
      why: null,
      howToCheck: null,
      answeredBy: change.answeredBy,
    })
  }
  return [...kept, ...passed]
}

type StoredProfile = NonNullable<CatalogueTemplate['profiles']>[number]

/** A profile that switches an item off says nothing of its successor. */
function passProfileOn(profile: StoredProfile): StoredProfile {
  const taken = new Set(profile.items.map(({ itemId }) => itemId))
  const items = profile.items.flatMap((item) => {
    const next = readSuccession(item.itemId)
    if (next === null) return [item]
    if (next.itemId === null || taken.has(next.itemId)) return []
    taken.add(next.itemId)
    return [{ ...item, itemId: next.itemId, asked: item.asked === 'off' ? null : item.asked }]
  })
  return { ...profile, items, limits: passLimitsOn(profile.limits) }
}
