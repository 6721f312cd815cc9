import type { Design, Evaluation, LimitOverride, RemedyReport, ReviewFacts } from '@/lib/engine'
import type { CatalogueTemplate } from '@/lib/engine/catalogue'
import type { ExtraRoom, NestedPart, Nesting, PanelFormat, RemedyBasis } from '@/lib/fabrication'
import type { DocumentOrder, PackageFile } from '@/lib/package'
import type { JobKind } from './kind'

/** One evaluation: the engine's input, with the catalogue as the version that it is made from, since items hold functions. */
export interface EvaluationOrder {
  readonly design: Design
  readonly limits: readonly LimitOverride[]
  readonly facts: ReviewFacts
  readonly template: CatalogueTemplate
}

/** One part on one panel. */
export interface NestingOrder {
  readonly part: NestedPart
  readonly format: PanelFormat
  readonly extra: ExtraRoom
}

export interface RemedyOrder {
  readonly design: Design
  readonly bendId: string
  readonly limits: readonly LimitOverride[]
  /** What prices them and which materials there are; null compares neither. */
  readonly basis: RemedyBasis | null
  /** Calendar day, ISO 8601: delivery is counted from it. */
  readonly today: string
}

const defineKind = <I, O>(kind: JobKind<I, O>): JobKind<I, O> => kind

/**
 * Every kind of work that runs off the request path. Limits are choices: several times what the largest accepted input takes on
 * a plain server, so that only what went wrong meets them. The evaluation's is the most that the server ever spends on one.
 */
export const JOB_KINDS = {
  /** Report, drawing and the sheets of a package: 0.3 to 3 s. */
  documents: defineKind<DocumentOrder, readonly PackageFile[]>({
    limits: { seconds: 120, memoryMib: 1024 },
    isLong: true,
    load: async () => (await import('@/lib/package/report')).carryOut,
  }),
  /** A design too large to be evaluated in passing: up to 5 s for the largest that is accepted (`npm run bench`). */
  evaluation: defineKind<EvaluationOrder, Evaluation>({
    limits: { seconds: 10, memoryMib: 1024 },
    isLong: false,
    load: async () => {
      const [{ evaluate }, { makeCatalogue }] = await Promise.all([
        import('@/lib/engine'),
        import('@/lib/engine/catalogue'),
      ])
      return ({ design, limits, facts, template }) =>
        evaluate(design, { limits, facts, items: makeCatalogue(template).items })
    },
  }),
  /** Parts on panels: 0.1 to 2 s for each format. */
  nesting: defineKind<readonly NestingOrder[], readonly Nesting[]>({
    limits: { seconds: 60, memoryMib: 512 },
    isLong: false,
    load: async () => {
      const { nestPart } = await import('@/lib/fabrication/panel')
      return (orders) => orders.map(({ part, format, extra }) => nestPart(part, format, extra))
    },
  }),
  /** Changes that the trade would try on a bend: 0.1 to 2 s. */
  remedies: defineKind<RemedyOrder, RemedyReport>({
    limits: { seconds: 60, memoryMib: 512 },
    isLong: true,
    load: async () => {
      const [{ findRemedies }, { toRemedyOptions }] = await Promise.all([
        import('@/lib/engine/remedies'),
        import('@/lib/fabrication'),
      ])
      return ({ design, bendId, limits, basis, today }, { onProgress }) =>
        findRemedies(design, bendId, { limits, ...toRemedyOptions(basis, design, today), onProgress })
    },
  }),
} as const

export type JobKinds = typeof JOB_KINDS
