import type { RevisionTab } from '@/lib/addresses'
import { type Brief, callByName, type Design, listAssumptions } from '@/lib/engine'
import { groupBy } from '@/lib/engine/numerics'

/** Fields of the brief without which an early review cannot begin, in the order of the form. */
const BRIEF_FIELDS = [
  ['partNumber', 'the part number'],
  ['purpose', 'what the part is for'],
  ['performanceClass', 'the performance class'],
  ['circuitType', 'the circuit type'],
  ['installationUses', 'the uses'],
  ['operatingMinDegC', 'the lowest operating temperature'],
  ['operatingMaxDegC', 'the highest operating temperature'],
  ['quantityPerYear', 'the quantity per year'],
  ['surfaceFinish', 'the surface finish'],
  ['solderedAssembly', 'whether the part is soldered'],
] as const satisfies readonly (readonly [keyof Brief, string])[]

export interface BriefGap {
  readonly field: keyof Brief
  readonly label: string
}

/** Required fields of the brief that are still empty. */
export function findGapsInBrief(brief: Brief): BriefGap[] {
  return BRIEF_FIELDS.filter(([field]) => {
    const value = brief[field]
    return (
      value === null || (typeof value === 'string' ? value.trim() === '' : Array.isArray(value) && value.length === 0)
    )
  }).map(([field, label]) => ({ field, label }))
}

export interface ConstructionGap {
  readonly sentence: string
  readonly target: { readonly tab: RevisionTab; readonly id: string }
}

/** What the construction and its bends lack for an early review. Emptiness as a whole is a cause of its own. */
export function findGapsInConstruction(design: Design): ConstructionGap[] {
  const gaps: ConstructionGap[] = []
  const { layers, zones } = design.construction
  if (layers.length > 0 && !layers.some((layer) => layer.kind === 'conductor')) {
    gaps.push({ sentence: 'The construction has no conductor layer', target: { tab: 'construction', id: '' } })
  }
  if (zones.length > 0 && !zones.some((zone) => zone.kind === 'flex')) {
    gaps.push({ sentence: 'The construction has no flex zone', target: { tab: 'construction', id: '' } })
  }
  for (const zone of zones) {
    if (zone.kind === 'finger' && zone.connectorWindow === null) {
      gaps.push({
        sentence: `Finger ${callByName('zone', zone.name)} does not state the thickness that its connector accepts`,
        target: { tab: 'construction', id: zone.id },
      })
    }
  }
  for (const bend of design.bends) {
    if (bend.use === null) {
      gaps.push({
        sentence: `${callByName('Bend', bend.name)} does not state its use`,
        target: { tab: 'bends', id: bend.id },
      })
    } else if (bend.use === 'dynamic' && bend.requiredCycles === null) {
      gaps.push({
        sentence: `${callByName('Bend', bend.name)} is dynamic and does not state its required cycles`,
        target: { tab: 'bends', id: bend.id },
      })
    }
  }
  return [...gaps, ...findAssumedGaps(design)]
}

const ASSUMED_TABS = {
  layers: 'construction',
  zones: 'construction',
  bends: 'bends',
  conductors: 'features',
  pads: 'features',
  widthSteps: 'features',
} as const
const ASSUMED_NOUNS = {
  layers: 'Layer',
  zones: 'Zone',
  bends: 'Bend',
  conductors: 'Conductor',
  pads: 'Pad',
  widthSteps: 'Width change',
} as const

/** What a starting construction or a new row proposed and nobody has confirmed, one sentence for each part. */
function findAssumedGaps(design: Design): ConstructionGap[] {
  const parts = groupBy(listAssumptions(design), ({ list, id }) => `${list} ${id}`)
  return [...parts.values()].flatMap((assumptions): ConstructionGap[] => {
    const [first] = assumptions
    if (first === undefined) return []
    const labels = assumptions.map(({ label }) => label).join(', ')
    return [
      {
        sentence: `${ASSUMED_NOUNS[first.list]} ${first.name} depends on assumed values that nobody has confirmed: ${labels}`,
        target: { tab: ASSUMED_TABS[first.list], id: first.id },
      },
    ]
  })
}
