'use client'

import { useMemo, useState } from 'react'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawCrossSection, drawPartSection, nameConductorLayers, SCREEN_PALETTE } from '@/lib/drawing'
import { findMaterial } from '@/lib/engine'
import { useDraft } from '../draft'
import { PictureView, useWidth } from '../pictures'

/** Width the server draws at, before the browser has measured: near what a desktop gives. */
const FIRST_WIDTH_PX = 560

/** The section along the part and the section of one zone, redrawn with every change that can be evaluated. */
export function SectionDrawings() {
  const { live } = useDraft()
  const { unit } = useLengthUnit()
  const { ref, widthPx } = useWidth<HTMLDivElement>(FIRST_WIDTH_PX)
  const { evaluation, evaluatedDesign } = live
  const [chosenZoneId, setChosenZoneId] = useState<string | null>(null)
  const zone =
    evaluation.zones.find((candidate) => candidate.zoneId === chosenZoneId) ??
    evaluation.zones.find((candidate) => candidate.kind === 'flex') ??
    evaluation.zones[0]
  const designations = useMemo(() => nameConductorLayers(evaluatedDesign.construction), [evaluatedDesign.construction])
  const partSection = useMemo(
    () =>
      evaluation.zones.length === 0
        ? null
        : drawPartSection(evaluatedDesign.construction, evaluation.zones, {
            palette: SCREEN_PALETTE,
            unit,
            widthPx,
            designations,
          }),
    [evaluatedDesign, evaluation, designations, unit, widthPx],
  )
  const zoneSection = useMemo(() => {
    if (zone === undefined || zone.layers.length === 0) return null
    const bend = evaluatedDesign.bends.find((candidate) => candidate.zoneId === zone.zoneId)
    const result = bend === undefined ? undefined : evaluation.bends.find((candidate) => candidate.bendId === bend.id)
    return drawCrossSection(zone, {
      palette: SCREEN_PALETTE,
      unit,
      widthPx: Math.max(300, widthPx),
      designations,
      findMaterialName: (materialId) => findMaterial(evaluatedDesign, materialId)?.name ?? null,
      ...(bend === undefined || result === undefined || result.leaves.length === 0
        ? {}
        : { bend: { result, insideFace: bend.insideFace } }),
    })
  }, [evaluatedDesign, evaluation, zone, designations, unit, widthPx])
  return (
    <div ref={ref}>
      {partSection === null ? (
        <p className="empty">The section appears here as soon as a zone holds a layer.</p>
      ) : (
        <PictureView picture={partSection} />
      )}
      {zone !== undefined && (
        <div className="no-print">
          <ChoiceGroup
            label="Section of zone"
            options={evaluation.zones.map(({ zoneId, name }) => ({ value: zoneId, label: name }))}
            value={zone.zoneId}
            onChange={setChosenZoneId}
          />
        </div>
      )}
      {zoneSection !== null && <PictureView picture={zoneSection} />}
    </div>
  )
}
