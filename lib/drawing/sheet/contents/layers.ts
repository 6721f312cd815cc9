import {
  type ConductorLayer,
  type Design,
  findMaterial,
  foilWeightOzPerFt2,
  getChoiceWord,
  isOpen,
  LAYER_FIELDS,
  type Layer,
  NOT_STATED,
  nameLayerKind,
} from '@/lib/engine'
import { digitsAsComputed, withUnitInHead } from '@/lib/engine/units'
import { formatDesignation, nameConductorLayers } from '../../layer-designations'
import type { SheetColumn, SheetResults, SheetTable } from './model'
import type { SheetWords } from './words'

/** Foils beyond this are mistyped; their weight is then left to the micrometres beside it. */
const THICKEST_FOIL_UM = 500

/**
 * Every layer from the top face down: number, conductor designation, whether it runs through flex, rigid or both,
 * call-out by specification sheet (never by a name that could be a brand), thickness, and what it comes to in each zone.
 */
export function makeLayerTable(design: Design, results: SheetResults | null, words: SheetWords): SheetTable {
  const { layers } = design.construction
  const designations = nameConductorLayers(design.construction)
  const zones = results?.zones ?? []
  const um = words.thicknessUnit
  const column = (label: string, leastMm: number, growth = 0, isNumeric = false): SheetColumn => ({
    label,
    leastMm,
    growth,
    isNumeric,
  })
  return {
    kind: 'table',
    id: 'layers',
    title: 'Layers from the top face',
    keyColumnCount: 2,
    columns: [
      column('No.', 9, 0, true),
      column('Conductor', 19),
      column(LAYER_FIELDS.name.label, 30, 2),
      column(LAYER_FIELDS.kind.label, 25),
      column('Runs through', 20),
      column('Call-out', 44, 3),
      column(withUnitInHead('Foil', 'oz-per-ft2'), 12, 0, true),
      column(`As bought, ${um}`, 18, 0, true),
      column(`Tolerance, ${um}`, 19, 0, true),
      column(`${LAYER_FIELDS.plating.label}, ${um}`, 24),
      ...zones.map((zone) => column(`${words.zone(zone.zoneId)}, ${um}`, 14, 0, true)),
    ],
    rows: layers.map((layer, index) => {
      const designation = designations.get(layer.id)
      return {
        id: layer.id,
        cells: [
          String(index + 1),
          designation === undefined ? '' : formatDesignation(designation),
          layer.name,
          nameLayerKind(layer.kind),
          describeRun(design, layer.id),
          getCallOut(design, layer),
          layer.kind === 'conductor' && layer.thicknessUm <= THICKEST_FOIL_UM
            ? digitsAsComputed(foilWeightOzPerFt2(layer.thicknessUm), 'foilWeightOzPerFt2')
            : '',
          words.enteredThickness(layer.thicknessUm),
          layer.kind === 'unbonded-gap' ? '' : words.deviation(layer.tolerancePlusUm, layer.toleranceMinusUm),
          layer.kind === 'conductor' ? describePlating(layer, words) : '',
          ...zones.map((zone) => {
            const found = zone.layers.find(({ layerId }) => layerId === layer.id)
            return found === undefined ? '–' : words.thickness(found.nominalUm)
          }),
        ],
      }
    }),
  }
}

/** Specification by which the material is ordered. One that is left for later ("tbd") is none: nobody can order by it. */
export function getCallOut(design: Design, layer: Layer): string {
  if (layer.kind === 'unbonded-gap') return 'air, not bonded'
  const specification = findMaterial(design, layer.materialId)?.specification.trim() ?? ''
  return isOpen(specification) ? `specification ${NOT_STATED}` : specification
}

function describePlating({ plating }: ConductorLayer, words: SheetWords): string {
  if (plating.process === 'none') return 'none'
  return `${getChoiceWord(LAYER_FIELDS.plating.fields.process, plating.process)} ${words.enteredThickness(plating.thicknessUm)} ±${words.enteredThickness(plating.toleranceUm)}`
}

/** Of a layer that is listed and lies nowhere. */
export const IN_NO_ZONE = 'no zone'

function describeRun({ construction }: Design, layerId: string): string {
  const kinds = new Set(
    construction.zones
      .filter(({ presence }) => presence.some((each) => each.layerId === layerId))
      .map(({ kind }) => kind),
  )
  const inFlex = kinds.has('flex')
  const elsewhere = [...kinds].filter((kind) => kind !== 'flex')
  if (inFlex) return elsewhere.length === 0 ? 'flex alone' : `flex, ${elsewhere.join(', ')}`
  return elsewhere.length === 0 ? IN_NO_ZONE : elsewhere.join(', ')
}
