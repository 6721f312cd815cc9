import { z } from 'zod'
import { idSchema, nameSchema, textSchema } from '@/lib/engine'
import { QUARTER_TURNS_DEG, type QuarterTurnDeg } from '@/lib/geometry'

export const FOIL_DIRECTIONS = ['along-width', 'along-height'] as const
export type FoilDirection = (typeof FOIL_DIRECTIONS)[number]

/** Sheets and rolls of the trade stay below this; what is larger is a mistyped unit. */
const MAX_PANEL_MM = 3000

const sideMmSchema = z
  .number()
  .positive('must be greater than 0 mm')
  .max(MAX_PANEL_MM, `must be at most ${MAX_PANEL_MM} mm`)
const marginMmSchema = z.number().nonnegative('must not be negative').max(500, 'must be at most 500 mm')

/** A panel as a fabricator runs it. Margins hold tooling holes, clamps and coupons: no part lies in them. */
export const panelFormatSchema = z
  .strictObject({
    id: idSchema,
    name: nameSchema,
    widthMm: sideMmSchema,
    heightMm: sideMmSchema,
    marginLeftMm: marginMmSchema,
    marginRightMm: marginMmSchema,
    marginTopMm: marginMmSchema,
    marginBottomMm: marginMmSchema,
    /** Least distance between two parts, in any direction. */
    spacingMm: z.number().nonnegative('must not be negative').max(200, 'must be at most 200 mm'),
    /** Rotations of the part that the process can take, counter-clockwise. */
    allowedRotationsDeg: z
      .array(z.literal([...QUARTER_TURNS_DEG]))
      .min(1, 'at least one turn must be allowed')
      .max(4)
      .refine((turns) => new Set(turns).size === turns.length, 'names a turn twice'),
    /** Which side of the panel the foil was rolled along; null where it is not known. */
    foilRollingDirection: z.enum(FOIL_DIRECTIONS).nullable(),
    note: textSchema,
  })
  .refine((format) => format.marginLeftMm + format.marginRightMm < format.widthMm, {
    path: ['marginRightMm'],
    message: 'the margins to the left and right leave nothing of the width',
  })
  .refine((format) => format.marginTopMm + format.marginBottomMm < format.heightMm, {
    path: ['marginTopMm'],
    message: 'the margins at the top and bottom leave nothing of the height',
  })

/** What a fabricator keeps as the sheet of panel formats. */
export const panelFormatsContentSchema = z.strictObject({
  formats: z
    .array(panelFormatSchema)
    .max(12, 'at most 12 formats')
    .superRefine((formats, context) => {
      const seen = new Set<string>()
      formats.forEach(({ id }, index) => {
        if (seen.has(id)) {
          context.addIssue({ code: 'custom', path: [index, 'id'], message: `"${id}" is the id of another format too` })
        }
        seen.add(id)
      })
    }),
})

export type PanelFormat = z.infer<typeof panelFormatSchema>
export type PanelFormatsContent = z.infer<typeof panelFormatsContentSchema>

/** A panel format in whole micrometres. The usable area's lower left corner lies at `originX`, `originY`. */
export interface WholePanel {
  readonly widthUm: number
  readonly heightUm: number
  readonly originX: number
  readonly originY: number
  readonly usableWidthUm: number
  readonly usableHeightUm: number
  readonly spacingUm: number
  readonly turnsDeg: readonly QuarterTurnDeg[]
  readonly foilRollingDirection: FoilDirection | null
}

export const toWholeUm = (lengthMm: number): number => Math.round(lengthMm * 1000)

export function toWholePanel(format: PanelFormat): WholePanel {
  const widthUm = toWholeUm(format.widthMm)
  const heightUm = toWholeUm(format.heightMm)
  const originX = toWholeUm(format.marginLeftMm)
  const originY = toWholeUm(format.marginBottomMm)
  return {
    widthUm,
    heightUm,
    originX,
    originY,
    usableWidthUm: widthUm - originX - toWholeUm(format.marginRightMm),
    usableHeightUm: heightUm - originY - toWholeUm(format.marginTopMm),
    spacingUm: toWholeUm(format.spacingMm),
    turnsDeg: QUARTER_TURNS_DEG.filter((turn) => format.allowedRotationsDeg.includes(turn)),
    foilRollingDirection: format.foilRollingDirection,
  }
}
