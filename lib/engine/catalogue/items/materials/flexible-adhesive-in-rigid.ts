import type { EvaluationContext } from '../../../context'
import type { MissingInput, Outcome, ZoneLayerResult, ZoneResult } from '../../../results'
import { whileClassIsOpen } from '../../by-class'
import { placeOf } from '../../checks'
import { decide, makeNoneAllowed, notApplicable, notComputed, notComputedFrom } from '../../decide'
import { defineItem } from '../../define-item'
import { SECTION_INPUTS } from '../../item-inputs'
import { readListState } from '../../listed'

const COMMON = {
  section: 'materials',
  titles: {
    meets: 'No acrylic adhesive where rigid zones have plated holes',
    fails: 'Plated holes of a rigid zone pass through acrylic adhesive',
  },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [...SECTION_INPUTS, 'features.holes', 'brief.performanceClass'],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [],
} as const

const check = (context: EvaluationContext): Outcome[] =>
  context.zones.filter(({ kind }) => kind === 'rigid').map((zone) => checkZone(context, zone))

export const flexibleAdhesiveInRigid = defineItem({
  ...COMMON,
  id: 'flexible-adhesive-in-rigid',
  severity: 'major',
  question: 'Do the plated holes of rigid zones pass through no acrylic adhesive?',
  appliesTo: { needs: ['rigid-zones', 'below-class-three'], says: 'parts with a rigid zone' },
  check,
})

export const flexibleAdhesiveClassThree = defineItem({
  ...COMMON,
  id: 'flexible-adhesive-in-rigid-class-three',
  severity: 'blocking',
  question: 'Do the plated holes of rigid zones pass through no acrylic adhesive, in a part of class 3?',
  appliesTo: { needs: ['rigid-zones', 'class-three'], says: 'parts of class 3 with a rigid zone' },
  check: (context) => [...whileClassIsOpen(context), ...check(context)],
})

function checkZone(context: EvaluationContext, zone: ZoneResult): Outcome {
  const place = placeOf('zone', { id: zone.zoneId, name: zone.name })
  const bonds = zone.layers.filter(({ kind }) => kind === 'adhesive' || kind === 'bondply')
  const unknown = bonds.find((layer) => readIsAcrylic(context, layer) === null)
  const acrylic = bonds.filter((layer) => readIsAcrylic(context, layer) === true)
  if (unknown !== undefined && acrylic.length === 0) {
    const index = context.design.construction.layers.findIndex(({ id }) => id === unknown.layerId)
    return notComputed(
      ['construction', 'layers', index, 'materialId'],
      `a material of ${unknown.name} whose specification names its chemistry`,
      [place, placeOf('layer', { id: unknown.layerId, name: unknown.name })],
    )
  }
  if (acrylic.length > 0 && !mayHavePlatedCopper(context, zone)) {
    const holes = findPlatedHoles(context, zone)
    if (holes === 'none') return notApplicable(`${zone.name} has no plated hole`, [place])
    if (holes !== 'some') return notComputedFrom([holes], [place])
  }
  return decide({
    value: acrylic.length,
    limit: makeNoneAllowed('acrylicLayersInRigidCount', 'commonPractice'),
    places: [place, ...acrylic.map((layer) => placeOf('layer', { id: layer.layerId, name: layer.name }))],
    what: `acrylic layers in ${zone.name}`,
    equation: 'count of layers, by the specification of their material',
    remark:
      acrylic.length === 0
        ? undefined
        : 'Acrylic expands several times as much as the rest of the board when it is soldered, and strains the barrels.',
  })
}

/** A process that plates copper of the zone plates its holes. */
function mayHavePlatedCopper({ design, zonesById }: EvaluationContext, { zoneId }: ZoneResult): boolean {
  const presence = zonesById.get(zoneId)?.presence ?? []
  return design.construction.layers.some((layer) => {
    const here = presence.find(({ layerId }) => layerId === layer.id)
    return (
      layer.kind === 'conductor' &&
      layer.plating.process !== 'none' &&
      here !== undefined &&
      here.platedCopper !== 'none' &&
      here.coverageFraction !== 0
    )
  })
}

/** By the list of holes, of those that lie in the zone or of which nobody said where; what is missing where the list is unknown. */
function findPlatedHoles(context: EvaluationContext, { zoneId }: ZoneResult): 'some' | 'none' | MissingInput {
  const state = readListState('holes', context)
  if (typeof state !== 'string') return state.missing
  return context.design.features.holes.some(
    (hole) => hole.plated !== false && (hole.zoneId === null || hole.zoneId === zoneId),
  )
    ? 'some'
    : 'none'
}

/**
 * By the words of its specification and name, which call out one chemistry or the other. Null where they name neither, or the material is not known.
 */
function readIsAcrylic(context: EvaluationContext, { materialId }: ZoneLayerResult): boolean | null {
  const material = materialId === null ? null : context.findMaterial(materialId)
  if (material === null) return null
  const words = `${material.specification} ${material.name}`.toLowerCase()
  if (words.includes('acrylic')) return true
  return OTHER_CHEMISTRIES.some((word) => words.includes(word)) ? false : null
}

const OTHER_CHEMISTRIES = ['epoxy', 'polyimide', 'prepreg', 'cyanate', 'fluoropolymer', 'liquid crystal'] as const
