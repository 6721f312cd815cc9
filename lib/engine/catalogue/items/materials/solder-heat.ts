import type { EvaluationContext } from '../../../context'
import {
  type ConductorLayer,
  type Design,
  findHoldingLayer,
  type Layer,
  listStiffeners,
  type SourcedNumber,
} from '../../../design'
import type { Outcome, Place } from '../../../results'
import type { SourceKey } from '../../../sources'
import { BRIEF_PLACE, placeOf } from '../../checks'
import { decide, makeDesignLimit, notApplicable, notComputed } from '../../decide'
import { defineItem } from '../../define-item'

export const solderHeat = defineItem({
  id: 'solder-heat',
  section: 'materials',
  severity: 'major',
  question: 'Do coverlay, stiffeners and their bonds bear the solder profile that they meet?',
  titles: { meets: 'Films and bonds bear the solder profile', fails: 'Something does not bear the solder profile' },
  appliesTo: { needs: ['soldering'], says: 'parts that are soldered' },
  limits: [],
  sourceKeys: ['commonPractice'],
  restsOn: [
    'brief.assembly.solderPeakDegC',
    'brief.assembly.coverlayRatingDegC',
    'brief.solderedAssembly',
    'features.stiffeners.*.bonded',
    'features.stiffeners.*.heatRatingDegC',
    'construction.layers.*.materialId',
    'construction.zones',
    'materials',
  ],
  decidedWhen: 'early',
  answeredBy: ['member', 'fabricator'],
  monotone: [
    { path: 'brief.assembly.solderPeakDegC', worse: 'larger' },
    { path: 'brief.assembly.coverlayRatingDegC', worse: 'smaller' },
    { path: 'features.stiffeners[].heatRatingDegC', worse: 'smaller' },
  ],
  check: (context) => {
    const { design } = context
    const { assembly, solderedAssembly } = design.brief
    if (solderedAssembly === null) {
      return [notComputed(['brief', 'solderedAssembly'], 'whether the part is soldered', [BRIEF_PLACE], 'typed')]
    }
    const { solderPeakDegC: peak } = assembly
    if (peak === null) {
      return [
        notComputed(['brief', 'assembly', 'solderPeakDegC'], 'peak of the solder profile', [BRIEF_PLACE], 'typed'),
      ]
    }
    const layers = listHeatedLayers(design)
    const rated = layers.flatMap((layer) => checkMaterial(context, layer, peak))
    return [...checkCoverlay(context, peak), ...checkStiffeners(context, peak), ...rated]
  },
})

type Film = Exclude<Layer, ConductorLayer | { kind: 'unbonded-gap' }>

const isFilm = (layer: Layer | null | undefined): layer is Film =>
  layer != null && layer.kind !== 'conductor' && layer.kind !== 'unbonded-gap'

/** Layers and bonds that are there when the part is soldered. */
function listHeatedLayers(design: Design): Film[] {
  const later = new Set(
    listStiffeners(design)
      .filter(({ bonded }) => bonded === 'after-soldering')
      .flatMap(({ layerId }) => [layerId, findHoldingLayer(design.construction, layerId)?.id]),
  )
  return design.construction.layers.filter(isFilm).filter(({ id }) => !later.has(id))
}

/** What a material's own record states; a record that states nothing says nothing. */
function checkMaterial({ findMaterial }: EvaluationContext, layer: Film, peak: number): Outcome[] {
  const material = findMaterial(layer.materialId)
  const rating = material?.maxSolderDegC ?? null
  if (material === null || rating === null) return []
  return [
    compare(
      peak,
      { value: rating.value, sourceKey: rating.sourceKey, spread: rating.spread },
      `${material.name} in ${layer.name}`,
      placeOf('layer', layer),
    ),
  ]
}

const isRated = ({ findMaterial }: EvaluationContext, layer: Film) =>
  findMaterial(layer.materialId)?.maxSolderDegC != null

/** The rating of the coverlay as a whole; where nobody typed it, the records of each of its films and adhesives. */
function checkCoverlay(context: EvaluationContext, peak: number): Outcome[] {
  const { layers } = context.design.construction
  const films = layers.filter(isFilm).filter(({ kind }) => kind === 'coverlay-film')
  if (films.length === 0) return []
  const name = 'the coverlay and its adhesive'
  const rating = context.design.brief.assembly.coverlayRatingDegC
  if (rating !== null) return [compare(peak, { value: rating }, name, BRIEF_PLACE)]
  const adhesives = films.flatMap(({ id }) => {
    const at = layers.findIndex((layer) => layer.id === id)
    return [layers[at - 1], layers[at + 1]].filter(isFilm).filter(({ kind }) => kind === 'adhesive')
  })
  // A coverlay without a layer of adhesive of its own is known by its film alone, which says nothing of what bonds it.
  if (adhesives.length >= films.length && [...films, ...adhesives].every((layer) => isRated(context, layer))) return []
  return [
    notComputed(['brief', 'assembly', 'coverlayRatingDegC'], `what ${name} bear in soldering`, [BRIEF_PLACE], 'typed'),
  ]
}

function checkStiffeners(context: EvaluationContext, peak: number): Outcome[] {
  const { design } = context
  return listStiffeners(design).flatMap((stiffener, index): Outcome[] => {
    const place = placeOf('stiffener', stiffener)
    const path = ['features', 'stiffeners', index]
    if (stiffener.bonded === null) {
      const label = `whether ${stiffener.name} is bonded before or after soldering`
      return [notComputed([...path, 'bonded'], label, [place], 'typed')]
    }
    if (stiffener.bonded === 'after-soldering') {
      return [notApplicable(`${stiffener.name} is bonded after soldering`, [place])]
    }
    const name = `${stiffener.name} and its bond`
    if (stiffener.heatRatingDegC !== null) {
      return [compare(peak, { value: stiffener.heatRatingDegC }, name, place)]
    }
    const layer = design.construction.layers.find(({ id }) => id === stiffener.layerId)
    const bond = findHoldingLayer(design.construction, stiffener.layerId)
    if (isFilm(layer) && isFilm(bond) && isRated(context, layer) && isRated(context, bond)) return []
    return [notComputed([...path, 'heatRatingDegC'], `what ${name} bear in soldering`, [place], 'typed')]
  })
}

interface Rating {
  readonly value: number
  readonly sourceKey?: string
  readonly spread?: SourcedNumber['spread']
}

function compare(peak: number, rating: Rating, name: string, place: Place): Outcome {
  return decide({
    value: peak,
    limit: makeDesignLimit({
      key: 'solderPeakDegC',
      value: rating.value,
      unit: 'degC',
      sense: 'at-most',
      sourceKey: (rating.sourceKey ?? 'commonPractice') as SourceKey,
      name: rating.sourceKey === undefined ? 'rating by the maker’s sheet' : 'rating by the material’s record',
    }),
    ...(rating.spread == null ? {} : { limitRange: rating.spread, limitRangeOver: 'constants' as const }),
    places: [place],
    what: `peak of the solder profile at ${name}`,
    equation: 'temperatures as typed',
    cautions: ['A rating holds for a time and a number of passes: compare those too, by the maker’s sheet.'],
    isTyped: true,
  })
}
