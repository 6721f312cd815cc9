'use client'

import { useMemo, useState } from 'react'
import { useWidth } from '@/app/_components/engineering/pictures'
import { Button } from '@/app/_components/ui/button'
import { CheckboxField } from '@/app/_components/ui/choice-fields'
import { ChoiceGroup } from '@/app/_components/ui/choice-group'
import { Notice } from '@/app/_components/ui/notices'
import type { OnPlanFacts } from '@/lib/artwork'
import { makeFrame, type PictureFrame, spotInPicture } from '@/lib/artwork'
import {
  type BoxMm,
  boxOfLayers,
  type DrawnLayer,
  fitBox,
  inOrderOfPaint,
  isSeenFirst,
  type PointMm,
  UNIT_NM,
  type View,
  viewAt,
  zoomBy,
} from '@/lib/artwork-picture'
import type { ArtworkSpot } from '@/lib/engine/results'
import { FindingTable } from './finding-table'
import { LayerChoices } from './layer-choices'
import { PictureCanvas } from './picture-canvas'
import type { PictureFile, PictureFinding, PictureThread, PlacedFinding, PlanShapes } from './picture-types'
import { PlacePanel } from './place-panel'
import { useLayers } from './use-layers'
import './artwork-picture.css'

interface ArtworkPictureProps {
  readonly projectId: string
  readonly revisionId: string
  readonly registration: OnPlanFacts['registration']
  /** Null where no plan is drawn, or the artwork lies on none. */
  readonly plan: PlanShapes | null
  readonly findings: readonly PictureFinding[]
  readonly threads: readonly PictureThread[]
  /** What people added; empty where the reader may not comment. */
  readonly files: readonly PictureFile[]
  /** The place that somebody came to see. */
  readonly cameFor: ArtworkSpot | null
}

const [LEAST_HEIGHT_PX, MOST_HEIGHT_PX] = [300, 480]
/** So much is seen across the picture where a finding is shown: a land with its conductors. */
const ACROSS_FINDING_MM = 5
const ZOOM_FACTOR = 1.5
const MM_PER_UNIT = UNIT_NM / 1e6

const SIDES = [
  { value: 'above', label: 'From above' },
  { value: 'below', label: 'From below, mirrored' },
] as const

/** The layers of the artwork over the plan, with what was found in them. */
export function ArtworkPicture(props: ArtworkPictureProps) {
  const found = useLayers(props.revisionId)
  const frame = useMemo(() => makeFrame(props.registration), [props.registration])
  if (found.state === 'there') return <LayerPicture {...props} frame={frame} layers={found.layers} />
  return found.state === 'loading' ? (
    <p className="empty" role="status">
      Loading the layers…
    </p>
  ) : (
    <Notice tone="refused">
      The layers could not be loaded: {found.reason}. Open the page again to try once more.
    </Notice>
  )
}

interface LayerPictureProps extends ArtworkPictureProps {
  readonly frame: PictureFrame
  readonly layers: readonly DrawnLayer[]
}

function LayerPicture(props: LayerPictureProps) {
  const { projectId, revisionId, frame, layers, plan, files, cameFor } = props
  const { ref, widthPx } = useWidth<HTMLDivElement>(720)
  const size = useMemo(() => ({ width: widthPx, height: heightOf(widthPx) }), [widthPx])
  const [seen, setSeen] = useState<ReadonlySet<string>>(() => namesSeenFirst(layers))
  const [isPlanSeen, setPlanSeen] = useState(true)
  const findings = useMemo(() => placeFindings(props.findings, frame), [props.findings, frame])
  const cameTo = useMemo(() => (cameFor === null ? null : spotInPicture(frame, cameFor)), [cameFor, frame])
  const [chosen, setChosen] = useState<number | null>(
    () => findings.find(({ atMm }) => cameTo !== null && isSamePlace(atMm, cameTo))?.number ?? null,
  )
  const [mark, setMark] = useState<PointMm | null>(cameTo)
  const [measured, setMeasured] = useState<readonly PointMm[] | null>(null)
  const [isFromBelow, setFromBelow] = useState(false)
  const whole = useMemo(() => boxOf(layers, frame, plan), [layers, frame, plan])
  const fitted = useMemo(() => fitBox(whole, size, isFromBelow), [whole, size, isFromBelow])
  const [own, setOwn] = useState<View | null>(() =>
    cameTo === null ? null : viewAt(fitted, cameTo, ACROSS_FINDING_MM, size),
  )
  const view = own ?? fitted
  const setView = (next: View | null) => {
    setOwn(next)
    if (next !== null) setFromBelow(next.isFromBelow)
  }
  const shown = useMemo(() => layers.filter(({ head }) => seen.has(head.fileName)), [layers, seen])
  const threads = useMemo(
    () => props.threads.map(({ id, xMm, yMm }) => ({ id, atMm: frame.toPicture([xMm, yMm]) })),
    [props.threads, frame],
  )
  const show = (finding: PlacedFinding) => {
    setChosen(finding.number)
    setMark(finding.atMm)
    setView(viewAt(view, finding.atMm, ACROSS_FINDING_MM, size))
    ref.current?.scrollIntoView({ block: 'nearest' })
  }
  const takePlace = (atMm: PointMm) => {
    if (measured === null) setMark(atMm)
    else setMeasured(measured.length === 2 ? [atMm] : [...measured, atMm])
  }
  return (
    <div className="stack">
      <div className="artwork-picture">
        <div className="stack">
          <div className="row no-print">
            <ChoiceGroup
              label="Seen from"
              options={SIDES}
              value={view.isFromBelow ? 'below' : 'above'}
              onChange={(side) => setView({ ...view, isFromBelow: side === 'below' })}
            />
            <Button onPress={() => setView(zoomBy(view, ZOOM_FACTOR, view.middleMm))}>Zoom in</Button>
            <Button onPress={() => setView(zoomBy(view, 1 / ZOOM_FACTOR, view.middleMm))}>Zoom out</Button>
            <Button onPress={() => setOwn(null)}>Show all of it</Button>
            <button
              type="button"
              className="choice"
              aria-pressed={measured !== null}
              onClick={() => setMeasured(measured === null ? [] : null)}
            >
              Measure
            </button>
          </div>
          <div ref={ref}>
            <PictureCanvas
              layers={shown}
              frame={frame}
              view={view}
              size={size}
              setView={setView}
              onPlace={takePlace}
              isMeasuring={measured !== null}
              overlay={{ plan: isPlanSeen ? plan : null, findings, chosen, threads, mark, measured: measured ?? [] }}
            />
          </div>
          <p className="small muted" id="artwork-keys">
            Drag to move, Ctrl and wheel or two fingers to zoom. With the keyboard: arrow keys move, + and − zoom, 0
            shows all of it, F turns it over, Enter takes the place in the middle.
          </p>
        </div>
        <div className="stack">
          <PlacePanel
            projectId={projectId}
            revisionId={revisionId}
            frame={frame}
            mark={mark}
            measured={measured}
            files={filesToAsk(shown, files, view.isFromBelow)}
          />
          <LayerChoices layers={layers} seen={seen} onChange={setSeen} />
          {plan === null ? (
            <p className="small muted">No plan lies under the layers. Places are in the coordinates of the files.</p>
          ) : (
            <CheckboxField isSelected={isPlanSeen} onChange={setPlanSeen}>
              Outline, zones and bends of the plan
            </CheckboxField>
          )}
          {threads.length > 0 && <p className="small muted">Squares mark places of threads.</p>}
        </div>
      </div>
      <FindingTable projectId={projectId} revisionId={revisionId} findings={findings} chosen={chosen} onShow={show} />
    </div>
  )
}

const heightOf = (widthPx: number): number =>
  Math.min(MOST_HEIGHT_PX, Math.max(LEAST_HEIGHT_PX, Math.round(widthPx * 0.8)))

function namesSeenFirst(layers: readonly DrawnLayer[]): Set<string> {
  const first = layers.filter(({ head }) => isSeenFirst(head))
  // A set of which nobody knows the roles shows everything rather than nothing.
  return new Set((first.length === 0 ? layers : first).map(({ head }) => head.fileName))
}

const isSamePlace = (one: PointMm, other: PointMm): boolean => Math.hypot(one[0] - other[0], one[1] - other[1]) < 1e-3

function placeFindings(findings: readonly PictureFinding[], frame: PictureFrame): PlacedFinding[] {
  return findings.flatMap((finding, index) => {
    const atMm = spotInPicture(frame, finding.spot)
    return atMm === null ? [] : [{ ...finding, number: index + 1, atMm }]
  })
}

/** All of the part, or of the layers where no plan is drawn. */
function boxOf(layers: readonly DrawnLayer[], frame: PictureFrame, plan: PlanShapes | null): BoxMm {
  const points: PointMm[] = []
  if (plan === null) {
    const [minX, minY, maxX, maxY] = boxOfLayers(layers) ?? [0, 0, 1, 1]
    for (const corner of [
      [minX, minY],
      [maxX, maxY],
    ] as const)
      points.push(frame.toPicture([corner[0] * MM_PER_UNIT, corner[1] * MM_PER_UNIT]))
  } else {
    const [outer = []] = plan.part
    for (let at = 0; at + 1 < outer.length; at += 2) points.push([outer[at] ?? 0, outer[at + 1] ?? 0])
  }
  return points.reduce<BoxMm>(
    ([minX, minY, maxX, maxY], [x, y]) => [Math.min(minX, x), Math.min(minY, y), Math.max(maxX, x), Math.max(maxY, y)],
    [Infinity, Infinity, -Infinity, -Infinity],
  )
}

/** Files of the layers that are seen, the nearest first. A layer out of an archive is asked about with its archive, where there is one alone. */
function filesToAsk(shown: readonly DrawnLayer[], files: readonly PictureFile[], isFromBelow: boolean): PictureFile[] {
  const archives = files.filter(({ fileName }) => /\.zip$/i.test(fileName))
  const named = inOrderOfPaint(shown, isFromBelow)
    .reverse()
    .flatMap(({ head }) => {
      const own = files.find(({ fileName }) => fileName === head.fileName)
      return own ?? (archives.length === 1 ? archives : [])
    })
  // The archive of several layers is named once.
  return [...new Set(named)]
}
