import type { Design, Hatch } from '../../design'
import { editConductorLayers, editConstruction, setZoneCoverage, takeCopperOut } from '../edits'
import type { ForbiddenNeed } from '../remedy'
import { type Candidate, type Family, listCrossing, type PresentConductor, type Subject, writePct } from '../subject'

/**
 * Largest share of the width that conductors may cover on one layer: it leaves spaces of nearly half a conductor's
 * width. Common practice, no published source.
 */
export const MOST_COVERAGE_FRACTION = 0.7

const TOUCHES = ['copper-in-bend'] as const

/** Conductors on one layer in the bend: those of the other layers move over, planes end before the bend. */
export const oneLayerInBend: Family = (subject) => {
  const { conductors } = subject
  if (conductors.length < 2) return []
  return conductors
    .filter(({ layer }) => layer.role !== 'plane')
    .map((kept) =>
      moveOnto(
        subject,
        kept,
        conductors.filter((other) => other !== kept),
      ),
    )
}

function moveOnto(subject: Subject, kept: PresentConductor, others: readonly PresentConductor[]): Candidate {
  const { design, bend, zone } = subject
  const cautions: string[] = []
  const forbiddenBy: ForbiddenNeed[] = []
  let coverage = kept.coverageFraction
  let edited = design
  const movedIds = new Set<string>()
  for (const { layer, coverageFraction } of others) {
    const crossing = listCrossing(design, bend.id, layer.id)
    // A signal layer brings all its copper along; of a plane only the listed conductors can move.
    coverage +=
      layer.role === 'signal'
        ? coverageFraction
        : crossing.reduce((sum, { widthMm }) => sum + (widthMm ?? 0) / bend.axisLengthMm, 0)
    for (const { name, widthMm } of crossing) {
      if (widthMm === null) cautions.push(`${name} states no width: the copper that it brings along is not counted.`)
    }
    for (const { id } of crossing) movedIds.add(id)
    if (layer.role !== 'signal') {
      cautions.push(`The plane on ${layer.name} ends before the bend: check return paths and shielding.`)
    }
    edited = takeCopperOut(edited, zone.id, layer.id)
  }
  if (coverage > MOST_COVERAGE_FRACTION) {
    forbiddenBy.push({
      kind: 'room',
      name: kept.layer.name,
      because: `Together the conductors would cover ${writePct(coverage)} of the width of ${zone.name}; one layer takes ${writePct(MOST_COVERAGE_FRACTION)} at most. Fewer or narrower conductors, or a wider zone, would make room.`,
    })
    coverage = Math.min(coverage, 1)
  }
  if (coverage !== kept.coverageFraction) edited = setZoneCoverage(edited, zone.id, kept.layer.id, coverage)
  if (movedIds.size > 0) {
    edited = {
      ...edited,
      features: {
        ...edited.features,
        conductors: edited.features.conductors.map((conductor) =>
          movedIds.has(conductor.id) ? { ...conductor, layerId: kept.layer.id } : conductor,
        ),
      },
    }
    cautions.push('Conductors change layers through plated holes outside the bend: keep those clear of it.')
  }
  const removed = others.map(({ layer }) => layer.name).join(', ')
  return {
    id: `one-layer-in-bend:${kept.layer.id}`,
    family: 'one-layer-in-bend',
    title: 'Conductors on one layer in the bend',
    detail: `${zone.name}: all conductors on ${kept.layer.name} (${writePct(coverage)} of the width); no copper on ${removed}`,
    cautions,
    forbiddenBy,
    edited,
    touches: TOUCHES,
  }
}

/** Copper opposite the conductors taken out of the bend: nothing moves, so that conductors which cross there forbid it. */
export const oppositeCopperRemoved: Family = (subject) => {
  const { design, bend, zone, conductors } = subject
  if (conductors.length < 2) return []
  return conductors.map(({ layer }) => {
    const crossing = listCrossing(design, bend.id, layer.id)
    return {
      id: `opposite-copper-removed:${layer.id}`,
      family: 'opposite-copper-removed',
      title: 'Opposite copper removed in the bend',
      detail: `${zone.name}: no copper on ${layer.name}`,
      cautions:
        layer.role === 'signal'
          ? [`Make sure that no conductor on ${layer.name} has to cross the bend.`]
          : [`The plane on ${layer.name} ends before the bend: check return paths and shielding.`],
      forbiddenBy: crossing.map(({ name }) => ({
        kind: 'crossing-conductors' as const,
        name,
        because: `${name} crosses the bend on ${layer.name}.`,
      })),
      edited: takeCopperOut(design, zone.id, layer.id),
      touches: TOUCHES,
    }
  })
}

/** The hatch that is proposed: bar over pitch in the middle of what its stiffness is known for; lines that any process etches. Our choice. */
const HATCH: Hatch = { barMm: 0.2, pitchMm: 0.5, angleDeg: 45 }
/** Share of the area that two crossing families of bars cover. */
const HATCHED_SHARE = 1 - (1 - HATCH.barMm / HATCH.pitchMm) ** 2
/** Share that stays where a plane is parted into strips along the conductors: common practice, no published source. */
const SPLIT_SHARE = 0.8

/** Solid planes hatched, or split into strips. */
export const planePattern: Family = ({ design, zone, conductors }) => {
  const solid = conductors.filter(({ layer }) => layer.role !== 'signal' && layer.planePattern === 'solid')
  if (solid.length === 0) return []
  const names = solid.map(({ layer }) => layer.name).join(', ')
  const ids = new Set(solid.map(({ layer }) => layer.id))
  return (['hatched', 'split'] as const).map((pattern) => {
    let edited = editConductorLayers(design, ids, (layer) => ({ ...layer, planePattern: pattern }))
    if (pattern === 'hatched') {
      edited = hatchEverywhere(edited, ids)
    } else {
      for (const { layer, coverageFraction } of solid) {
        edited = setZoneCoverage(edited, zone.id, layer.id, coverageFraction * SPLIT_SHARE)
      }
    }
    return {
      id: `plane-pattern:${pattern}`,
      family: 'plane-pattern',
      title: pattern === 'hatched' ? 'Hatched plane' : 'Split plane',
      detail:
        pattern === 'hatched'
          ? `${names}: solid to hatched, bars of ${HATCH.barMm} mm at a pitch of ${HATCH.pitchMm} mm, ${HATCH.angleDeg}°, in every zone that has the plane; ${writePct(HATCHED_SHARE)} of the area left`
          : `${names}: solid to split, ${writePct(SPLIT_SHARE)} of the copper left in ${zone.name}`,
      cautions: [
        'Return currents and shielding change with the pattern: check the conductors that refer to the plane.',
      ],
      forbiddenBy: [],
      edited,
      touches: ['plane-pattern'],
    }
  })
}

/** The pattern belongs to the layer, so that each zone with copper on it needs the bars. */
function hatchEverywhere(design: Design, layerIds: ReadonlySet<string>): Design {
  return editConstruction(design, {
    zones: design.construction.zones.map((zone) =>
      zone.presence.some(({ layerId }) => layerIds.has(layerId))
        ? {
            ...zone,
            presence: zone.presence.map((each) =>
              layerIds.has(each.layerId) && each.coverageFraction !== 0
                ? { ...each, hatch: HATCH, coverageFraction: null }
                : each,
            ),
          }
        : zone,
    ),
  })
}
