import { callByName, type Design } from '../design'
import { DESIGN_PLACE, placeOf } from '../results'
import { asEntered, inSentence } from '../units'
import { type ArtworkPair, type ArtworkSubject, type Comparison, NOTHING_COMPARED, type OpenFact } from './compared'
import { compareHatches } from './hatches'

/** Shares of copper that differ by less are one: people type them to 5 %. Our choice. */
export const SAME_SHARE_FRACTION = 0.05
/** Outlines that lie apart by less agree: routing and punching hold no better (common practice, no published source). */
const SAME_OUTLINE_MM = 0.05

type Measured = NonNullable<ArtworkSubject['onPlan']>

/** Artwork laid over the plan: the outline point by point, holes by their places, shares of copper. */
export function compareOnPlan(subject: ArtworkSubject): Comparison {
  const { design, onPlan, ground } = subject
  if (design.plan === null || ground === null) return NOTHING_COMPARED
  if (onPlan === null) return leaveOpen('nobody has laid it over the plan as it is now', 'have the files read')
  if (onPlan.planBasis !== ground.basis) {
    return leaveOpen('the plan has changed since it was laid over', 'save the plan; the files are then read again')
  }
  const { registration, unplacedReason } = onPlan
  if (registration === null) {
    return leaveOpen(unplacedReason ?? 'it could not be laid over', 'compare profile and plan by eye')
  }
  const [x, y] = registration.farthestAtMm
  const outline: ArtworkPair = {
    fact: 'Outline, point by point',
    one: {
      where: 'the profile',
      says:
        registration.farthestMm <= SAME_OUTLINE_MM
          ? `within ${inSentence(SAME_OUTLINE_MM, 'mm')} everywhere`
          : `${inSentence(registration.farthestMm, 'mm')} away at (${inSentence(x)}, ${inSentence(y)}) mm`,
    },
    other: { where: 'the plan', says: 'the outline as drawn', path: ['plan', 'outline'] },
    agrees: registration.farthestMm <= SAME_OUTLINE_MM,
    places: [DESIGN_PLACE],
    artworkAt: { frame: 'plan', xMm: x, yMm: y },
  }
  const unsure: OpenFact[] = registration.isUnique
    ? []
    : [
        {
          fact: 'the place of the artwork on the plan',
          because: 'its outline fits in several positions, and neither holes nor coordinates say which one is meant',
          decidedBy: 'draw the holes in plan, or use one set of coordinates for plan and artwork',
          places: [DESIGN_PLACE],
        },
      ]
  return {
    pairs: [
      outline,
      ...(registration.isUnique ? compareHolePlaces(subject, onPlan) : []),
      ...compareShares(subject, onPlan),
      ...compareHatches(design, onPlan),
    ],
    open: unsure,
  }
}

function leaveOpen(because: string, decidedBy: string): Comparison {
  return { pairs: [], open: [{ fact: 'copper and holes on the plan', because, decidedBy, places: [DESIGN_PLACE] }] }
}

function compareHolePlaces({ design }: ArtworkSubject, { holes }: Measured): ArtworkPair[] {
  return holes.flatMap(({ holeId, drawnCount, foundCount, missingAtMm }): ArtworkPair[] => {
    const hole = design.features.holes.find(({ id }) => id === holeId)
    if (hole === undefined || drawnCount === 0) return []
    const place =
      missingAtMm === null ? '' : `, none at (${inSentence(missingAtMm[0])}, ${inSentence(missingAtMm[1])}) mm`
    return [
      {
        fact: `Places of ${hole.name}`,
        one: { where: 'the drill files', says: `${foundCount} of ${drawnCount} where the plan has them${place}` },
        other: { where: 'the plan', says: asEntered(drawnCount), path: ['plan', 'holes'] },
        agrees: foundCount === drawnCount,
        places: [placeOf('hole', hole)],
        ...(missingAtMm === null
          ? {}
          : { artworkAt: { frame: 'plan', xMm: missingAtMm[0], yMm: missingAtMm[1] } as const }),
      },
    ]
  })
}

/** Shares that somebody typed, against the copper of each zone and of each bend's band. Those of hatched planes follow from bar and pitch. */
function compareShares({ design, zones }: ArtworkSubject, { layers, bands, unorderedReason }: Measured): ArtworkPair[] {
  const conductors = design.construction.layers.flatMap((layer) => (layer.kind === 'conductor' ? [layer] : []))
  if (unorderedReason !== null || layers.length !== conductors.length) return []
  const compare = (
    fileName: string,
    place: number,
    zoneId: string,
    copperFraction: number,
    bend: Design['bends'][number] | null,
  ): ArtworkPair[] => {
    const layer = conductors[place]
    const zone = design.construction.zones.find(({ id }) => id === zoneId)
    const presence = zone?.presence.find(({ layerId }) => layerId === layer?.id)
    if (layer === undefined || zone === undefined) return []
    const stated = zones
      .find((result) => result.zoneId === zoneId)
      ?.layers.find(({ layerId }) => layerId === layer.id)?.coverageFraction
    const used = presence === undefined ? 0 : (stated ?? presence.coverageFraction ?? layer.coverageFraction)
    return [
      {
        fact: `Share of copper on ${layer.name} in ${bend === null ? zone.name : `the band of ${callByName('bend', bend.name)}`}`,
        one: { where: fileName, says: inSentence(copperFraction * 100, 'pct') },
        other: {
          where: 'the construction',
          says: presence === undefined ? 'the layer is not in this zone' : inSentence(used * 100, 'pct'),
          path: ['construction', 'zones', design.construction.zones.indexOf(zone), 'presence'],
        },
        agrees: Math.abs(copperFraction - used) <= SAME_SHARE_FRACTION,
        places: [...(bend === null ? [placeOf('zone', zone)] : [placeOf('bend', bend)]), placeOf('layer', layer)],
      },
    ]
  }
  return [
    ...layers.flatMap(({ fileName, place, zones: measured }) =>
      measured.flatMap(({ zoneId, copperFraction }) => compare(fileName, place, zoneId, copperFraction, null)),
    ),
    ...design.bends.flatMap((bend) =>
      layers.flatMap(({ fileName, place }) => {
        // Of a bend over several arms, a band that differs from what was stated.
        const found = bands
          .filter(({ bendId }) => bendId === bend.id)
          .flatMap((band) => band.layers.find((each) => each.fileName === fileName) ?? [])
          .flatMap(({ copperFraction }) => compare(fileName, place, bend.zoneId, copperFraction, bend))
        return found.find(({ agrees }) => !agrees) ?? found[0] ?? []
      }),
    ),
  ]
}
