import type { Design, Features } from '../../../design'
import { inSentence } from '../../../units'
import { type Move, type Mover, placeId, roundUp } from './move'

type List = 'conductors' | 'holes' | 'pads' | 'outlineCorners' | 'coverlayOpenings' | 'stiffeners' | 'components'

/** A stated number that gets what its limit asks for. */
interface Entered {
  readonly place: string
  readonly list: List
  readonly field: string
  readonly title: string
}

/** By limit, the number of the features that is held against it. */
const ENTERED: Readonly<Record<string, Entered>> = {
  conductorWidthByCopperMm: { place: 'conductor', list: 'conductors', field: 'widthMm', title: 'Wider conductor' },
  conductorWidthMm: { place: 'conductor', list: 'conductors', field: 'widthMm', title: 'Wider conductor' },
  conductorSpaceByCopperMm: { place: 'conductor', list: 'conductors', field: 'spaceMm', title: 'Wider space' },
  conductorSpaceMm: { place: 'conductor', list: 'conductors', field: 'spaceMm', title: 'Wider space' },
  voltageSpaceMm: { place: 'conductor', list: 'conductors', field: 'spaceMm', title: 'Wider space' },
  coverlayCaptureMm: { place: 'pad', list: 'pads', field: 'coverlayCaptureMm', title: 'More coverlay on the land' },
  padAnchorCount: { place: 'pad', list: 'pads', field: 'anchorCount', title: 'Spurs under the coverlay' },
  holePlatingUm: { place: 'hole', list: 'holes', field: 'wallPlatingUm', title: 'More copper in the hole' },
  cornerInsideRadiusMm: {
    place: 'corner',
    list: 'outlineCorners',
    field: 'insideRadiusMm',
    title: 'Larger corner radius',
  },
  coverlayWebMm: { place: 'coverlay-opening', list: 'coverlayOpenings', field: 'webMm', title: 'Wider coverlay web' },
  stiffenerOverlapMm: {
    place: 'stiffener',
    list: 'stiffeners',
    field: 'coverlayOverlapMm',
    title: 'Longer stiffener',
  },
  transitionStripMm: {
    place: 'hole',
    list: 'holes',
    field: 'transitionDistanceMm',
    title: 'Hole away from the rigid edge',
  },
  holeToBendMm: { place: 'hole', list: 'holes', field: 'nearestBend', title: 'Hole away from the bend' },
  openingToBendMm: {
    place: 'coverlay-opening',
    list: 'coverlayOpenings',
    field: 'nearestBend',
    title: 'Coverlay opening away from the bend',
  },
  componentToBendMm: {
    place: 'component',
    list: 'components',
    field: 'nearestBend',
    title: 'Component away from the bend',
  },
}

/** A number that misses its limit gets the limit. What the plan draws is moved there: a number beside it would change nothing. */
export const enterNumber: Mover = function* (failure, { design }) {
  const { outcome } = failure
  const entered = ENTERED[outcome.limit.key]
  const id = entered === undefined ? null : placeId(failure, entered.place)
  if (entered === undefined || id === null) return
  const entry = design.features[entered.list].find((each) => each.id === id)
  if (entry === undefined) return
  const wanted = outcome.limit.value
  const before = readField(entry, entered.field)
  yield {
    id: `${entered.field}:${id}`,
    title: entered.title,
    detail: `${entry.name}: ${before === null ? 'not stated' : inSentence(before, outcome.limit.unit)} to ${inSentence(wanted, outcome.limit.unit)}`,
    relaxes: null,
    cautions: [],
    design: withEntry(design, entered.list, id, entered.field, wanted),
  } satisfies Move
}

function readField(entry: object, field: string): number | null {
  const value = (entry as Readonly<Record<string, unknown>>)[field]
  if (typeof value === 'number') return value
  return field === 'nearestBend' && typeof value === 'object' && value !== null
    ? ((value as { distanceMm?: number }).distanceMm ?? null)
    : null
}

function withEntry(design: Design, list: List, id: string, field: string, wanted: number): Design {
  const entries = design.features[list].map((entry) => {
    if (entry.id !== id) return entry
    const present = (entry as Readonly<Record<string, unknown>>)[field]
    const value = field === 'nearestBend' ? { ...(present as object), distanceMm: wanted } : wanted
    return { ...entry, [field]: value }
  })
  return { ...design, features: { ...design.features, [list]: entries } as Features }
}

/** Tapers as they are drawn, shortest first, in mm. Our choice. */
const TAPERS_MM = [0.25, 0.5, 0.75, 1, 1.5, 2, 3, 4, 6, 8, 10]

/** A step in width spread over a taper. */
export const taperStep: Mover = function* (failure, { design }) {
  const id = placeId(failure, 'width-step')
  const step = design.features.widthSteps.find((each) => each.id === id)
  if (step === undefined) return
  for (const taperLengthMm of TAPERS_MM) {
    if (taperLengthMm <= (step.taperLengthMm ?? 0)) continue
    yield {
      id: `taper:${step.id}`,
      title: 'Longer taper',
      detail: `${step.name}: taper ${inSentence(step.taperLengthMm ?? 0, 'mm')} to ${inSentence(taperLengthMm, 'mm')}`,
      relaxes: null,
      cautions: [],
      design: {
        ...design,
        features: {
          ...design.features,
          widthSteps: design.features.widthSteps.map((each) =>
            each.id === step.id ? { ...each, taperLengthMm } : each,
          ),
        },
      },
    }
  }
}

/** A land round a drilled hole grows by twice what its ring lacks. */
export const enlargeLand: Mover = function* (failure, { design }) {
  const { outcome } = failure
  const id = placeId(failure, 'hole')
  const hole = design.features.holes.find((each) => each.id === id)
  if (hole === undefined || hole.landMm === null || !outcome.limit.key.startsWith('annularRing')) return
  const landMm = roundUp(hole.landMm - 2 * outcome.margin, 0.01)
  yield {
    id: `land:${hole.id}`,
    title: 'Larger land',
    detail: `${hole.name}: land ${inSentence(hole.landMm, 'mm')} to ${inSentence(landMm, 'mm')}`,
    relaxes: null,
    cautions: ['Larger lands take room from what passes between them.'],
    design: {
      ...design,
      features: {
        ...design.features,
        holes: design.features.holes.map((each) => (each.id === hole.id ? { ...each, landMm } : each)),
      },
    },
  }
}
