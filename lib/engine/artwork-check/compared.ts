import type { ArtworkFacts, ArtworkFileFacts, OnPlanFacts, PlanGround } from '@/lib/artwork'
import type { Design } from '../design'
import type { ArtworkSpot, Place, ZoneResult } from '../results'
import type { WrittenTwice } from '../statements'

/** What a comparison looks at. */
export interface ArtworkSubject {
  /** With what its plan draws in place of what was stated. */
  readonly design: Design
  /** Over all, as the plan draws it; null where nothing is drawn. */
  readonly drawnPart: { readonly lengthMm: number; readonly widthMm: number; readonly areaMm2: number } | null
  readonly zones: readonly ZoneResult[]
  readonly artwork: ArtworkFacts
  /** What it does on the plan, and the plan as it is now; null where it was not laid over, and where none is drawn. */
  readonly onPlan: OnPlanFacts | null
  readonly ground: PlanGround | null
}

/** One fact as the artwork and another place state it, with the place in the artwork where there is one. */
export type ArtworkPair = Omit<WrittenTwice, 'readFrom'> & { readonly artworkAt?: ArtworkSpot }

/** A fact of which nobody can tell whether both places agree. */
export interface OpenFact {
  /** In the middle of a sentence: `the outline`. */
  readonly fact: string
  readonly because: string
  readonly decidedBy: string
  readonly places: readonly Place[]
}

export interface Comparison {
  readonly pairs: readonly ArtworkPair[]
  readonly open: readonly OpenFact[]
}

export const NOTHING_COMPARED: Comparison = { pairs: [], open: [] }

/** Files that draw something and are for this, by what they say or a person said. */
export function filesFor(artwork: Pick<ArtworkFacts, 'files'>, ...roles: readonly ArtworkFileFacts['role']['role'][]) {
  return artwork.files.filter(({ role, objectCount }) => roles.includes(role.role) && (objectCount ?? 0) > 0)
}

/** Layers that draw something and of which nobody knows what they are for. */
export const unknownFiles = (artwork: Pick<ArtworkFacts, 'files'>): ArtworkFileFacts[] =>
  artwork.files.filter(({ role, objectCount }) => role.role === null && (objectCount ?? 0) > 0)

export const listNames = (files: readonly { readonly name: string }[]): string =>
  files.map(({ name }) => name).join(', ')
