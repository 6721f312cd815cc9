import type { RevisionTab } from '@/lib/addresses'
import type { Outcome } from '@/lib/engine/results'
import { findTheme } from './themes'

/**
 * One step from a failing item to what may settle it. `remedies`: changes of the bend, computed. `field`: where what it rests on is entered. `waiver`:
 * release against it. `question`: to the fabricator or the team.
 */
export type Cure =
  | { readonly kind: 'remedies'; readonly bendId: string }
  | { readonly kind: 'field'; readonly tab: RevisionTab; readonly bendId: string | null }
  | { readonly kind: 'waiver' }
  | { readonly kind: 'question' }

interface CuredItem {
  readonly itemId: string
  readonly restsOn: readonly string[]
}

/** Every failing item has at least a waiver and a question; what the design says has a field besides, and what bends has remedies. */
export function listCures(item: CuredItem, outcomes: readonly Outcome[], hasPlan: boolean): Cure[] {
  const bendId =
    outcomes.flatMap(({ places }) => places.flatMap(({ kind, id }) => (kind === 'bend' ? [id] : [])))[0] ?? null
  const tab = findTab(item, outcomes, hasPlan)
  return [
    ...(bendId !== null && findTheme(item.itemId) === 'bend-section' ? [{ kind: 'remedies' as const, bendId }] : []),
    ...(tab === null ? [] : [{ kind: 'field' as const, tab, bendId: tab === 'bends' ? bendId : null }]),
    { kind: 'waiver' },
    { kind: 'question' },
  ]
}

const TABS: Readonly<Record<string, RevisionTab>> = {
  brief: 'brief',
  materials: 'construction',
  construction: 'construction',
  bends: 'bends',
  features: 'features',
  plan: 'plan',
  artwork: 'artwork',
}

/** What is drawn in plan is changed there; else where the first part of the design stands that the item looks at. */
function findTab({ restsOn }: CuredItem, outcomes: readonly Outcome[], hasPlan: boolean): RevisionTab | null {
  const areas = restsOn.map((pattern) => pattern.split('.')[0] ?? '')
  if (hasPlan && areas.includes('plan') && outcomes.some(({ kind }) => kind === 'decided')) return 'plan'
  const isOfRouting = outcomes.some(({ places }) => places.some(({ kind }) => kind === 'routing'))
  if (isOfRouting && areas.includes('features')) return 'features'
  const area = areas.find((each) => each !== 'plan') ?? areas[0]
  return area === undefined ? null : (TABS[area] ?? null)
}
