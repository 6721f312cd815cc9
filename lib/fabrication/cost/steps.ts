import { z } from 'zod'
import { REGISTRATION_DEMANDS, type RegistrationDemand } from './traits'

/** What a step's rate is paid for. */
export const STEP_UNITS = [
  'per-square-metre-of-layer',
  'per-layer',
  'per-lamination',
  'per-cycle',
  'per-panel',
  'per-opening',
  'per-part',
] as const
export type StepUnit = (typeof STEP_UNITS)[number]

export const STEP_GROUPS = ['materials', 'layers', 'coverlay', 'press', 'holes', 'outside', 'parts'] as const
export type StepGroup = (typeof STEP_GROUPS)[number]

/** One line of the table of process steps. */
export interface ProcessStep {
  readonly id: string
  readonly group: StepGroup
  readonly name: string
  readonly unit: StepUnit
  /** Index units for each unit of work. */
  readonly rateIndex: number
  /** Index units once for an order: tools, programs, first piece. */
  readonly setUpIndex: number
  /** Share of parts that come through one pass of the step; null where no loss is counted here. */
  readonly yieldFraction: number | null
}

type Line = readonly [
  id: string,
  group: StepGroup,
  name: string,
  unit: StepUnit,
  rateIndex: number,
  setUpIndex: number,
  yieldFraction: number | null,
]

/**
 * Illustrative rates. What they say is how steps compare; nobody's prices are behind them (common practice, no published
 * source). Chosen so that sheet materials come to 20 to 60 % of the cost of flexible work, as a trade magazine of June
 * 2024 states, and in the order of press cycles, imaging, plating and laser time as the trade speaks of
 * them. One index unit is about a tenth of the imaging, etching and inspection of one layer of a production panel.
 */
const LINES: readonly Line[] = [
  ['flex-clad', 'materials', 'Flexible copper-clad film', 'per-square-metre-of-layer', 90, 0, null],
  ['coverlay-film', 'materials', 'Coverlay film with adhesive', 'per-square-metre-of-layer', 36, 0, null],
  ['bondply', 'materials', 'Bondply', 'per-square-metre-of-layer', 30, 0, null],
  ['prepreg', 'materials', 'No-flow prepreg', 'per-square-metre-of-layer', 20, 0, null],
  ['rigid-clad', 'materials', 'Rigid laminate', 'per-square-metre-of-layer', 24, 0, null],
  ['shield-film', 'materials', 'Shield film', 'per-square-metre-of-layer', 60, 0, null],
  ['imaging', 'layers', 'Imaging, etching and inspection', 'per-layer', 10, 40, 0.995],
  ['fine-lines', 'layers', 'Fine lines: direct imaging and care', 'per-layer', 4, 10, 0.985],
  ['finest-lines', 'layers', 'Finest lines: losses in etching', 'per-layer', 5, 10, 0.96],
  ['heavy-copper', 'layers', 'Heavy copper: longer etching, more fill', 'per-layer', 5, 0, 0.99],
  ['heaviest-copper', 'layers', 'Heaviest copper: etched in passes', 'per-layer', 9, 10, 0.98],
  ['button-imaging', 'layers', 'Extra imaging for pads-only plating', 'per-panel', 8, 20, 0.995],
  ['release-film', 'layers', 'Release film between unbonded leaves', 'per-layer', 4, 10, 0.995],
  ['coverlay-lay-up', 'coverlay', 'Laying up coverlay', 'per-layer', 7, 0, null],
  ['coverlay-drill', 'coverlay', 'Coverlay opened by drill and rout', 'per-layer', 3, 20, 0.997],
  ['coverlay-punch', 'coverlay', 'Coverlay opened by punch', 'per-layer', 1.5, 250, 0.997],
  ['coverlay-laser', 'coverlay', 'Coverlay opened by laser', 'per-layer', 17, 60, 0.99],
  ['coverlay-laser-opening', 'coverlay', 'Laser time for each opening stated', 'per-opening', 0.02, 0, null],
  ['coverlay-press', 'press', 'Coverlay lamination', 'per-lamination', 16, 20, 0.99],
  ['final-press', 'press', 'Final lamination', 'per-lamination', 18, 30, 0.985],
  ['further-press', 'press', 'Further lamination for buried holes', 'per-lamination', 18, 30, 0.985],
  ['stiffener-press', 'press', 'Stiffener lamination', 'per-lamination', 8, 20, 0.995],
  ['prepreg-windows', 'press', 'Windows in prepreg', 'per-layer', 2.5, 15, null],
  ['cap-windows', 'press', 'Windows routed in rigid layers', 'per-layer', 4, 25, null],
  ['cap-removal', 'press', 'Removing caps over the flexible zones', 'per-panel', 8, 15, 0.995],
  ['drilling', 'holes', 'Drilling', 'per-panel', 13, 25, 0.997],
  ['hole-drilling', 'holes', 'Drilling time for each hole', 'per-opening', 0.002, 0, null],
  ['small-drills', 'holes', 'Small drills: worn and broken sooner', 'per-panel', 6, 5, 0.995],
  ['smallest-drills', 'holes', 'Smallest holes, by laser', 'per-panel', 12, 20, 0.985],
  ['further-span', 'holes', 'Drilling and plating of a further span of layers', 'per-cycle', 25, 30, 0.99],
  ['hole-cleaning', 'holes', 'Plasma cleaning of holes', 'per-panel', 6, 0, null],
  ['panel-plating', 'holes', 'Panel plating', 'per-panel', 12, 10, 0.992],
  ['pattern-plating', 'holes', 'Pattern plating', 'per-panel', 14, 20, 0.99],
  ['button-plating', 'holes', 'Pads-only plating', 'per-panel', 12, 10, 0.99],
  ['solder-mask', 'outside', 'Solder mask', 'per-layer', 6, 25, 0.997],
  ['shield-lay-up', 'outside', 'Laying up shield film', 'per-layer', 7, 10, 0.99],
  ['finish-nickel', 'outside', 'Surface finish with nickel and gold', 'per-panel', 20, 10, 0.995],
  ['finish-palladium', 'outside', 'Palladium between nickel and gold', 'per-panel', 8, 10, 0.997],
  ['finish-electroplated', 'outside', 'Gold plated by current: busbars, resist and removal', 'per-panel', 18, 25, 0.99],
  ['finish-other', 'outside', 'Surface finish without nickel', 'per-panel', 7, 10, 0.997],
  ['stiffener', 'parts', 'Stiffener, cut and placed', 'per-part', 0.25, 30, null],
  ['profile', 'parts', 'Cutting out the parts', 'per-part', 0.1, 40, 0.997],
  ['test', 'parts', 'Electrical test', 'per-part', 0.15, 120, null],
  ['coupon-test', 'parts', 'Coupons and their sections', 'per-panel', 3, 20, null],
  ['class-3', 'parts', 'Class 3: sections, records and tighter acceptance', 'per-panel', 8, 40, 0.98],
  ['inspection', 'parts', 'Final inspection', 'per-part', 0.15, 10, null],
]

export const PROCESS_STEPS: readonly ProcessStep[] = LINES.map(
  ([id, group, name, unit, rateIndex, setUpIndex, yieldFraction]) => ({
    id,
    group,
    name,
    unit,
    rateIndex,
    setUpIndex,
    yieldFraction,
  }),
)

/** What a demand on registration costs in room and in yield. */
export interface RegistrationCost {
  readonly demand: RegistrationDemand
  readonly extraMarginMm: number
  readonly extraSpacingMm: number
  readonly yieldFraction: number
}

/** Illustrative as the rates are: smaller useful panels, wider spacing, and parts lost where layers do not meet. */
export const REGISTRATION_COSTS: readonly RegistrationCost[] = [
  { demand: 'loose', extraMarginMm: 0, extraSpacingMm: 0, yieldFraction: 0.99 },
  { demand: 'ordinary', extraMarginMm: 0, extraSpacingMm: 0, yieldFraction: 0.98 },
  { demand: 'tight', extraMarginMm: 12, extraSpacingMm: 1.5, yieldFraction: 0.94 },
]

const STEP_IDS = PROCESS_STEPS.map(({ id }) => id)

const rateSchema = z.number().nonnegative('must not be negative').max(1_000_000, 'must be at most 1000000')
const yieldSchema = z.number().gt(0, 'must be greater than 0: nothing would be left').max(1, 'must be at most 1')

/** What a fabricator keeps as the sheet of process rates: the lines that they replace, the others stay illustrative. */
export const processRatesContentSchema = z.strictObject({
  steps: z
    .array(
      z.strictObject({
        stepId: z.enum(STEP_IDS as [string, ...string[]], 'is not a step of the table'),
        rateIndex: rateSchema,
        setUpIndex: rateSchema,
        yieldFraction: yieldSchema.nullable(),
      }),
    )
    .max(STEP_IDS.length)
    .superRefine((steps, context) =>
      refuseRepeats(
        steps.map(({ stepId }) => stepId),
        'stepId',
        context,
      ),
    ),
  registration: z
    .array(
      z.strictObject({
        demand: z.enum(REGISTRATION_DEMANDS),
        extraMarginMm: z.number().nonnegative('must not be negative').max(200, 'must be at most 200 mm'),
        extraSpacingMm: z.number().nonnegative('must not be negative').max(100, 'must be at most 100 mm'),
        yieldFraction: yieldSchema,
      }),
    )
    .max(REGISTRATION_DEMANDS.length)
    .superRefine((rows, context) =>
      refuseRepeats(
        rows.map(({ demand }) => demand),
        'demand',
        context,
      ),
    ),
})

export type ProcessRatesContent = z.infer<typeof processRatesContentSchema>

function refuseRepeats(keys: readonly string[], field: string, context: z.core.$RefinementCtx): void {
  keys.forEach((key, index) => {
    if (keys.indexOf(key) !== index) {
      context.addIssue({ code: 'custom', path: [index, field], message: `"${key}" is replaced twice` })
    }
  })
}

/** A step as it counts, and whether its rate is the illustrative one. */
export interface RatedStep extends ProcessStep {
  readonly isIllustrative: boolean
}

export interface Rates {
  readonly steps: readonly RatedStep[]
  readonly registration: readonly (RegistrationCost & { readonly isIllustrative: boolean })[]
}

/** The table with a fabricator's lines in place of the illustrative ones; null is the table as delivered. */
export function makeRates(content: ProcessRatesContent | null): Rates {
  return {
    steps: PROCESS_STEPS.map((step) => {
      const own = content?.steps.find(({ stepId }) => stepId === step.id)
      if (own === undefined) return { ...step, isIllustrative: true }
      const { rateIndex, setUpIndex, yieldFraction } = own
      return { ...step, rateIndex, setUpIndex, yieldFraction, isIllustrative: false }
    }),
    registration: REGISTRATION_COSTS.map((cost) => {
      const own = content?.registration.find(({ demand }) => demand === cost.demand)
      return own === undefined ? { ...cost, isIllustrative: true } : { ...own, isIllustrative: false }
    }),
  }
}

export function findRegistrationCost(rates: Rates, demand: RegistrationDemand): Rates['registration'][number] {
  const found = rates.registration.find((cost) => cost.demand === demand)
  if (found === undefined) throw new RangeError(`no registration cost for "${demand}"`)
  return found
}
