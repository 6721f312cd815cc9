'use client'

import { type ComponentProps, useEffect, useMemo, useRef, useState } from 'react'
import { Notice } from '@/app/_components/ui/notices'
import type { PictureFrame } from '@/lib/artwork'
import {
  choosePaths,
  colourOf,
  type DrawnLayer,
  inOrderOfPaint,
  type PointMm,
  type SizePx,
  UNIT_NM,
  type View,
  windowOf,
} from '@/lib/artwork-picture'
import { asCount, countOf } from '@/lib/engine/units'
import { viewAfterKey } from './keys'
import { makePainter, makePlainPainter, type Painter } from './painter'
import { PictureOverlay } from './picture-overlay'
import { useColours } from './use-colours'
import { usePointers } from './use-pointers'

interface PictureCanvasProps {
  readonly layers: readonly DrawnLayer[]
  readonly frame: PictureFrame
  readonly view: View
  readonly size: SizePx
  readonly setView: (view: View | null) => void
  readonly onPlace: (atMm: PointMm) => void
  readonly isMeasuring: boolean
  readonly overlay: Omit<ComponentProps<typeof PictureOverlay>, 'view' | 'size'>
}

const UNITS_PER_MM = 1e6 / UNIT_NM

/** The layers as they are seen, and what lies over them. Drawn when something changes, never in a loop. */
export function PictureCanvas(props: PictureCanvasProps) {
  const { layers, frame, view, size, setView, onPlace, isMeasuring, overlay } = props
  const host = useRef<HTMLDivElement>(null)
  const canvas = useRef<HTMLCanvasElement>(null)
  const [painter, setPainter] = useState<{ readonly painter: Painter; readonly isPlain: boolean } | null>(null)
  const [restored, setRestored] = useState(0)
  const colours = useColours(host)
  const pointers = usePointers({ view, size, setView, onClick: onPlace })

  // biome-ignore lint/correctness/useExhaustiveDependencies: a context that was given back needs a new painter.
  useEffect(() => {
    const element = canvas.current
    if (element === null) return
    const fast = makePainter(element)
    const made = fast ?? makePlainPainter(element)
    setPainter(made === null ? null : { painter: made, isPlain: fast === null })
    const hold = (event: Event) => event.preventDefault()
    const restore = () => setRestored((count) => count + 1)
    element.addEventListener('webglcontextlost', hold)
    element.addEventListener('webglcontextrestored', restore)
    return () => {
      element.removeEventListener('webglcontextlost', hold)
      element.removeEventListener('webglcontextrestored', restore)
      made?.dispose()
    }
  }, [restored])

  const chosen = useMemo(() => {
    const [minX, minY, maxX, maxY] = windowOf(view, size)
    const corners = [frame.toFiles([minX, minY]), frame.toFiles([maxX, maxY])]
    const inUnits = (index: 0 | 1, pick: (...numbers: number[]) => number) =>
      pick(...corners.map((corner) => corner[index])) * UNITS_PER_MM
    const window = [inUnits(0, Math.min), inUnits(1, Math.min), inUnits(0, Math.max), inUnits(1, Math.max)] as const
    return inOrderOfPaint(layers, view.isFromBelow).map((layer) => ({
      layer,
      chosen: choosePaths(layer, window, view.mmPerPx * UNITS_PER_MM),
    }))
  }, [layers, frame, view, size])

  useEffect(() => {
    const element = canvas.current
    if (element === null || painter === null || colours === null) return
    const ratio = window.devicePixelRatio
    const [width, height] = [Math.round(size.width * ratio), Math.round(size.height * ratio)]
    if (element.width !== width || element.height !== height) Object.assign(element, { width, height })
    painter.painter.paint({
      view,
      frame,
      layers: chosen.map(({ layer, chosen: runs }) => ({ layer, chosen: runs, colour: colours[colourOf(layer.head)] })),
    })
  }, [painter, colours, chosen, view, size, frame])

  const triangleCount = chosen.reduce((sum, each) => sum + each.chosen.triangleCount, 0)
  const tooSmallCount = chosen.reduce((sum, each) => sum + each.chosen.tooSmallCount, 0)
  return (
    <>
      {painter?.isPlain === true && (
        <Notice tone="plain">
          This browser has no WebGL 2. The layers are drawn by the plain canvas: the same picture, slower with many
          objects.
        </Notice>
      )}
      <div
        ref={host}
        className="artwork-view"
        role="application"
        aria-label={`Artwork ${view.isFromBelow ? 'from below, mirrored' : 'from above'}. What was found in it is listed in the table of findings.`}
        aria-describedby="artwork-keys"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the picture is moved by keys.
        tabIndex={0}
        data-painter={painter === null ? undefined : painter.isPlain ? 'plain canvas' : 'WebGL 2'}
        data-measures={isMeasuring || undefined}
        style={{ height: size.height }}
        onKeyDown={(event) => {
          if (event.ctrlKey || event.metaKey || event.altKey) return
          if (event.key === 'Enter') onPlace(view.middleMm)
          else if (event.key === '0') setView(null)
          else {
            const next = viewAfterKey(event.key, view, size)
            if (next === null) return
            setView(next)
          }
          event.preventDefault()
        }}
        {...pointers}
      >
        <canvas ref={canvas} />
        <PictureOverlay view={view} size={size} {...overlay} />
        <span className="artwork-middle" aria-hidden="true" />
      </div>
      <p className="small muted" data-triangles={triangleCount}>
        {countOf(triangleCount, 'triangle')} drawn
        {tooSmallCount === 0
          ? '.'
          : `; ${asCount(tooSmallCount)} pieces and gaps here are smaller than a pixel and are left out: zoom in to see them.`}
      </p>
    </>
  )
}
