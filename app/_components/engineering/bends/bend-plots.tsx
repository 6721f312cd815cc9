'use client'

import { useMemo } from 'react'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import {
  drawCrossSection,
  drawLifePlot,
  drawStatePlot,
  drawStrainPlot,
  nameConductorLayers,
  SCREEN_PALETTE,
} from '@/lib/drawing'
import { type Bend, type BendResult, findMaterial, type ZoneResult } from '@/lib/engine'
import { useDraft } from '../draft'
import { PictureView, usePlotDocument, useWidth } from '../pictures'

const PLOT_HEIGHT_PX = 320

interface BendPlotsProps {
  /** As evaluated, so that plots and numbers belong together. */
  readonly bend: Bend
  readonly result: BendResult
  readonly zone: ZoneResult
}

/** Strain through the thickness, life over radius, and the section that is bent. */
export function BendPlots({ bend, result, zone }: BendPlotsProps) {
  const { live } = useDraft()
  const { evaluatedDesign } = live
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(480)
  const designations = useMemo(() => nameConductorLayers(evaluatedDesign.construction), [evaluatedDesign.construction])
  const plotWidthPx = Math.max(300, Math.min(680, widthPx))
  const strain = useMemo(
    () =>
      plotDocument === null || result.strainProfile.length === 0
        ? null
        : drawStrainPlot(result, zone, bend.insideFace, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: plotWidthPx,
            heightPx: PLOT_HEIGHT_PX,
            unit,
            designations,
          }),
    [plotDocument, result, zone, bend.insideFace, plotWidthPx, unit, designations],
  )
  const states = useMemo(
    () =>
      plotDocument === null
        ? null
        : drawStatePlot(result, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: plotWidthPx,
            heightPx: PLOT_HEIGHT_PX,
            unit,
            designations,
            isReversed: bend.motion === 'reversed',
          }),
    [plotDocument, result, bend.motion, plotWidthPx, unit, designations],
  )
  const life = useMemo(
    () =>
      plotDocument === null
        ? null
        : drawLifePlot(result, bend.insideRadiusMm, {
            document: plotDocument,
            palette: SCREEN_PALETTE,
            widthPx: plotWidthPx,
            heightPx: PLOT_HEIGHT_PX,
            unit,
          }),
    [plotDocument, result, bend.insideRadiusMm, plotWidthPx, unit],
  )
  const section = useMemo(
    () =>
      drawCrossSection(zone, {
        palette: SCREEN_PALETTE,
        unit,
        widthPx: plotWidthPx,
        designations,
        findMaterialName: (materialId) => findMaterial(evaluatedDesign, materialId)?.name ?? null,
        bend: { result, insideFace: bend.insideFace },
      }),
    [zone, unit, plotWidthPx, designations, evaluatedDesign, result, bend.insideFace],
  )
  return (
    <div ref={ref}>
      <div>
        {strain === null ? (
          <p className="empty">
            {result.states === null
              ? 'The strain plot needs a computed bend.'
              : states === null
                ? 'Strain is not drawn where the stated motion, fold or faces contradict each other.'
                : 'The plot through the thickness shows bending only, so it is left out where a load is stated.'}
          </p>
        ) : (
          <PictureView picture={strain} />
        )}
      </div>
      {states !== null && (
        <div>
          <PictureView picture={states} />
        </div>
      )}
      <div>
        {life === null ? (
          <p className="empty">
            {result.modelLimits.length > 0 && bend.use === 'dynamic'
              ? 'Life over radius is not drawn: the life of this bend is not known. The figures say why.'
              : bend.use === 'dynamic'
                ? 'The life curve needs the required cycles and a foil with fatigue data.'
                : 'Life over radius is computed for dynamic use.'}
          </p>
        ) : (
          <PictureView picture={life} />
        )}
      </div>
      <div>
        <PictureView picture={section} />
      </div>
    </div>
  )
}
