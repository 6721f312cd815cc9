import type { Design, Evaluation, RemedyReport } from '@/lib/engine'
import type { WayOut } from '@/lib/engine/remedies'
import type { Nesting, SubstituteSearch } from '@/lib/fabrication'
import type { DocumentOrder, PackageFile } from '@/lib/package'
import type { JobKind } from './kind'
import type {
  ArtworkOrder,
  ArtworkResult,
  EvaluationOrder,
  NestingOrder,
  RemedyOrder,
  SubstituteOrder,
  WayOutOrder,
} from './orders'

const REMEDY_LIMITS = { seconds: 60, memoryMib: 512 }

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
      return ({ design, limits, facts, testedLives, template }) =>
        evaluate(design, { limits, facts, testedLives, items: makeCatalogue(template).items })
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
  /** Up to a dozen trials, each a full evaluation. */
  substitutes: defineKind<SubstituteOrder, SubstituteSearch>({
    limits: { seconds: 120, memoryMib: 1024 },
    isLong: true,
    load: async () => {
      const [{ evaluateDraft }, { makeCatalogue }, { findSubstitutes }] = await Promise.all([
        import('@/lib/engine'),
        import('@/lib/engine/catalogue'),
        import('@/lib/fabrication'),
      ])
      return ({ design, purchase, shelf, matrix, limits, facts, testedLives, template }) => {
        const { items } = makeCatalogue(template)
        const evaluateDesign = (trial: Design) => evaluateDraft(trial, { limits, facts, testedLives, items })
        const evaluation = evaluateDesign(design)
        return findSubstitutes(design, purchase, shelf, {
          evaluation,
          evaluateDesign,
          ...(matrix === null ? {} : { matrix }),
        })
      }
    },
  }),
  /** Changes that the trade would try on a bend, in sets: 0.1 s to many. After half its time it ends with what it has found. */
  remedies: defineKind<RemedyOrder, RemedyReport>({
    limits: REMEDY_LIMITS,
    isLong: true,
    // Code that ran already takes half the time: the thread is kept for good, some 100 MB.
    idleSeconds: Number.POSITIVE_INFINITY,
    makeRehearsal: async () => (await import('./rehearsal')).makeRemedyRehearsal(),
    load: async () => (await import('./search-remedies')).searchWithin(REMEDY_LIMITS.seconds / 2),
  }),
  /** Changes over all items of a design: 7 s for the demo's worst revision. After two thirds of its time it ends with what it has found. */
  wayOut: defineKind<WayOutOrder, WayOut>({
    limits: { seconds: 90, memoryMib: 512 },
    isLong: true,
    load: async () => (await import('./search-remedies')).findWayOutWithin(60),
  }),
  /** Files of circuit data: reading takes about a second for 5 MB, working out what copper covers some 3 s for a layer of 10 000 strokes. */
  artwork: defineKind<ArtworkOrder, ArtworkResult>({
    limits: { seconds: 300, memoryMib: 2048 },
    isLong: true,
    load: async () => (await import('./read-artwork')).readArtwork,
  }),
} as const

export type JobKinds = typeof JOB_KINDS
