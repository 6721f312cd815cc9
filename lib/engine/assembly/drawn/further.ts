import type { Plan, PlanMeasures } from '@/lib/plan'
import type { Design, Features } from '../../design'
import { asMm, type Pen, withFields } from './pen'

/** What the plan tells of contact ends, spurs, ends of the coverlay, markings and the array. */
export function drawFurther(design: Design, plan: Plan, measures: PlanMeasures, pen: Pen): Design {
  const { features } = design
  return {
    ...design,
    brief: drawBrief(design.brief, plan, pen),
    features: {
      ...features,
      connectors: features.connectors.map((connector, index) => drawConnector(connector, index, measures, pen)),
      pads: features.pads.map((pad, index) => drawPad(pad, index, measures, pen)),
      stiffeners: features.stiffeners.map((stiffener, index) => drawOverlap(stiffener, index, measures, pen)),
    },
  }
}

type Connector = Features['connectors'][number]

/** A connector that is drawn at several ends has its widest pitch and its least room; ends that differ are told by what was stated. */
function drawConnector(connector: Connector, index: number, measures: PlanMeasures, pen: Pen): Connector {
  const ends = measures.ends.filter(({ connectorId }) => connectorId === connector.id)
  const fields: Partial<Connector> = {}
  for (const [key, words, values] of [
    ['pitch', 'pitch of the contacts of', ends.map(({ pitchMm }) => pitchMm)],
    ['endWidth', 'width of', ends.map(({ endWidthMm }) => endWidthMm)],
    ['edgeToContact', 'distance of the outermost contact from the edge of', ends.map((end) => end.edgeToContactMm)],
  ] as const) {
    const known = values.flatMap((value) => value ?? [])
    const [first] = known
    if (first === undefined || known.length < ends.length) continue
    if (Math.max(...known) - Math.min(...known) > 1e-6) continue
    const drawn = asMm(first)
    const fit = connector[key]
    pen.note({
      path: ['features', 'connectors', index, key, 'partMm'],
      what: `${words} ${connector.name}`,
      unit: 'mm',
      stated: fit.partMm,
      drawn,
      places: [{ kind: 'connector', id: connector.id, name: connector.name }],
    })
    if (fit.partMm !== drawn) fields[key] = { ...fit, partMm: drawn }
  }
  return withFields(connector, fields)
}

function drawPad(
  pad: Features['pads'][number],
  index: number,
  { anchors }: PlanMeasures,
  pen: Pen,
): Features['pads'][number] {
  const drawn = anchors.get(pad.id)
  // Lands without a spur are drawn as often by those who leave spurs to the artwork: none drawn says nothing.
  if (drawn === undefined || drawn === 0) return pad
  pen.note({
    path: ['features', 'pads', index, 'anchorCount'],
    what: `spurs of ${pad.name}`,
    unit: null,
    stated: pad.anchorCount,
    drawn,
    places: [{ kind: 'pad', id: pad.id, name: pad.name }],
  })
  return withFields(pad, pad.anchorCount === drawn ? {} : { anchorCount: drawn })
}

function drawOverlap(
  stiffener: Features['stiffeners'][number],
  index: number,
  { overlapsMm }: PlanMeasures,
  pen: Pen,
): Features['stiffeners'][number] {
  const measured = overlapsMm.get(stiffener.id)
  if (measured === undefined) return stiffener
  const drawn = asMm(measured)
  pen.note({
    path: ['features', 'stiffeners', index, 'coverlayOverlapMm'],
    what: `overlap of ${stiffener.name} with the end of the coverlay`,
    unit: 'mm',
    stated: stiffener.coverlayOverlapMm,
    drawn,
    places: [{ kind: 'stiffener', id: stiffener.id, name: stiffener.name }],
  })
  return withFields(stiffener, stiffener.coverlayOverlapMm === drawn ? {} : { coverlayOverlapMm: drawn })
}

function drawBrief(brief: Design['brief'], { array, markings }: Plan, pen: Pen): Design['brief'] {
  const note = <T extends number | boolean>(
    path: readonly string[],
    what: string,
    unit: 'mm' | null,
    stated: T | null,
    drawn: T,
  ) =>
    pen.note({
      path: ['brief', ...path],
      what,
      unit,
      stated,
      drawn,
      places: [{ kind: 'brief', id: 'brief', name: 'Brief' }],
    })
  const arrayFields: Partial<Design['brief']['array']> = {}
  if (array !== null) {
    const partCount = array.columns * array.rows
    note(['array', 'partCount'], 'parts of the array', null, brief.array.partCount, partCount)
    arrayFields.partCount = partCount
    if (array.frameMm !== null && array.frameMm > 0) {
      note(['array', 'frameWidthMm'], 'width of the array’s frame', 'mm', brief.array.frameWidthMm, array.frameMm)
      arrayFields.frameWidthMm = array.frameMm
    }
    // Fiducials of the frame may come with the panel: what is stated stays, and the plan is held against it.
    if (brief.array.fiducials !== null || array.fiducials.length > 0) {
      note(['array', 'fiducials'], 'fiducials of the array', null, brief.array.fiducials, array.fiducials.length > 0)
    }
  }
  const heights = markings.flatMap(({ heightMm }) => heightMm ?? [])
  const markingFields: Partial<Design['brief']['marking']> = {}
  // One whose height is not drawn may be the smallest.
  if (heights.length > 0 && heights.length === markings.length) {
    const letterHeightMm = Math.min(...heights)
    note(['marking', 'letterHeightMm'], 'height of the letters', 'mm', brief.marking.letterHeightMm, letterHeightMm)
    markingFields.letterHeightMm = letterHeightMm
  }
  return withFields(brief, {
    ...(differs(brief.array, arrayFields) ? { array: withFields(brief.array, arrayFields) } : {}),
    ...(differs(brief.marking, markingFields) ? { marking: withFields(brief.marking, markingFields) } : {}),
  })
}

const differs = <T extends object>(entry: T, fields: Partial<T>): boolean =>
  (Object.keys(fields) as (keyof T)[]).some((key) => entry[key] !== fields[key])
