import * as Plot from '@observablehq/plot'
import {
  type Bound,
  callByName,
  formatComputedDigits,
  type LengthUnit,
  LIFE_CAUTION_SHORT,
  type Swing,
  type SwingQuantity,
  type Tornado,
} from '@/lib/engine'
import { digitsAsComputed, getShownUnit, lengthFromUm, type Unit, umFromLength, withUnit } from '@/lib/engine/units'
import type { Picture, PictureTable } from './picture'
import { makePlotPicture, type PlotFrame } from './plot-picture'

/** Inputs below the longest bars move nothing that a reader could see; the table has them all. */
const SHOWN_SWINGS = 10
const BAR_PX = 26
const MARGIN_TOP_PX = 20
const MARGIN_BOTTOM_PX = 40
/** A label that is longer than this is cut, and whole in the table. */
const LONGEST_LABEL = 34

const WORDS: Readonly<Record<SwingQuantity, { readonly word: string; readonly unit?: Unit }>> = {
  thicknessUm: { word: 'thickness', unit: 'um' },
  insideRadiusMm: { word: 'inside radius', unit: 'mm' },
  modulusGpa: { word: 'modulus', unit: 'gpa' },
  poisson: { word: 'Poisson ratio' },
  yieldStrengthMpa: { word: 'yield strength', unit: 'mpa' },
  yieldStrainPct: { word: 'yield strain', unit: 'pct' },
  coverageFraction: { word: 'share of copper' },
  fillModulusGpa: { word: 'modulus of the fill', unit: 'gpa' },
  fillYieldStrainPct: { word: 'yield strain of the fill', unit: 'pct' },
  tensileStrengthMpa: { word: 'tensile strength', unit: 'mpa' },
  fatigueDuctility: { word: 'fatigue ductility' },
}

export type TornadoMeasure = 'strain' | 'life'

export interface TornadoPlotOptions extends Omit<PlotFrame, 'heightPx'> {
  readonly measure: TornadoMeasure
  /** Of the lengths among the inputs. */
  readonly unit?: LengthUnit
}

interface Bar {
  readonly label: string
  readonly atLow: number
  readonly atHigh: number
}

/**
 * Tornado: each input alone from its low to its high end, the longest bar on top. A full half is where the input's high end lies, an open
 * one where its low end does, so that it reads without colour.
 *
 * @returns null where nothing has a range, or life is asked for and the bend is not dynamic
 */
export function drawTornadoPlot(
  tornado: Tornado,
  { measure, unit = 'um', ...frame }: TornadoPlotOptions,
): Picture | null {
  const own = measure === 'strain' ? tornado.strainPct : tornado.survivalLifeCycles
  if (own === null) return null
  const bars = tornado.swings.slice(0, SHOWN_SWINGS).flatMap((swing): Bar[] => {
    const atLow = measure === 'strain' ? swing.strainAtLowPct : swing.lifeAtLowCycles
    const atHigh = measure === 'strain' ? swing.strainAtHighPct : swing.lifeAtHighCycles
    return atLow === null || atHigh === null ? [] : [{ label: cut(nameSwing(swing)), atLow, atHigh }]
  })
  if (bars.length === 0) return null
  const { palette } = frame
  const isLife = measure === 'life'
  return makePlotPicture(
    { ...frame, heightPx: MARGIN_TOP_PX + MARGIN_BOTTOM_PX + BAR_PX * bars.length },
    {
      title: `What moves ${isLife ? 'life' : 'strain'}, ${callByName('bend', tornado.bendName)}`,
      description: describeTornado(tornado, unit),
      table: listTornadoRows(tornado, unit),
    },
    {
      marginLeft: Math.min(230, 0.45 * frame.widthPx),
      marginRight: 20,
      marginTop: MARGIN_TOP_PX,
      marginBottom: MARGIN_BOTTOM_PX,
      x: {
        type: isLife ? 'log' : 'linear',
        label: isLife
          ? `cycles, ${tornado.survivalPct} % survive, ${LIFE_CAUTION_SHORT}`
          : `strain of ${tornado.layerName}, %`,
        labelArrow: 'none',
        labelAnchor: 'center',
        ticks: 4,
        ...(isLife ? { tickFormat: (cycles: number) => digitsAsComputed(cycles, 'lifeCycles') } : {}),
      },
      y: { domain: bars.map(({ label }) => label), label: null, tickSize: 0 },
      marks: [
        Plot.gridX({ stroke: palette.hairline, strokeOpacity: 0.5, ticks: 4 }),
        Plot.barX(bars, { y: 'label', x1: own, x2: 'atHigh', fill: palette.strain, insetTop: 4, insetBottom: 4 }),
        Plot.barX(bars, {
          y: 'label',
          x1: own,
          x2: 'atLow',
          fill: palette.paper,
          stroke: palette.strain,
          strokeWidth: 1.3,
          insetTop: 4,
          insetBottom: 4,
        }),
        Plot.ruleX([own], { stroke: palette.ink, strokeWidth: 1.2 }),
      ],
    },
  )
}

function cut(text: string): string {
  return text.length <= LONGEST_LABEL ? text : `${text.slice(0, LONGEST_LABEL - 1)}…`
}

/** `modulus, Cover film`, as a table and a bar call an input. */
export function nameSwing({ layerName, quantity }: Pick<Swing, 'layerName' | 'quantity'>): string {
  const { word } = WORDS[quantity]
  return layerName === '' ? word : `${word}, ${layerName}`
}

const figure = (value: number): string => digitsAsComputed(value, 'swing')

/** An input in the reader's unit where it is a length, else in its own. */
function formatInput(value: number, quantity: SwingQuantity, chosen: LengthUnit): { digits: string; unit?: Unit } {
  const { unit } = WORDS[quantity]
  if (unit === undefined) return { digits: figure(value) }
  if (unit !== 'um' && unit !== 'mm') return { digits: figure(value), unit }
  const shown = getShownUnit(unit, chosen)
  return { digits: figure(lengthFromUm(umFromLength(value, unit), shown)), unit: shown }
}

function formatInputWithUnit(value: number, quantity: SwingQuantity, chosen: LengthUnit): string {
  const { digits, unit } = formatInput(value, quantity, chosen)
  return withUnit(digits, unit)
}

function describeTornado(
  { swings, strainPct, survivalLifeCycles, layerName, counted }: Tornado,
  unit: LengthUnit,
): string {
  const [first] = swings
  if (first === undefined) return 'No input of this bend has a range.'
  const { lifeAtLowCycles, lifeAtHighCycles, lifeAtLowBound, lifeAtHighBound } = first
  const moved =
    lifeAtLowCycles === null || lifeAtHighCycles === null || survivalLifeCycles === null
      ? `the strain of ${layerName} goes from ${figure(first.strainAtLowPct)} to ${figure(first.strainAtHighPct)} %, ${figure(strainPct)} % at nominal`
      : `the life goes from ${formatLife(lifeAtLowCycles, lifeAtLowBound)} to ${formatLife(lifeAtHighCycles, lifeAtHighBound)} cycles, ${formatLife(survivalLifeCycles, null)} at nominal`
  return `${nameSwing(first)} moves it most: from ${formatInputWithUnit(first.low, first.quantity, unit)} to ${formatInputWithUnit(first.high, first.quantity, unit)} ${moved}. Full bars lie towards the high end of an input, open ones towards its low end; each moves alone.${counted === null ? '' : ` ${counted}.`}`
}

/** A life past an end of the relation is longer, or shorter, than its figure. */
const formatLife = (value: number, bound: Bound | null): string =>
  formatComputedDigits({ value, unit: 'cycles', ...(bound === null ? {} : { bound }) }, 'lifeCycles')

/** The table behind the tornado, strain and life both. */
export function listTornadoRows(tornado: Tornado, unit: LengthUnit = 'um'): PictureTable {
  const hasLife = tornado.survivalLifeCycles !== null
  return {
    caption: `Each input alone over its range, ${callByName('bend', tornado.bendName)}${hasLife ? `; life is an ${LIFE_CAUTION_SHORT}` : ''}${tornado.counted === null ? '' : `. ${tornado.counted}`}`,
    columns: [
      { key: 'input', label: 'Input', numeric: false },
      { key: 'range', label: 'From, to', numeric: true },
      { key: 'strain', label: `Strain of ${tornado.layerName}, %`, numeric: true },
      ...(hasLife ? [{ key: 'life', label: `${tornado.survivalPct} % survive, cycles`, numeric: true }] : []),
    ],
    rows: tornado.swings.map((swing) => ({
      input: nameSwing(swing),
      range: `${formatInput(swing.low, swing.quantity, unit).digits}, ${formatInputWithUnit(swing.high, swing.quantity, unit)}`,
      strain: `${figure(swing.strainAtLowPct)}, ${figure(swing.strainAtHighPct)}`,
      life:
        swing.lifeAtLowCycles === null || swing.lifeAtHighCycles === null
          ? ''
          : `${formatLife(swing.lifeAtLowCycles, swing.lifeAtLowBound)}, ${formatLife(swing.lifeAtHighCycles, swing.lifeAtHighBound)}`,
    })),
  }
}
