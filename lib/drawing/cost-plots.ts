import * as Plot from '@observablehq/plot'
import { asComputed, asCount, digitsAsComputed } from '@/lib/engine/units'
import type { Cost } from '@/lib/fabrication'
import type { Picture } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

/** Height of one bar with its gap, and of what stands round the bars. */
const BAR_PX = 19
const FRAME_PX = 44
const LABEL_WIDTH_PX = 230
const NARROW_LABEL_WIDTH_PX = 150

const inPct = (fraction: number): string => asComputed(100 * fraction, 'sharePct')

/** Share of each process step in the cost of a good part: bars in the order of work, with their numbers. */
export function drawCostShares(cost: Cost, title: string, frame: Omit<PlotFrame, 'heightPx'>): Picture {
  const { palette } = frame
  const bars = cost.steps.map(({ step, shareFraction }, at) => ({
    key: `${at}`,
    name: step.name,
    share: shareFraction,
    isMaterial: step.group === 'materials',
  }))
  const names = new Map(bars.map(({ key, name }) => [key, name]))
  const largest = [...bars].sort((a, b) => b.share - a.share).slice(0, 3)
  const marginLeft = frame.widthPx < 520 ? NARROW_LABEL_WIDTH_PX : LABEL_WIDTH_PX
  const longest = Math.floor(marginLeft / 6.2)
  return makePlotPicture(
    { ...frame, heightPx: FRAME_PX + BAR_PX * bars.length },
    {
      title,
      description: `Largest: ${largest.map(({ name, share }) => `${name} ${inPct(share)}`).join(', ')}. Sheet materials are drawn lighter.`,
      table: {
        caption: title,
        columns: [
          { key: 'step', label: 'Step', numeric: false },
          { key: 'count', label: 'How often', numeric: true },
          { key: 'index', label: 'Cost index per good part', numeric: true },
          { key: 'share', label: 'Share', numeric: true },
        ],
        rows: [
          ...cost.steps.map(({ step, count, indexPerGoodPart, shareFraction }) => ({
            step: step.name,
            count: String(count),
            index: digitsAsComputed(indexPerGoodPart, 'costIndexPart'),
            share: inPct(shareFraction),
          })),
          {
            step: 'Together',
            count: '',
            index: digitsAsComputed(cost.indexPerGoodPart, 'costIndexPart'),
            share: inPct(1),
          },
        ],
      },
    },
    {
      marginLeft,
      marginRight: 52,
      marginTop: 4,
      marginBottom: 34,
      x: { label: 'share of the cost, %', labelArrow: 'none', labelAnchor: 'center', percent: true, ticks: 5 },
      y: {
        domain: bars.map(({ key }) => key),
        label: null,
        tickSize: 0,
        tickFormat: (key: string) => shorten(names.get(key) ?? '', longest),
      },
      marks: [
        Plot.gridX({ stroke: palette.hairline, strokeOpacity: 0.5, ticks: 5 }),
        Plot.barX(bars, {
          x: 'share',
          y: 'key',
          fill: (bar: (typeof bars)[number]) => (bar.isMaterial ? palette.film : palette.strain),
          stroke: palette.ink,
          strokeWidth: 0.5,
          insetTop: 3,
          insetBottom: 3,
        }),
        Plot.text(bars, {
          x: 'share',
          y: 'key',
          text: (bar: (typeof bars)[number]) => inPct(bar.share),
          textAnchor: 'start',
          dx: 4,
          fill: palette.ink,
        }),
        Plot.ruleX([0], { stroke: palette.inkSoft }),
      ],
    },
  )
}

export interface QuantityPoint {
  readonly quantity: number
  readonly indexPerGoodPart: number
}

/** Cost of a good part over the quantity, both logarithmic; the quantity that the page prices for as a ring. */
export function drawCostOverQuantity(
  points: readonly QuantityPoint[],
  own: QuantityPoint | null,
  title: string,
  frame: PlotFrame,
): Picture {
  const { palette } = frame
  const [first, last] = [points[0], points.at(-1)]
  return makePlotPicture(
    frame,
    {
      title,
      description:
        first === undefined || last === undefined
          ? 'The part does not fit on any panel.'
          : `Set-up is shared by the order: the index is ${digitsAsComputed(first.indexPerGoodPart / last.indexPerGoodPart, 'costTimes')} times as high for ${asCount(first.quantity)} as for ${asCount(last.quantity)} good parts.`,
      table: {
        caption: title,
        columns: [
          { key: 'quantity', label: 'Good parts', numeric: true },
          { key: 'index', label: 'Cost index per good part', numeric: true },
        ],
        rows: points.map(({ quantity, indexPerGoodPart }) => ({
          quantity: asCount(quantity),
          index: digitsAsComputed(indexPerGoodPart, 'costIndex'),
        })),
      },
    },
    {
      marginLeft: 52,
      marginRight: 34,
      marginTop: 18,
      marginBottom: 40,
      x: {
        type: 'log',
        label: 'good parts ordered',
        labelArrow: 'none',
        labelAnchor: 'center',
        ticks: 5,
        tickFormat: formatPowerTick,
      },
      y: {
        type: 'log',
        label: 'index for each good part',
        labelArrow: 'none',
        ticks: 5,
        tickFormat: (value: number) => digitsAsComputed(value, 'tick'),
      },
      marks: [
        Plot.gridY({ stroke: palette.hairline, strokeOpacity: 0.5, ticks: 5 }),
        Plot.line(points, { x: 'quantity', y: 'indexPerGoodPart', stroke: palette.strain, strokeWidth: 1.8 }),
        Plot.dot(points, { x: 'quantity', y: 'indexPerGoodPart', r: 2, fill: palette.strain }),
        ...(own === null
          ? []
          : [
              Plot.dot([own], {
                x: 'quantity',
                y: 'indexPerGoodPart',
                r: 4.5,
                fill: palette.paper,
                stroke: palette.ink,
                strokeWidth: 1.6,
              }),
              Plot.text([own], {
                x: 'quantity',
                y: 'indexPerGoodPart',
                text: () => `${asCount(own.quantity)} priced here`,
                textAnchor: 'start',
                dx: 8,
                dy: -8,
                fill: palette.ink,
              }),
            ]),
      ],
    },
  )
}

function shorten(text: string, longest: number): string {
  return text.length <= longest ? text : `${text.slice(0, longest - 1)}…`
}

/** Labels whole powers of ten only. */
function formatPowerTick(value: number): string {
  const exponent = Math.log10(value)
  return Math.abs(exponent - Math.round(exponent)) > 1e-6 ? '' : asCount(Math.round(value))
}
