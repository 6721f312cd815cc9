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
      pairs.push({
        fact: `Cover at the ${side}`,
        one: { where: listNames(covers), says: 'openings of a cover' },
        other: {
          where: 'the construction',
          says: hasCover ? 'a cover' : 'no coverlay and no solder mask on this side',
          path: ['construction', 'layers'],
        },
        agrees: hasCover,
        places: [DESIGN_PLACE],
      })
    }
    const stiffeners = beyond(side).filter(({ kind }) => kind === 'stiffener')
    const drawn = filesFor(artwork, 'stiffener').filter(({ role }) => role.side === side)
    if (drawn.length > 0) {
      pairs.push({
        fact: `Stiffener at the ${side}`,
        one: { where: listNames(drawn), says: 'a stiffener' },
        other: {
          where: 'the construction',
          says: stiffeners.length > 0 ? 'a stiffener' : 'none on this side',
          path: ['construction', 'layers'],
        },
        agrees: stiffeners.length > 0,
        places: [DESIGN_PLACE],
      })
    }
  }
  const stiffeners = layers.filter(({ kind }) => kind === 'stiffener')
  const drawn = filesFor(artwork, 'stiffener')
  const sideless = drawn.filter(({ role }) => role.side === null)
  if (sideless.length > 0) {
    pairs.push({
      fact: 'Stiffener',
      one: { where: listNames(sideless), says: 'a stiffener' },
      other: {
        where: 'the construction',
        says: stiffeners.length > 0 ? 'a stiffener' : 'none',
        path: ['construction', 'layers'],
      },
      agrees: stiffeners.length > 0,
      places: [DESIGN_PLACE],
    })
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
