import type { Design } from '@/lib/engine'
import type { Palette } from '../palette'
import { listDetailPlaces } from '../plan/detail-places'
import { layPlanFigure } from '../plan/lay-figure'
import { wrapText } from '../text-metrics'
import type { SheetDrawnPlan } from './contents'
import { nameDimensions, writeDimension } from './contents/plan-dimensions'
import type { SheetWords } from './contents/words'
import { chooseDetails, describeTearStops, layDetails } from './details'
import { FONT_MM, getLinesHeightMm, makeLines } from './marks'
import { SCALES } from './scales'
import { type LaidBlock, makeTitle, type Strip } from './strips'

/** Higher than this a view would push everything else off its sheet. */
const HIGHEST_MM = 190

/** The view of the plan on a sheet, at the greatest standard scale that fits, and below it what it does not name. */
export function layDrawnPlan(
  block: SheetDrawnPlan,
  design: Design,
  widthMm: number,
  roomMm: number,
  words: SheetWords,
  palette: Palette,
): LaidBlock {
  const places = listDetailPlaces(design, block.plan)
  const lay = (x: number, y: number, highest: number) =>
    layPlanFigure(design, block.plan, [x, y], {
      palette,
      perMm: 1,
      fontSize: FONT_MM.body,
      width: widthMm,
      highest,
      scales: SCALES.map(([, factor]) => factor),
      textOf: (dimension) => writeDimension(dimension, words),
      withRoutes: false,
      withPoints: true,
      detailsAt: (factor) => chooseDetails(places, factor).shown,
    })
  // Room for the sentence below: it names what found no place, which is known only then.
  const foot = getLinesHeightMm(3, FONT_MM.body)
  const highest = Math.min(HIGHEST_MM, roomMm - makeTitle(block.title, widthMm, palette).heightMm - foot)
  const first = lay(0, 0, highest)
  const scale = SCALES.find(([, factor]) => factor === first?.factor)?.[0]
  const head = makeTitle(scale === undefined ? block.title : `${block.title}, scale ${scale}`, widthMm, palette)
  const { shown, left } = chooseDetails(places, first?.factor ?? 1)
  const said = wrapText(
    [describeMissing(block, first?.leftOut ?? null), ...describeTearStops(places, left)].join(' '),
    widthMm,
    FONT_MM.body,
  )
  const strips: Strip[] = [
    {
      heightMm: first?.height ?? 0,
      draw: (x, y) => [...(lay(x, y, highest)?.nodes ?? [])],
    },
    ...said.map(
      (line): Strip => ({
        heightMm: getLinesHeightMm(1, FONT_MM.body),
        draw: (x, y) => makeLines([line], x, y, { fontMm: FONT_MM.body, isSoft: true }, palette),
      }),
    ),
  ]
  const details = layDetails(shown, { places, design, plan: block.plan, widthMm, words, palette })
  const title = `${block.title}: details`
  return {
    id: block.id,
    title: block.title,
    widthMm,
    head,
    headContinued: details.length === 0 ? head : makeTitle(title, widthMm, palette),
    strips: [...strips, ...details],
    leastStrips: strips.length,
  }
}

type LeftOut = NonNullable<ReturnType<typeof layPlanFigure>>['leftOut']

function describeMissing({ plan }: SheetDrawnPlan, leftOut: LeftOut | null): string {
  const names = nameDimensions(plan)
  const dimensions = (leftOut?.dimensionIds ?? []).flatMap((id) => names.get(id) ?? [])
  const list = (all: readonly string[]) =>
    all.length > 24 ? `${all.slice(0, 24).join(', ')} and ${all.length - 24} more` : all.join(', ')
  return [
    'Dash-dotted: bent away from the reader (ridge); dashed: towards the reader (valley). Hatched: stiffener. Numbers: points of the outline.',
    ...(leftOut !== null && leftOut.labels.length > 0
      ? [`In the tables alone, for lack of room: ${list(leftOut.labels)}.`]
      : []),
    ...(dimensions.length > 0 ? [`Dimensions in the table alone: ${list(dimensions)}.`] : []),
    ...(leftOut !== null && leftOut.offCount > 0
      ? [`Not shown, as it lies off the part: ${leftOut.offCount} of what the plan draws.`]
      : []),
  ].join(' ')
}
