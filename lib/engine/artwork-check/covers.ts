import type { Layer } from '../design'
import { DESIGN_PLACE } from '../results'
import { type ArtworkPair, type ArtworkSubject, type Comparison, filesFor, listNames, type OpenFact } from './compared'

const COVERS: readonly Layer['kind'][] = ['coverlay-film', 'solder-mask']

/** Covers and stiffeners: what the artwork draws stands in the construction, on the side that it says. */
export function compareCovers({ artwork, design }: ArtworkSubject): Comparison {
  const { layers } = design.construction
  const first = layers.findIndex(({ kind }) => kind === 'conductor')
  const last = layers.findLastIndex(({ kind }) => kind === 'conductor')
  if (first < 0) return { pairs: [], open: [] }
  const pairs: ArtworkPair[] = []
  const open: OpenFact[] = []
  const beyond = (side: 'top' | 'bottom') => (side === 'top' ? layers.slice(0, first) : layers.slice(last + 1))
  for (const side of ['top', 'bottom'] as const) {
    const covers = filesFor(artwork, 'coverlay', 'solder mask').filter(({ role }) => role.side === side)
    const inner = layers.filter((layer, at) => COVERS.includes(layer.kind) && at > first && at < last)
    const hasCover = beyond(side).some(({ kind }) => COVERS.includes(kind)) || inner.length > 0
    if (covers.length > 0) {
      const says = hasCover ? 'a cover' : 'no coverlay and no solder mask on this side'
      pairs.push(pairWithLayers(`Cover at the ${side}`, [listNames(covers), 'openings of a cover'], says, hasCover))
    }
    const stiffeners = beyond(side).filter(({ kind }) => kind === 'stiffener')
    const drawn = filesFor(artwork, 'stiffener').filter(({ role }) => role.side === side)
    if (drawn.length > 0) {
      const isThere = stiffeners.length > 0
      const says = isThere ? 'a stiffener' : 'none on this side'
      pairs.push(pairWithLayers(`Stiffener at the ${side}`, [listNames(drawn), 'a stiffener'], says, isThere))
    }
  }
  const stiffeners = layers.filter(({ kind }) => kind === 'stiffener')
  const drawn = filesFor(artwork, 'stiffener')
  const sideless = drawn.filter(({ role }) => role.side === null)
  if (sideless.length > 0) {
    const isThere = stiffeners.length > 0
    const says = isThere ? 'a stiffener' : 'none'
    pairs.push(pairWithLayers('Stiffener', [listNames(sideless), 'a stiffener'], says, isThere))
  }
  if (stiffeners.length > 0 && drawn.length === 0) {
    open.push({
      fact: 'the stiffeners',
      because: `the construction has ${listNames(stiffeners)}, and no file of the artwork is known to draw a stiffener`,
      decidedBy: 'say which file shows it, or where its drawing is',
      places: stiffeners.map(({ id, name }) => ({ kind: 'layer', id, name })),
    })
  }
  if (design.features.coverlayOpenings.length > 0 && filesFor(artwork, 'coverlay', 'solder mask').length === 0) {
    open.push({
      fact: 'the coverlay openings',
      because: 'no file of the artwork is known to draw openings of a cover',
      decidedBy: 'say which file shows them',
      places: [DESIGN_PLACE],
    })
  }
  return { pairs, open }
}

/** What files draw, held against the layers of the construction. */
function pairWithLayers(
  fact: string,
  [where, drawn]: readonly [where: string, drawn: string],
  says: string,
  agrees: boolean,
): ArtworkPair {
  return {
    fact,
    one: { where, says: drawn },
    other: { where: 'the construction', says, path: ['construction', 'layers'] },
    agrees,
    places: [DESIGN_PLACE],
  }
}
