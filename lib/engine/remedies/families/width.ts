import { withNetClasses } from '../../design'
import { roundTo, tidy } from '../../numerics'
import { editBend, editZone, setZoneCoverage } from '../edits'
import { type Candidate, type Family, listCrossing, writePct } from '../subject'
import { MOST_COVERAGE_FRACTION } from './copper-in-bend'

/** Width that conductors keep, and that is still etched by the same process. Our choice. */
const NARROWER_FRACTION = 0.75
/** Plan dimensions are drawn to this, mm. */
const DRAWN_STEP_MM = 0.5
/** A zone that would have to grow more than this is another part. Our choice. */
const MOST_WIDER_FRACTION = 2

/** A zone wide enough that the conductors of all its layers have room on one. */
export const widerZone: Family = ({ design, bend, zone, conductors }) => {
  if (conductors.length < 2) return []
  const together = conductors.reduce((sum, { coverageFraction }) => sum + coverageFraction, 0)
  const needed = together / MOST_COVERAGE_FRACTION
  if (needed <= 1 || needed > MOST_WIDER_FRACTION) return []
  const widerMm = roundTo(Math.ceil((bend.axisLengthMm * needed) / DRAWN_STEP_MM) * DRAWN_STEP_MM, 1)
  const growth = widerMm / bend.axisLengthMm
  let edited = editZone(design, zone.id, (each) => ({
    ...each,
    widthMm: each.widthMm === null ? null : tidy(each.widthMm * growth),
  }))
  for (const other of design.bends.filter(({ zoneId }) => zoneId === zone.id)) {
    edited = editBend(edited, other.id, (each) => ({ ...each, axisLengthMm: tidy(each.axisLengthMm * growth) }))
  }
  for (const { layer, coverageFraction } of conductors) {
    edited = setZoneCoverage(edited, zone.id, layer.id, coverageFraction / growth)
  }
  return [
    {
      id: `wider-zone:${widerMm}`,
      family: 'wider-zone',
      title: 'Wider flex zone',
      detail: `${zone.name}: ${bend.axisLengthMm} mm to ${widerMm} mm wide, the same conductors`,
      cautions: ['The outline grows: check the assembly, the panel and the force that bends the part.'],
      forbiddenBy: [],
      edited,
      touches: ['zone-width'],
    },
  ]
}

/** Narrower conductors at the same pitch: the axis moves less towards them, and what they carry is checked again. */
export const narrowerConductors: Family = ({ design, bend, zone, conductors }): readonly Candidate[] => {
  const signals = conductors.filter(
    ({ layer }) => layer.role === 'signal' && listCrossing(design, bend.id, layer.id).length > 0,
  )
  if (signals.length === 0) return []
  const layerIds = new Set(signals.map(({ layer }) => layer.id))
  let edited = design
  for (const { layer, coverageFraction } of signals) {
    edited = setZoneCoverage(edited, zone.id, layer.id, coverageFraction * NARROWER_FRACTION)
  }
  const isNarrowed = ({ layerId, crossings }: (typeof design.features.conductors)[number]) =>
    layerIds.has(layerId) && crossings.some(({ bendId }) => bendId === bend.id)
  return [
    {
      id: `narrower-conductors:${NARROWER_FRACTION}`,
      family: 'narrower-conductors',
      title: 'Narrower conductors',
      detail: `${signals.map(({ layer }) => layer.name).join(', ')}: conductors through the bend at ${writePct(NARROWER_FRACTION)} of their width, at the same pitch`,
      cautions: ['Narrower conductors open sooner where the edge is damaged: check the width against the process.'],
      forbiddenBy: withNetClasses(design).features.conductors.flatMap((conductor) =>
        isNarrowed(conductor) && conductor.impedanceOhm !== null
          ? [
              {
                kind: 'impedance' as const,
                name: conductor.name,
                because: `${conductor.name} is to have ${conductor.impedanceOhm} ohm: its width would change.`,
              },
            ]
          : [],
      ),
      edited: {
        ...edited,
        features: {
          ...edited.features,
          conductors: edited.features.conductors.map((conductor) => {
            if (!isNarrowed(conductor) || conductor.widthMm === null) return conductor
            const widthMm = tidy(conductor.widthMm * NARROWER_FRACTION)
            const { spaceMm } = conductor
            return {
              ...conductor,
              widthMm,
              spaceMm: spaceMm === null ? null : tidy(spaceMm + conductor.widthMm - widthMm),
            }
          }),
        },
      },
      touches: ['conductor-width'],
    },
  ]
}
