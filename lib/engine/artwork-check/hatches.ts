import type { OnPlanFacts, OnPlanHatch } from '@/lib/artwork'
import type { ConductorLayer, Design, Hatch } from '../design'
import { placeOf } from '../results'
import { inSentence } from '../units'
import type { ArtworkPair } from './compared'

/** Bars and pitches are typed to hundredths, and plotted to a few micrometres. Our choice. */
const SAME_MM = 0.01
/** Of the larger figure. Our choice. */
const SAME_FRACTION = 0.05
/** The angle decides stiffness, which hardly moves over this. Our choice. */
const SAME_DEG = 2
/** Copper over nearly all of a zone is a plane without gaps. Our choice: hatches cover 30 to 80 %. */
const SOLID_FRACTION = 0.95

/** Hatches that artwork draws against those that are stated: bars, pitch and angle in each zone, and planes that are hatched in one place and solid in the other. */
export function compareHatches(design: Design, { layers, bands, unorderedReason }: OnPlanFacts): ArtworkPair[] {
  const conductors = design.construction.layers.flatMap((layer) => (layer.kind === 'conductor' ? [layer] : []))
  if (unorderedReason !== null || layers.length !== conductors.length) return []
  return layers.flatMap(({ fileName, place, zones }) =>
    zones.flatMap(({ zoneId, hatch, copperFraction }): ArtworkPair[] => {
      const layer = conductors[place]
      const zone = design.construction.zones.find(({ id }) => id === zoneId)
      const presence = zone?.presence.find(({ layerId }) => layerId === layer?.id)
      if (layer === undefined || zone === undefined || presence === undefined || layer.role === 'signal') return []
      const stated = presence.hatch
      if (hatch === null && (copperFraction < SOLID_FRACTION || layer.planePattern !== 'hatched')) return []
      const inBends = bands
        .filter(({ bendId }) => design.bends.some(({ id, zoneId: own }) => id === bendId && own === zoneId))
        .flatMap((band) => band.layers.find((each) => each.fileName === fileName)?.hatch?.angleDeg ?? [])
      return [
        {
          fact: `Hatch of ${layer.name} in ${zone.name}`,
          one: {
            where: fileName,
            says:
              hatch === null ? `a solid plane, ${inSentence(copperFraction * 100, 'pct')} of copper` : sayBars(hatch),
          },
          other: {
            where: 'the construction',
            says: stated === null ? sayPattern(layer) : sayBars(stated),
            path: ['construction', 'zones', design.construction.zones.indexOf(zone), 'presence'],
          },
          agrees: agree(layer, hatch, stated, inBends),
          places: [placeOf('zone', zone), placeOf('layer', layer)],
          ...(hatch === null ? {} : { artworkAt: { frame: 'plan', xMm: hatch.atMm[0], yMm: hatch.atMm[1] } as const }),
        },
      ]
    }),
  )
}

/** What nobody stated contradicts nothing. */
function agree(
  { planePattern }: ConductorLayer,
  drawn: OnPlanHatch | null,
  stated: Hatch | null,
  inBendsDeg: readonly number[],
): boolean {
  if (drawn === null) return false
  if (stated === null) return planePattern === null || planePattern === 'hatched' || planePattern === 'split'
  return (
    isSame(drawn.barMm, stated.barMm) &&
    isSame(drawn.pitchMm, stated.pitchMm) &&
    // Stated to the length of the part, which is that of an arm where it bends.
    [drawn.angleDeg, ...inBendsDeg].some((deg) => Math.abs(deg - stated.angleDeg) <= SAME_DEG)
  )
}

const isSame = (one: number, other: number): boolean =>
  Math.abs(one - other) <= Math.max(SAME_MM, SAME_FRACTION * Math.max(one, other))

const sayBars = ({ barMm, pitchMm, angleDeg }: Hatch): string =>
  `bars of ${inSentence(Math.round(barMm * 1000) / 1000, 'mm')} at a pitch of ${inSentence(Math.round(pitchMm * 1000) / 1000, 'mm')}, ${inSentence(Math.round(angleDeg * 10) / 10, 'deg')}`

const PATTERNS = {
  solid: 'a solid plane',
  hatched: 'a hatched plane',
  split: 'a split plane',
  none: 'no plane',
} as const

const sayPattern = ({ planePattern }: ConductorLayer): string =>
  planePattern === null ? 'no pattern of the plane' : PATTERNS[planePattern]
