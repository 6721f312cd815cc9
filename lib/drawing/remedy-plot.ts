import * as Plot from '@observablehq/plot'
import { callByName, type LengthUnit, type RemedyReport, type RemedyState } from '@/lib/engine'
import {
  digitsAsComputed,
  digitsOfEnteredLength,
  digitsOfLength,
  getShownUnit,
  getUnitSymbol,
  lengthFromUm,
  umFromLength,
  withUnitInHead,
} from '@/lib/engine/units'
import { type Box, type LabelRequest, placeLabels } from './label-places'
import type { Picture, PictureTable } from './picture'
import { drawPlacedLabels } from './placed-labels'
import { makePlotPicture, type PlotFrame } from './plot-picture'
import { measureText } from './text-metrics'

const FONT_PX = 11
const MARGIN_LEFT_PX = 52
const MARGIN_RIGHT_PX = 22
const MARGIN_BOTTOM_PX = 40
/** Nearer than this, two marks are one to the eye. */
const SAME_PLACE_PX = 5
const LINE_LABEL = 'holds below this line'

/** What a remedy's strain is set against. */
export const REMEDY_EFFECTS = ['thickness', 'radius', 'moment'] as const
export type RemedyEffect = (typeof REMEDY_EFFECTS)[number]

export interface RemedyPlotOptions extends PlotFrame {
  readonly unit: LengthUnit
  readonly effect: RemedyEffect
  /** Number of the remedy that is looked at, from 1; null where none is. */
  readonly chosen: number | null
}

interface Point {
  /** Number in the list of remedies, from 1; 0 is the design as it is. */
  readonly number: number
  readonly x: number
  /** Largest strain over least allowable, each at its worst corner of tolerances and material constants. */
  readonly y: number
  readonly isForbidden: boolean
}

/**
 * Remedies of a bend, effect against effect: copper strain over its allowable upwards, and what the remedy costs in
 * thickness, radius or moment across. Below the line the verdict holds at the worst corner of tolerances and material constants.
 */
export function drawRemedyPlot(report: RemedyReport, options: RemedyPlotOptions): Picture {
  const { palette, unit, effect, chosen } = options
  const label = getEffectLabel(effect, unit)
  const toPoint = (state: RemedyState, number: number, isForbidden: boolean): Point[] => {
    const x = readEffect(state, effect, unit)
    const y = state.marginFraction === null ? null : 1 - state.marginFraction
    return x === null || y === null || y <= 0 ? [] : [{ number, x, y, isForbidden }]
  }
  const own = toPoint(report.before, 0, false)
  const points = report.remedies.flatMap((remedy, at) => toPoint(remedy.after, at + 1, remedy.forbiddenBy.length > 0))
  const allowed = points.filter((point) => !point.isForbidden)
  const forbidden = points.filter((point) => point.isForbidden)
  const looked = points.filter((point) => point.number === chosen)
  return makePlotPicture(
    options,
    {
      title: `Remedies for ${callByName('bend', report.bendName)}: strain against ${getEffectWord(effect)}`,
      description: describe(report),
      table: listRemedyRows(report, unit),
    },
    {
      marginLeft: MARGIN_LEFT_PX,
      marginRight: MARGIN_RIGHT_PX,
      marginBottom: MARGIN_BOTTOM_PX,
      marginTop: 16,
      x: { label, labelArrow: 'none', labelAnchor: 'center', nice: true, inset: 12 },
      y: {
        label: 'copper strain over allowable, worst corner',
        labelArrow: 'none',
        type: 'log',
        ticks: 4,
        tickFormat: (value: number) => digitsAsComputed(value, 'tick'),
        inset: 12,
      },
      marks: [
        Plot.ruleY([1], { stroke: palette.limit, strokeWidth: 1.4 }),
        Plot.text([1], {
          y: (value: number) => value,
          frameAnchor: 'right',
          textAnchor: 'end',
          dy: 9,
          text: () => LINE_LABEL,
          fill: palette.limit,
        }),
        Plot.dot(forbidden, { x: 'x', y: 'y', r: 4, symbol: 'times', stroke: palette.inkSoft, strokeWidth: 1.4 }),
        Plot.dot(allowed, { x: 'x', y: 'y', r: 4, fill: palette.strain, stroke: palette.paper }),
        Plot.dot(looked, { x: 'x', y: 'y', r: 8, stroke: palette.ink, strokeWidth: 1.6 }),
        Plot.dot(own, {
          x: 'x',
          y: 'y',
          r: 4.5,
          symbol: 'square',
          fill: palette.paper,
          stroke: palette.ink,
          strokeWidth: 1.8,
        }),
      ],
    },
    (place) => {
      const ofOwn = own.map(({ x, y }) => ({ x: place.x(x), y: place.y(y), text: 'as it is' }))
      const placed = placeLabels(
        [...ofOwn, ...joinNumbers(points.map((point) => ({ ...point, x: place.x(point.x), y: place.y(point.y) })))],
        {
          fontSizePx: FONT_PX,
          bounds: {
            left: MARGIN_LEFT_PX + 1,
            top: 2,
            right: options.widthPx - 1,
            bottom: options.heightPx - MARGIN_BOTTOM_PX,
          },
          pointPx: 4.5,
          reserved: [findLineLabelBox(place.y(1), options.widthPx)],
          lines: [{ x1: MARGIN_LEFT_PX, y1: place.y(1), x2: options.widthPx, y2: place.y(1) }],
        },
      )
      return drawPlacedLabels(placed, palette, FONT_PX)
    },
  )
}

/** Remedies that come to the same place share one label, `3, 7`: two numbers there would be over each other. */
function joinNumbers(points: readonly Point[]): LabelRequest[] {
  const joined: { readonly x: number; readonly y: number; readonly numbers: number[] }[] = []
  for (const { x, y, number } of points) {
    const there = joined.find((other) => Math.hypot(other.x - x, other.y - y) < SAME_PLACE_PX)
    if (there === undefined) joined.push({ x, y, numbers: [number] })
    else there.numbers.push(number)
  }
  return joined.map(({ x, y, numbers }) => ({ x, y, text: joinRuns(numbers) }))
}

/** `1, 4 to 9`: long lists of numbers would cover the chart. */
function joinRuns(numbers: readonly number[]): string {
  const runs: [number, number][] = []
  for (const number of [...numbers].sort((a, b) => a - b)) {
    const last = runs.at(-1)
    if (last !== undefined && number === last[1] + 1) last[1] = number
    else runs.push([number, number])
  }
  return runs
    .map(([from, to]) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from} to ${to}`))
    .join(', ')
}

/** Where the words beside the limit stand. */
function findLineLabelBox(linePx: number, widthPx: number): Box {
  const right = widthPx - MARGIN_RIGHT_PX
  return { left: right - measureText(LINE_LABEL, FONT_PX), right, top: linePx + 2, bottom: linePx + 16 }
}

function readEffect(state: RemedyState, effect: RemedyEffect, unit: LengthUnit): number | null {
  switch (effect) {
    case 'thickness':
      return lengthFromUm(state.bendZoneThicknessUm, unit)
    case 'radius':
      return lengthFromUm(umFromLength(state.insideRadiusMm, 'mm'), getShownUnit('mm', unit))
    case 'moment':
      return state.momentNmm
  }
}

function getEffectLabel(effect: RemedyEffect, unit: LengthUnit): string {
  switch (effect) {
    case 'thickness':
      return `thickness of the bend's zone, ${getUnitSymbol(unit)}`
    case 'radius':
      return withUnitInHead('inside radius', getShownUnit('mm', unit))
    case 'moment':
      return 'bending moment, N·mm'
  }
}

/** `thickness`, `inside radius`, `moment`. */
export function getEffectWord(effect: RemedyEffect): string {
  return effect === 'radius' ? 'inside radius' : effect
}

function describe({ remedies, before }: RemedyReport): string {
  const allowed = remedies.filter(({ forbiddenBy }) => forbiddenBy.length === 0)
  const meeting = allowed.filter(({ after }) => after.verdict === 'meets').length
  const times =
    before.marginFraction === null
      ? ''
      : ` As it is, strain is ${formatTimes(1 - before.marginFraction)} times its allowable at the worst corner of tolerances and material constants.`
  return `${remedies.length} remedies, numbered as in the list: ${meeting} of them meet and nothing stands against them; ${remedies.length - allowed.length} are forbidden by a stated need and drawn as crosses.${times}`
}

function formatTimes(value: number): string {
  return digitsAsComputed(value, 'times')
}

/** The table behind the remedy plot: every effect of every remedy. */
export function listRemedyRows(report: RemedyReport, unit: LengthUnit): PictureTable {
  const row = (number: string, name: string, state: RemedyState, against: string) => ({
    number,
    name,
    times: state.marginFraction === null ? '' : formatTimes(1 - state.marginFraction),
    thickness: digitsOfLength(state.bendZoneThicknessUm, unit),
    radius: digitsOfEnteredLength(state.insideRadiusMm, 'mm', getShownUnit('mm', unit)),
    moment: state.momentNmm === null ? '' : digitsAsComputed(state.momentNmm, 'momentNmm'),
    against,
  })
  return {
    caption: `Remedies for ${callByName('bend', report.bendName)}`,
    columns: [
      { key: 'number', label: 'No.', numeric: true },
      { key: 'name', label: 'Changes', numeric: false },
      { key: 'times', label: 'Strain over allowable', numeric: true },
      { key: 'thickness', label: `Bend zone, ${getUnitSymbol(unit)}`, numeric: true },
      { key: 'radius', label: withUnitInHead('Inside radius', getShownUnit('mm', unit)), numeric: true },
      { key: 'moment', label: 'Moment, N·mm', numeric: true },
      { key: 'against', label: 'Forbidden by', numeric: false },
    ],
    rows: [
      row('', 'as it is', report.before, ''),
      ...report.remedies.map(({ changes, after, forbiddenBy }, at) =>
        row(
          String(at + 1),
          changes.map(({ title, detail }) => `${title} (${detail})`).join('; '),
          after,
          forbiddenBy.map(({ name }) => name).join('; '),
        ),
      ),
    ],
  }
}
