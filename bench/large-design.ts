import { type Design, parseDesignText, UNKNOWN_IMPEDANCE } from '@/lib/engine'
import { readSeedDesign } from '@/test/factories/reviews'
import { makeStackedDesign } from './stacked-design'

/** Of one screen that is still worked on in one piece: many times what the demonstration has. */
const LAYERS = 40
const CONDUCTORS = 100

/** A design of 40 layers and 100 conductors, each of which crosses its one bend. */
export function makeLargeDesign(): Design {
  const stacked = makeStackedDesign(LAYERS, { bonded: false })
  const parsed = parseDesignText(readSeedDesign('skua-rev-a'))
  if (!parsed.ok) throw new Error('the design of the demonstration is not read')
  const [conductor] = parsed.value.features.conductors
  if (conductor === undefined) throw new Error('the design of the demonstration has no conductor')
  const copper = stacked.construction.layers.filter(({ kind }) => kind === 'conductor')
  return {
    ...stacked,
    features: {
      ...stacked.features,
      conductors: Array.from({ length: CONDUCTORS }, (_, at) => ({
        ...conductor,
        id: `conductor-${at}`,
        name: `Conductor ${at}`,
        layerId: copper[at % copper.length]?.id ?? '',
        impedance: UNKNOWN_IMPEDANCE,
        crossings: conductor.crossings.slice(0, 1).map((crossing) => ({ ...crossing, bendId: 'bend' })),
      })),
    },
  }
}
