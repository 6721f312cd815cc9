import { findRatioTable, RATIO_TABLES } from '../bending'
import { findLibraryMaterial } from '../materials'
import type { Issue } from '../results'
import type { ConductorLayer, Layer, Zone } from './construction'
import type { Design } from './design'
import { LAYER_KIND_FACTS } from './layer-kinds'
import type { Material, MaterialKind } from './material'
import { findOutlineIssue } from './outline'
import { findPlanIssues } from './plan-references'

/** What a layer of the kind may be made of. */
function listMaterialKinds(kind: Layer['kind']): readonly MaterialKind[] {
  return LAYER_KIND_FACTS[kind].materials
}

type Path = (string | number)[]

/** The material that a layer names: the design's own first, then the library's. */
export function findMaterial(design: Design, materialId: string): Material | null {
  return design.materials.find((material) => material.id === materialId) ?? findLibraryMaterial(materialId)
}

/** Issues that no schema can see: references, duplicates, contradictions between parts. */
export function findIssuesAcross(design: Design): Issue[] {
  const issues: Issue[] = []
  const add = (code: string, path: Path, message: string) => issues.push({ code, path, message })

  const checkUniqueIds = (list: readonly { id: string }[], path: Path) => {
    const seen = new Set<string>()
    list.forEach((entry, index) => {
      if (seen.has(entry.id)) add('duplicate-id', [...path, index, 'id'], `"${entry.id}" is used twice`)
      seen.add(entry.id)
    })
  }
  checkUniqueIds(design.materials, ['materials'])
  checkUniqueIds(design.construction.layers, ['construction', 'layers'])
  checkUniqueIds(design.construction.zones, ['construction', 'zones'])
  checkUniqueIds(design.bends, ['bends'])
  for (const [key, list] of Object.entries(design.features)) {
    // `none` names lists and holds no entries.
    if (key !== 'none' && Array.isArray(list)) checkUniqueIds(list as readonly { id: string }[], ['features', key])
  }
  design.materials.forEach((material, index) => {
    if (findLibraryMaterial(material.id) !== null) {
      add(
        'duplicate-id',
        ['materials', index, 'id'],
        `"${material.id}" is the id of a library material; choose another`,
      )
    }
    if ((material.kind === 'copper-foil') !== (material.foil !== null)) {
      add('foil-data', ['materials', index, 'foil'], 'copper foils need foil data, and only copper foils have them')
    }
  })

  if (new Set(design.brief.installationUses).size < design.brief.installationUses.length) {
    add('duplicate-use', ['brief', 'installationUses'], 'names a use twice')
  }
  const { ratioTableKey } = design.brief
  if (ratioTableKey !== null && findRatioTable(ratioTableKey) === null) {
    add(
      'unknown-ratio-table',
      ['brief', 'ratioTableKey'],
      `no table of ratios "${ratioTableKey}"; there are ${RATIO_TABLES.map(({ id }) => id).join(', ')}`,
    )
  }
  checkLayers(design, add)
  checkZones(design, add)
  checkBends(design, add)
  checkSize(design, add)
  checkFeatureReferences(design, add)
  const weighed = new Set<string>()
  design.brief.outgassing.forEach(({ materialId }, index) => {
    if (weighed.has(materialId)) {
      add('duplicate-id', ['brief', 'outgassing', index, 'materialId'], `material "${materialId}" is listed twice`)
    }
    weighed.add(materialId)
  })
  const outlineIssue = findOutlineIssue(design.features.outline)
  if (outlineIssue !== null) issues.push(outlineIssue)
  issues.push(...findPlanIssues(design))
  return issues
}

type Add = (code: string, path: Path, message: string) => void

function checkLayers(design: Design, add: Add): void {
  design.construction.layers.forEach((layer, index) => {
    const path: Path = ['construction', 'layers', index]
    if (layer.kind !== 'unbonded-gap') {
      const material = findMaterial(design, layer.materialId)
      if (material === null) {
        add(
          'unknown-material',
          [...path, 'materialId'],
          `no material "${layer.materialId}" in this design or in the library`,
        )
      } else if (material.foil?.type === 'plated') {
        add('material-kind', [...path, 'materialId'], `"${material.name}" is plated on; it is not a foil`)
      } else if (!listMaterialKinds(layer.kind).includes(material.kind)) {
        add(
          'material-kind',
          [...path, 'materialId'],
          `a ${layer.kind} layer is made of ${listMaterialKinds(layer.kind).join(' or ')}; "${material.name}" is ${material.kind}`,
        )
      }
      if (layer.toleranceMinusUm >= layer.thicknessUm) {
        add(
          'tolerance',
          [...path, 'toleranceMinusUm'],
          `${layer.toleranceMinusUm} µm leaves nothing of a ${layer.thicknessUm} µm layer`,
        )
      }
    }
    if (layer.kind === 'conductor') {
      if ((layer.plating.process === 'none') !== (layer.plating.thicknessUm === 0)) {
        add(
          'plating',
          [...path, 'plating', 'thicknessUm'],
          layer.plating.process === 'none'
            ? 'must be 0 um where no process plates this layer'
            : `must be greater than 0 µm where the layer is ${layer.plating.process}-plated`,
        )
      }
      if (layer.role === 'plane' && layer.planePattern === 'none') {
        add('plane', [...path, 'planePattern'], `"${layer.name}" carries a plane; it cannot be without one`)
      }
      checkPlatingMaterial(design, layer.plating, [...path, 'plating', 'materialId'], add)
      if (layer.processingLossUm >= layer.thicknessUm) {
        add(
          'processing-loss',
          [...path, 'processingLossUm'],
          `${layer.processingLossUm} µm leaves nothing of a ${layer.thicknessUm} µm foil`,
        )
      }
    }
    if (!design.construction.zones.some((zone) => zone.presence.some((p) => p.layerId === layer.id))) {
      add('layer-in-no-zone', [...path, 'id'], `layer "${layer.name}" is in no zone; put it in a zone or remove it`)
    }
  })
}

function checkPlatingMaterial(
  design: Design,
  { process, materialId }: ConductorLayer['plating'],
  path: Path,
  add: Add,
): void {
  if (materialId === null) {
    if (process !== 'none') add('plating', path, `state which plated copper the ${process} plating is`)
    return
  }
  if (process === 'none') {
    add('plating', path, 'must be empty where no process plates this layer')
    return
  }
  const material = findMaterial(design, materialId)
  if (material === null) {
    add('unknown-material', path, `no material "${materialId}" in this design or in the library`)
  } else if (material.foil?.type !== 'plated') {
    add('material-kind', path, `"${material.name}" is not plated copper`)
  }
}

function checkZones(design: Design, add: Add): void {
  const layers = new Map(design.construction.layers.map((layer) => [layer.id, layer]))
  design.construction.zones.forEach((zone, zoneIndex) => {
    const path: Path = ['construction', 'zones', zoneIndex]
    const seen = new Set<string>()
    zone.presence.forEach((presence, index) => {
      const at: Path = [...path, 'presence', index]
      const layer = layers.get(presence.layerId)
      if (layer === undefined) {
        add('unknown-layer', [...at, 'layerId'], `no layer "${presence.layerId}" in the construction`)
        return
      }
      if (seen.has(presence.layerId))
        add('duplicate-id', [...at, 'layerId'], `layer "${layer.name}" is listed twice in zone "${zone.name}"`)
      seen.add(presence.layerId)
      if (layer.kind !== 'conductor' && presence.coverageFraction !== null) {
        add(
          'coverage',
          [...at, 'coverageFraction'],
          `only conductor layers have a coverage; "${layer.name}" is ${layer.kind}`,
        )
      }
      checkPresenceOfCopper(presence, layer, at, add)
      if (zone.kind === 'flex' && (layer.kind === 'rigid-laminate' || layer.kind === 'stiffener')) {
        add(
          'rigid-layer-in-flex-zone',
          [...at, 'layerId'],
          `"${layer.name}" is ${layer.kind}; zone "${zone.name}" is flex`,
        )
      }
    })
    if (!zone.presence.some((p) => layers.get(p.layerId)?.kind !== 'unbonded-gap')) {
      add('empty-zone', [...path, 'presence'], `zone "${zone.name}" holds nothing but air`)
    }
    if (zone.connectorWindow !== null && zone.kind !== 'finger') {
      add(
        'connector-window',
        [...path, 'connectorWindow'],
        `only finger zones have a connector window; "${zone.name}" is ${zone.kind}`,
      )
    }
  })
}

/** What a zone says of a layer's plating and hatch must fit the layer. */
function checkPresenceOfCopper(
  { platedCopper, hatch, coverageFraction }: Zone['presence'][number],
  layer: Layer,
  at: Path,
  add: Add,
): void {
  if (layer.kind !== 'conductor') {
    if (platedCopper !== null)
      add('plating', [...at, 'platedCopper'], `"${layer.name}" is ${layer.kind}: it has no copper`)
    if (hatch !== null) add('hatch', [...at, 'hatch'], `"${layer.name}" is ${layer.kind}: it has no plane`)
    return
  }
  const { process } = layer.plating
  if (process === 'none' && platedCopper !== null && platedCopper !== 'none') {
    add('plating', [...at, 'platedCopper'], `no process plates "${layer.name}"`)
  }
  if (process === 'button' && platedCopper === 'whole') {
    add('plating', [...at, 'platedCopper'], `pads-only plating leaves the conductors of "${layer.name}" bare`)
  }
  if (hatch !== null && layer.planePattern !== 'hatched') {
    add('hatch', [...at, 'hatch'], `"${layer.name}" is not marked as a hatched plane`)
  }
  if (hatch !== null && coverageFraction !== null) {
    add('coverage', [...at, 'coverageFraction'], 'follows from bar and pitch of the hatch; leave it empty')
  }
}

function checkBends(design: Design, add: Add): void {
  design.bends.forEach((bend, index) => {
    const zone = design.construction.zones.find((candidate) => candidate.id === bend.zoneId)
    if (zone === undefined) {
      add('unknown-zone', ['bends', index, 'zoneId'], `no zone "${bend.zoneId}" in the construction`)
    } else if (zone.kind !== 'flex') {
      add(
        'bend-in-rigid-zone',
        ['bends', index, 'zoneId'],
        `bend "${bend.name}" lies in zone "${zone.name}", which is ${zone.kind}; bends belong in flex zones`,
      )
    }
  })
}

/**
 * Every bend is computed through every layer of its zone, at many corners of tolerances and constants: this product is what an evaluation
 * costs, about a millisecond for each. The bound is far above real parts (forty bends of twenty layers come to 800) and keeps one evaluation
 * below 5 s on a plain server (`npm run bench`).
 */
export const MAX_BEND_LAYERS = 4000
/** In a thicker stack each constant is tried through so many layers that the square of their number costs most: there a layer counts for more. */
const COUNTED_ONCE_LAYERS = 64

const countBendLayers = (layerCount: number): number => layerCount * Math.max(1, layerCount / COUNTED_ONCE_LAYERS)

/** What an evaluation of a design costs, in layers of its bends: about a millisecond for each. */
export function countBendLayersOf({ bends, construction }: Pick<Design, 'bends' | 'construction'>): number {
  const layerCounts = new Map(construction.zones.map(({ id, presence }) => [id, presence.length]))
  return bends.reduce((sum, { zoneId }) => sum + countBendLayers(layerCounts.get(zoneId) ?? 0), 0)
}

function checkSize(design: Design, add: Add): void {
  const { bends } = design
  const bendLayers = countBendLayersOf(design)
  if (bendLayers > MAX_BEND_LAYERS) {
    add(
      'too-large',
      ['bends'],
      `${bends.length} bends through ${Math.round(bendLayers)} layers in all; a design has at most ${MAX_BEND_LAYERS} layers in its bends, counted once for each bend, and a layer of a stack of more than ${COUNTED_ONCE_LAYERS} the more often`,
    )
  }
}

function checkFeatureReferences(design: Design, add: Add): void {
  const layerKinds = new Map(design.construction.layers.map((layer) => [layer.id, layer.kind]))
  const bendIds = new Set(design.bends.map((bend) => bend.id))
  const { features } = design
  const checkLayer = (list: keyof typeof features, index: number, layerId: string, kind: string) => {
    if (layerKinds.get(layerId) !== kind) {
      add('unknown-layer', ['features', list, index, 'layerId'], `no ${kind} layer "${layerId}" in the construction`)
    }
  }
  const checkBend = (path: Path, bendId: string) => {
    if (!bendIds.has(bendId)) add('unknown-bend', path, `no bend "${bendId}" in this design`)
  }
  features.netClasses.forEach(({ referenceLayerId }, index) => {
    if (referenceLayerId !== null && layerKinds.get(referenceLayerId) !== 'conductor') {
      const path = ['features', 'netClasses', index, 'referenceLayerId']
      add('unknown-layer', path, `no conductor layer "${referenceLayerId}" in the construction`)
    }
  })
  const netClassIds = new Set(features.netClasses.map(({ id }) => id))
  features.conductors.forEach((conductor, index) => {
    if (conductor.netClassId !== null && !netClassIds.has(conductor.netClassId)) {
      const path = ['features', 'conductors', index, 'netClassId']
      add('unknown-net-class', path, `no net class "${conductor.netClassId}" in this design`)
    }
    checkLayer('conductors', index, conductor.layerId, 'conductor')
    const { referenceLayerId } = conductor.impedance
    if (referenceLayerId !== null) {
      const path = ['features', 'conductors', index, 'impedance', 'referenceLayerId']
      if (layerKinds.get(referenceLayerId) !== 'conductor') {
        add('unknown-layer', path, `no conductor layer "${referenceLayerId}" in the construction`)
      } else if (referenceLayerId === conductor.layerId) {
        add('reference', path, 'a conductor cannot be its own reference')
      }
    }
    conductor.crossings.forEach((crossing, at) => {
      checkBend(['features', 'conductors', index, 'crossings', at, 'bendId'], crossing.bendId)
    })
  })
  features.pads.forEach((pad, index) => {
    checkLayer('pads', index, pad.layerId, 'conductor')
  })
  features.widthSteps.forEach((step, index) => {
    checkLayer('widthSteps', index, step.layerId, 'conductor')
    if (step.narrowMm !== null && step.wideMm !== null && step.narrowMm > step.wideMm) {
      add(
        'width-step',
        ['features', 'widthSteps', index, 'narrowMm'],
        `${step.narrowMm} mm is wider than the wide side, ${step.wideMm} mm`,
      )
    }
  })
  features.stiffeners.forEach((stiffener, index) => {
    checkLayer('stiffeners', index, stiffener.layerId, 'stiffener')
  })
  const zoneIds = new Set(design.construction.zones.map(({ id }) => id))
  const checkLayerAt = (index: number, field: 'fromLayerId' | 'toLayerId', layerId: string) => {
    if (layerKinds.get(layerId) !== 'conductor') {
      add('unknown-layer', ['features', 'holes', index, field], `no conductor layer "${layerId}" in the construction`)
    }
  }
  features.holes.forEach((hole, index) => {
    if (hole.zoneId !== null && !zoneIds.has(hole.zoneId)) {
      add('unknown-zone', ['features', 'holes', index, 'zoneId'], `no zone "${hole.zoneId}" in the construction`)
    }
    if (hole.fromLayerId !== null) checkLayerAt(index, 'fromLayerId', hole.fromLayerId)
    if (hole.toLayerId !== null) checkLayerAt(index, 'toLayerId', hole.toLayerId)
    if (hole.landMm !== null && hole.drillMm !== null && hole.landMm <= hole.drillMm) {
      add(
        'land',
        ['features', 'holes', index, 'landMm'],
        `a ${hole.landMm} mm land does not surround a ${hole.drillMm} mm hole`,
      )
    }
  })
  features.connectors.forEach((connector, index) => {
    if (connector.zoneId !== null && !zoneIds.has(connector.zoneId)) {
      add(
        'unknown-zone',
        ['features', 'connectors', index, 'zoneId'],
        `no zone "${connector.zoneId}" in the construction`,
      )
    }
  })
  for (const list of ['pads', 'components'] as const) {
    features[list].forEach(({ zoneId }, index) => {
      if (zoneId !== null && !zoneIds.has(zoneId)) {
        add('unknown-zone', ['features', list, index, 'zoneId'], `no zone "${zoneId}" in the construction`)
      }
    })
  }
  for (const list of ['holes', 'pads', 'widthSteps', 'coverlayOpenings', 'stiffeners', 'components'] as const) {
    features[list].forEach((feature, index) => {
      if (feature.nearestBend !== null)
        checkBend(['features', list, index, 'nearestBend', 'bendId'], feature.nearestBend.bendId)
    })
  }
}
