import * as Plot from '@observablehq/plot'
import type { FlexTestSet } from '@/lib/engine/flex-tests'
import { type BoundedEstimate, fitLifeAtFraction, rankFailures } from '@/lib/engine/life'
import {
  asCount,
  digitsAsEntered,
  digitsOfEnteredLength,
  formatEnteredLength,
  getShownUnit,
  inSentence,
  type LengthUnit,
  withUnitInHead,
} from '@/lib/engine/units'
import type { Picture, PictureTable } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

/** Shares that the upright axis names, and at which the bounds are worked out. */
const SHARES_PCT = [1, 5, 10, 25, 50, 75, 90, 99]

interface FittedCondition {
  readonly radiusMm: number
  readonly failures: readonly { readonly cycles: number; readonly failureFraction: number }[]
  readonly survivors: readonly number[]
  readonly line: readonly (BoundedEstimate & { readonly sharePct: number })[]
}

/** On this axis a Weibull distribution is a straight line whose rise is its slope. */
const rise = (failureFraction: number): number => Math.log(-Math.log1p(-failureFraction))

/**
 * Weibull plot of a set of flex tests: failures at their median ranks, the fitted line with its 90 % bounds, survivors as marks along the foot
 * at the cycles at which they were taken out. Radii of one set share their slope, so that their lines are parallel.
 *
 * @returns null where nothing could be fitted
 */
export function drawWeibullPlot(
  set: FlexTestSet,
  { unit: chosen = 'mm', ...frame }: PlotFrame & { readonly unit?: LengthUnit },
): Picture | null {
  const unit = getShownUnit('mm', chosen)
  const conditions = listFitted(set)
  if (set.fit === null || conditions.length === 0) return null
  const { palette } = frame
  const cycles = conditions.flatMap(({ failures, survivors, line }) => [
    ...failures.map((each) => each.cycles),
    ...survivors,
    ...line.flatMap(({ value, low, high }) => [value, low ?? value, high ?? value]),
  ])
  const domain: [number, number] = [
    10 ** Math.floor(Math.log10(Math.max(1, Math.min(...cycles)))),
    10 ** Math.ceil(Math.log10(Math.max(...cycles))),
  ]
  const inDomain = (value: number) => Math.min(domain[1], Math.max(domain[0], value))
  const foot = rise(0.006)
  return makePlotPicture(
    frame,
    { title: `Weibull plot, set ${set.name}`, description: describe(set), table: listSpecimenRows(set, unit) },
    {
      marginLeft: 58,
      marginRight: 70,
      marginBottom: 40,
      marginTop: 18,
      x: {
        type: 'log',
        domain,
        label: 'cycles to failure',
        labelArrow: 'none',
        labelAnchor: 'center',
        ticks: Math.max(1, Math.min(8, Math.round(Math.log10(domain[1] / domain[0])))),
        tickFormat: formatPower,
      },
      y: {
        domain: [foot, rise(0.995)],
        label: 'failed, %',
        labelArrow: 'none',
        ticks: SHARES_PCT.map((sharePct) => rise(sharePct / 100)),
        tickFormat: (value: number) => digitsAsEntered(Math.round(100 * -Math.expm1(-Math.exp(value)))),
      },
      marks: [
        Plot.gridY(
          SHARES_PCT.map((sharePct) => rise(sharePct / 100)),
          { stroke: palette.hairline, strokeOpacity: 0.5 },
        ),
        ...conditions.flatMap(({ radiusMm, failures, survivors, line }, at) => {
          // Each at a height of its own, since lines of near radii lie close together.
          const last = line.at(-1 - (at % 4))
          return [
            ...(['low', 'high'] as const).map((end) =>
              Plot.line(
                line.filter((point) => point[end] !== null),
                {
                  x: (point) => inDomain(point[end] ?? point.value),
                  y: ({ sharePct }) => rise(sharePct / 100),
                  stroke: palette.strain,
                  strokeWidth: 1,
                  strokeDasharray: '3 3',
                },
              ),
            ),
            Plot.line(line, {
              x: ({ value }) => inDomain(value),
              y: ({ sharePct }) => rise(sharePct / 100),
              stroke: palette.strain,
              strokeWidth: 1.8,
            }),
            Plot.dot(failures, {
              x: (each) => each.cycles,
              y: (each) => rise(each.failureFraction),
              r: 3.5,
              fill: palette.strain,
              stroke: palette.paper,
            }),
            Plot.dot(survivors, {
              x: (value: number) => value,
              y: foot,
              dy: -6,
              symbol: 'triangle',
              r: 4,
              fill: palette.paper,
              stroke: palette.ink,
              strokeWidth: 1.4,
            }),
            ...(last === undefined
              ? []
              : [
                  Plot.text([last], {
                    x: ({ value }) => inDomain(value),
                    y: ({ sharePct }) => rise(sharePct / 100),
                    text: () => `R ${formatEnteredLength(radiusMm, 'mm', unit)}`,
                    textAnchor: 'start',
                    dx: 5,
                    fill: palette.ink,
                  }),
                ]),
          ]
        }),
      ],
    },
  )
}

function listFitted({ conditions }: FlexTestSet): FittedCondition[] {
  const fitted = conditions.filter((condition) => condition.fitted !== null)
  const lists = fitted.map(({ specimens }) => specimens)
  return fitted.map(({ insideRadiusMm, specimens }, at) => ({
    radiusMm: insideRadiusMm,
    failures: rankFailures(specimens),
    survivors: specimens.filter(({ hasSurvived }) => hasSurvived).map(({ cycles }) => cycles),
    line: SHARES_PCT.map((sharePct) => ({ sharePct, ...fitLifeAtFraction(lists, at, sharePct / 100) })),
  }))
}

function describe({ name, fit, specimens, failures }: FlexTestSet): string {
  const count = `${asCount(specimens)} specimens, ${asCount(failures)} failed`
  if (fit === null) return `Set ${name}: ${count}.`
  const { value, low, high } = fit.slope
  const bounds = `${low === null ? 'no lower bound' : inSentence(low)} to ${high === null ? 'no upper bound' : inSentence(high)}`
  return `Set ${name}: ${count}. Slope ${inSentence(value)}, 90 % bounds ${bounds}. Points stand at median ranks, triangles are survivors; dashed lines bound the life at each share.`
}

/** The table behind the plot: every specimen, with the rank of those that failed. */
function listSpecimenRows(set: FlexTestSet, unit: LengthUnit): PictureTable {
  return {
    caption: `Specimens of set ${set.name}`,
    columns: [
      { key: 'specimen', label: 'Specimen', numeric: false },
      { key: 'radius', label: withUnitInHead('Inside radius', unit), numeric: true },
      { key: 'cycles', label: 'Cycles', numeric: true },
      { key: 'result', label: 'Result', numeric: false },
      { key: 'rank', label: 'Median rank, %', numeric: true },
    ],
    rows: set.conditions.flatMap(({ insideRadiusMm, specimens }) => {
      const inOrder = specimens.toSorted((a, b) => a.cycles - b.cycles || Number(a.hasSurvived) - Number(b.hasSurvived))
      const ranks = rankFailures(specimens)
      let failed = 0
      return inOrder.map(({ specimen, cycles, hasSurvived }) => {
        const rank = hasSurvived ? undefined : ranks[failed]
        if (!hasSurvived) failed += 1
        return {
          specimen,
          radius: digitsOfEnteredLength(insideRadiusMm, 'mm', unit),
          cycles: asCount(cycles),
          result: hasSurvived ? 'survived' : 'failed',
          rank: rank === undefined ? '' : inSentence(Math.round(1000 * rank.failureFraction) / 10),
        }
      })
    }),
  }
}

/** Labels whole powers of ten only. */
function formatPower(value: number): string {
  const exponent = Math.log10(value)
  return Math.abs(exponent - Math.round(exponent)) > 1e-6 ? '' : digitsAsEntered(10 ** Math.round(exponent))
}
