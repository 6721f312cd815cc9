import type { DrawnLayer } from '@/lib/artwork-picture'
import type { Design, Outcome } from '@/lib/engine'
import { compareVerdicts, getOutcomeVerdict } from '@/lib/engine'
import type { ItemState } from '@/lib/review'

/** So many crops of an item are drawn; the rest is counted. Our choice. */
const MOST_CROPS = 12

type PlacedOutcome = Outcome & { readonly artworkAt: NonNullable<Outcome['artworkAt']> }

export interface ItemCrops {
  readonly item: ItemState['item']
  /** The worst first. */
  readonly shown: readonly PlacedOutcome[]
  /** Places of the item that are not drawn: of them so many are not met. */
  readonly left: { readonly count: number; readonly notMetCount: number }
}

const isPlaced = (outcome: Outcome): outcome is PlacedOutcome => outcome.artworkAt !== undefined

/** Room left in relation to the limit; what has none stands behind. */
function shareOf(outcome: Outcome): number {
  if (outcome.kind !== 'decided') return Infinity
  return outcome.limit.value === 0 ? outcome.margin : outcome.margin / Math.abs(outcome.limit.value)
}

/** Per item the places that are not met, the most severe first; where all are met, the one with the least room. */
export function listCrops(itemStates: readonly ItemState[]): ItemCrops[] {
  return itemStates.flatMap(({ item, result }): ItemCrops[] => {
    const placed = (result?.outcomes ?? [])
      .filter(isPlaced)
      .map((outcome) => ({ outcome, verdict: getOutcomeVerdict(outcome), share: shareOf(outcome) }))
      .sort((one, other) => compareVerdicts(one.verdict, other.verdict) || one.share - other.share || 0)
    if (placed.length === 0) return []
    const notMet = placed.filter(({ verdict }) => verdict !== 'meets' && verdict !== 'not-applicable')
    const shown = notMet.length === 0 ? placed.slice(0, 1) : notMet.slice(0, MOST_CROPS)
    return [
      {
        item,
        shown: shown.map(({ outcome }) => outcome),
        left: { count: placed.length - shown.length, notMetCount: Math.max(0, notMet.length - MOST_CROPS) },
      },
    ]
  })
}

/** Films whose openings are drawn as lines where an outcome is about them. */
const COVER_ROLES: readonly (string | null)[] = ['coverlay', 'solder mask', 'adhesive']

/** What of the artwork an outcome is about. Copper that it names alone, as far as it is known which file draws which layer; else all of it. */
export function layersConcerned(
  layers: readonly DrawnLayer[],
  { places }: Pick<Outcome, 'places'>,
  { construction }: Pick<Design, 'construction'>,
): { readonly filled: readonly DrawnLayer[]; readonly lined: readonly DrawnLayer[] } {
  const copper = layers
    .filter(({ head }) => head.copperPlace !== null)
    .sort((one, other) => (other.head.copperPlace ?? 0) - (one.head.copperPlace ?? 0))
  const conductors = construction.layers.filter(({ kind }) => kind === 'conductor')
  const named = conductors.flatMap(({ id }, index) =>
    places.some((place) => place.kind === 'layer' && place.id === id) ? [index] : [],
  )
  const isKnown = copper.length === conductors.length && named.length > 0
  const isOfCopper = named.length > 0 || places.some(({ kind }) => kind === 'bend')
  const stiffeners = places.some(({ kind }) => kind === 'stiffener')
  return {
    filled: isKnown ? copper.filter(({ head }) => named.includes(head.copperPlace ?? -1)) : copper,
    lined: layers.filter(
      ({ head }) => (!isOfCopper && COVER_ROLES.includes(head.role)) || (stiffeners && head.role === 'stiffener'),
    ),
  }
}
