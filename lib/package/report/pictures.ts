import { parseHTML } from 'linkedom'
import {
  drawCrossSection,
  drawFolded,
  drawLifePlot,
  drawPartSection,
  drawPlanPicture,
  drawStatePlot,
  drawStrainPlot,
  drawWeibullPlot,
  FOLDED_VIEWS,
  nameConductorLayers,
  type Picture,
  PRINT_PALETTE,
} from '@/lib/drawing'
import type { Bend, Design, Evaluation, ZoneResult } from '@/lib/engine'
import { findMaterial } from '@/lib/engine'
import type { FlexTestSet } from '@/lib/engine/flex-tests'
import { listFoldSteps, measureRoom, prepareFolding, shapeFold } from '@/lib/engine/folding'

/** Pictures of one revision in print colours, lengths in micrometres. */
export interface Pictures {
  readonly drawPart: (widthPx: number) => Picture
  /** Null where no plan is drawn. */
  readonly drawPlan: (widthPx: number) => Picture | null
  /** Null where the part cannot be folded. */
  readonly drawFold: (widthPx: number) => Picture | null
  readonly drawZone: (zone: ZoneResult, widthPx: number) => Picture
  readonly drawStrain: (bend: Bend, widthPx: number) => Picture | null
  readonly drawLife: (bend: Bend, widthPx: number) => Picture | null
  readonly drawStates: (bend: Bend, widthPx: number) => Picture | null
  readonly drawFlexTests: (set: FlexTestSet, widthPx: number) => Picture | null
}

export function makePictures(design: Design, results: Evaluation): Pictures {
  const { document } = parseHTML('<!doctype html><html><body></body></html>')
  const designations = nameConductorLayers(design.construction)
  const common = { palette: PRINT_PALETTE, unit: 'um', designations } as const
  const findMaterialName = (materialId: string) => findMaterial(design, materialId)?.name ?? null
  const findBend = (bend: Bend) => results.bends.find(({ bendId }) => bendId === bend.id) ?? null
  const frame = (widthPx: number) => ({
    document: document as unknown as Document,
    palette: PRINT_PALETTE,
    widthPx,
    heightPx: Math.round(widthPx * 0.62),
  })
  return {
    drawPart: (widthPx) => drawPartSection(design.construction, results.zones, { ...common, widthPx }),
    drawPlan: (widthPx) => drawPlanPicture(design, { palette: PRINT_PALETTE, widthPx }),
    drawFold: (widthPx) => {
      const folding = prepareFolding(design, results.zones, results.bends)
      if (folding.kind !== 'foldable' || folding.value.order.length === 0) return null
      const steps = listFoldSteps(design, folding.value)
      const bodies = shapeFold(design, folding.value, steps.length)
      return drawFolded(
        { bodies, steps, made: steps.length, room: measureRoom(design, folding.value) },
        { palette: PRINT_PALETTE, widthPx, view: FOLDED_VIEWS.oblique },
      )
    },
    drawZone: (zone, widthPx) => {
      // One neutral axis at most: of the first bend in the zone.
      const bend = design.bends.find(({ zoneId }) => zoneId === zone.zoneId)
      const result = bend === undefined ? null : findBend(bend)
      const axis = bend === undefined || result === null ? {} : { bend: { result, insideFace: bend.insideFace } }
      return drawCrossSection(zone, { ...common, widthPx, findMaterialName, ...axis })
    },
    drawStrain: (bend, widthPx) => {
      const result = findBend(bend)
      const zone = results.zones.find(({ zoneId }) => zoneId === bend.zoneId)
      if (result === null || zone === undefined || result.strainProfile.length === 0) return null
      return drawStrainPlot(result, zone, bend.insideFace, { ...common, ...frame(widthPx) })
    },
    drawLife: (bend, widthPx) => {
      const result = findBend(bend)
      return result === null ? null : drawLifePlot(result, bend.insideRadiusMm, frame(widthPx))
    },
    drawStates: (bend, widthPx) => {
      const result = findBend(bend)
      const isReversed = bend.motion === 'reversed'
      return result === null ? null : drawStatePlot(result, { ...common, ...frame(widthPx), isReversed })
    },
    drawFlexTests: (set, widthPx) => drawWeibullPlot(set, frame(widthPx)),
  }
}
