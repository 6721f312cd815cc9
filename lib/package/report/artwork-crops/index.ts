import type { Column, Content } from 'pdfmake/interfaces'
import { makeFrame, spotInPicture } from '@/lib/artwork'
import { type DrawnLayer, readPicture } from '@/lib/artwork-picture'
import type { Outcome } from '@/lib/engine'
import { getOutcomeVerdict, VERDICT_WORDS } from '@/lib/engine'
import { groundOf } from '@/lib/engine/artwork-check'
import { countOf } from '@/lib/engine/units'
import { listItemStates } from '@/lib/review'
import type { PackageContent } from '../../content'
import { showPicture, TEXT_WIDTH_PT } from '../style'
import { formatLimit, formatQuantity } from '../words'
import { drawCrop } from './draw-crop'
import { type ItemCrops, layersConcerned, listCrops } from './list-crops'

const TITLE = '6  Checklist: places in the artwork'
const [A_ROW, GAP_PT] = [3, 11]
const CROP_PT = (TEXT_WIDTH_PT - (A_ROW - 1) * GAP_PT) / A_ROW
/** What is measured takes a twelfth of the crop's width; a long distance two fifths, so that both of its ends are in sight. Our choice. */
const [TIMES_SHORT, TIMES_LONG] = [12, 2.5]
const [LEAST_ACROSS_MM, SHORT_ACROSS_MM, MOST_ACROSS_MM, USUAL_ACROSS_MM] = [1.5, 10, 60, 6]

/** What artwork shows at a place, as it looks there: for each item the places that are not met, or the one with the least room. */
export function makeArtworkCrops(content: PackageContent): Content[] {
  const items = listCrops(listItemStates(content.snapshot))
  if (items.length === 0) return []
  const { artworkPicture } = content
  const head = (text: string): Content[] => [
    { text: TITLE, style: 'section' },
    { text, style: 'small', margin: [0, 0, 0, 2] },
  ]
  if (artworkPicture === null) {
    return head(
      `${countOf(
        items.reduce((sum, { shown, left }) => sum + shown.length + left.count, 0),
        'place',
      )} in the artwork; no crop is drawn, since the layers of these files have not been kept as a picture.`,
    )
  }
  const drawOne = makeDrawer(content, artworkPicture)
  let number = 0
  const blocks = items.map((each) => ({
    each,
    cells: each.shown.map((outcome) => {
      number += 1
      return drawOne(outcome, `Place ${number}`)
    }),
  }))
  return gatherSingle(blocks).flatMap(({ subheading, cells, after }, index) => {
    const [first = [], ...rows] = inRows(cells)
    const opening: Content = {
      stack: [
        ...(index === 0 ? head(INTRODUCTION) : []),
        ...(subheading === null ? [] : [{ text: subheading, style: 'subsection' }]),
        makeRow(first),
      ],
      unbreakable: true,
    }
    return [opening, ...rows.map(makeRow), ...after]
  })
}

interface Block {
  readonly each: ItemCrops
  readonly cells: readonly Content[]
}

interface Rows {
  readonly subheading: string | null
  readonly cells: readonly Content[]
  readonly after: readonly Content[]
}

/** Items with one crop stand beside each other, each under its question; those with several have rows of their own. */
function gatherSingle(blocks: readonly Block[]): Rows[] {
  const single = blocks.filter(({ cells }) => cells.length === 1)
  const several = blocks.filter(({ cells }) => cells.length > 1)
  const cells = single.map(({ each, cells: own }): Content => {
    const question: Content = { text: each.item.question, bold: true, fontSize: 8.5, margin: [0, 2, 0, 3] }
    return { stack: [question, ...own, ...sayLeft(each)] }
  })
  return [
    ...several.map((block) => ({
      subheading: block.each.item.question,
      cells: block.cells,
      after: sayLeft(block.each),
    })),
    ...(cells.length === 0 ? [] : [{ subheading: several.length === 0 ? null : 'One place each', cells, after: [] }]),
  ]
}

const INTRODUCTION =
  'From above, the place in the middle of the mark. Brown: the copper concerned, the nearest layer darkest; white: holes; dashed green: edges of a bend; dotted blue: films and stiffeners; black: outline. Where several places of an item are not met, the twelve worst are shown; where all are met, the one with the least room.'

function sayLeft({ left: { count, notMetCount } }: ItemCrops): Content[] {
  if (count === 0) return []
  const notMet = notMetCount === 0 ? 'all met' : `${notMetCount} of them not met`
  return [{ text: `${countOf(count, 'more place')} of this item, ${notMet}: results.json`, style: 'small' }]
}

function inRows<T>(cells: readonly T[]): T[][] {
  return Array.from({ length: Math.ceil(cells.length / A_ROW) }, (_, row) =>
    cells.slice(row * A_ROW, (row + 1) * A_ROW),
  )
}

function makeRow(cells: readonly Content[]): Content {
  const columns: Column[] = cells.map((cell) => ({ stack: [cell], width: CROP_PT }))
  return { columns, columnGap: GAP_PT, margin: [0, 2, 0, 6], unbreakable: true }
}

function makeDrawer(
  { snapshot: { design } }: PackageContent,
  { bytes, registration }: NonNullable<PackageContent['artworkPicture']>,
): (outcome: ItemCrops['shown'][number], title: string) => Content {
  const layers = readPicture(bytes).filter(({ head }) => head.leftOutReason === null)
  const frame = makeFrame(registration)
  const ground = registration === null ? null : groundOf(design)
  const ofRole = (role: string): DrawnLayer[] => layers.filter(({ head }) => head.role === role)
  return (outcome, title) => {
    const said = `${sayValues(outcome)}${outcome.summary}`
    const verdict = VERDICT_WORDS[getOutcomeVerdict(outcome)].word
    const caption: Content = {
      text: [{ text: `${title}, ${verdict}. `, bold: true }, said],
      fontSize: 7.5,
      margin: [0, 3, 0, 0],
    }
    const atMm = spotInPicture(frame, outcome.artworkAt)
    if (atMm === null) {
      return {
        stack: [
          { text: 'Not drawn: the artwork does not lie on the plan that the place is in.', style: 'small' },
          caption,
        ],
      }
    }
    const picture = drawCrop(
      {
        title: `${title}, ${verdict}`,
        said,
        atMm,
        acrossMm: acrossOf(outcome),
        ...layersConcerned(layers, outcome, design),
        holes: ofRole('holes'),
        profiles: ofRole('profile'),
        ground,
      },
      frame,
    )
    return { stack: [showPicture(picture, CROP_PT), caption] }
  }
}

/** Both values, where there are two and the reader may know them. */
function sayValues(outcome: Outcome): string {
  if (outcome.kind !== 'decided' && outcome.kind !== 'cannot-tell') return ''
  const { value, limit } = outcome
  return value === undefined || limit === undefined
    ? ''
    : `Found ${formatQuantity(value)}, limit ${formatLimit(limit)}. `
}

function acrossOf(outcome: Outcome): number {
  const value = 'value' in outcome ? (outcome.value ?? null) : null
  if (value === null || value.unit !== 'mm') return USUAL_ACROSS_MM
  const mm = Math.abs(value.value)
  const across = Math.max(Math.min(TIMES_SHORT * mm, SHORT_ACROSS_MM), TIMES_LONG * mm)
  return Math.min(MOST_ACROSS_MM, Math.max(LEAST_ACROSS_MM, across))
}
