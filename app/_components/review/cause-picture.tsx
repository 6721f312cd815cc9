'use client'

import { useMemo, useState } from 'react'
import { PictureView, usePlotDocument, useWidth } from '@/app/_components/engineering/pictures'
import { useLengthUnit } from '@/app/_components/ui/unit-context'
import { drawCrossSection, drawStrainPlot, nameConductorLayers, type Picture, SCREEN_PALETTE } from '@/lib/drawing'
import { type BendResult, type Design, findMaterial, type ZoneResult } from '@/lib/engine'
import type { Cause } from '@/lib/review'

interface CausePictureProps {
  readonly cause: Cause
  readonly design: Design
  readonly bends: readonly BendResult[]
  readonly zones: readonly ZoneResult[]
  /** Drawn at once; the others when somebody asks. */
  readonly isOpen: boolean
}

const WIDTH_PX = { least: 280, most: 520 }
const HEIGHT_PX = 260

/** Of a bend the strain through its thickness, of a zone its section; nothing where the cause has no such place. */
export function CausePicture({ cause, isOpen, ...rest }: CausePictureProps) {
  const [isShown, setIsShown] = useState(isOpen)
  const [place] = cause.places
  if (place === undefined || (cause.at !== 'bend' && cause.at !== 'zone')) return null
  return (
    <details className="cause-picture" open={isOpen} onToggle={(event) => event.currentTarget.open && setIsShown(true)}>
      <summary>{cause.at === 'bend' ? 'Strain through the thickness' : 'Section'}</summary>
      {isShown && <Drawn kind={cause.at} placeId={place.id} {...rest} />}
    </details>
  )
}

interface DrawnProps extends Omit<CausePictureProps, 'cause' | 'isOpen'> {
  readonly kind: 'bend' | 'zone'
  readonly placeId: string
}

function Drawn({ kind, placeId, design, bends, zones }: DrawnProps) {
  const { unit } = useLengthUnit()
  const plotDocument = usePlotDocument()
  const { ref, widthPx } = useWidth<HTMLDivElement>(WIDTH_PX.most)
  const width = Math.max(WIDTH_PX.least, Math.min(WIDTH_PX.most, widthPx))
  const picture = useMemo((): Picture | null => {
    const designations = nameConductorLayers(design.construction)
    const bend = kind === 'bend' ? design.bends.find(({ id }) => id === placeId) : undefined
    const result = bend === undefined ? undefined : bends.find(({ bendId }) => bendId === bend.id)
    const zone = zones.find(({ zoneId }) => zoneId === (bend?.zoneId ?? placeId))
    if (zone === undefined || plotDocument === null) return null
    const options = { palette: SCREEN_PALETTE, widthPx: width, unit, designations }
    if (bend !== undefined && result !== undefined && result.strainProfile.length > 0) {
      return drawStrainPlot(result, zone, bend.insideFace, { ...options, document: plotDocument, heightPx: HEIGHT_PX })
    }
    return drawCrossSection(zone, {
      ...options,
      findMaterialName: (materialId) => findMaterial(design, materialId)?.name ?? null,
      ...(bend === undefined || result === undefined ? {} : { bend: { result, insideFace: bend.insideFace } }),
    })
  }, [kind, placeId, design, bends, zones, unit, plotDocument, width])
  return <div ref={ref}>{picture !== null && <PictureView picture={picture} />}</div>
}
