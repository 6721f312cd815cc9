import type { JsonValue } from '../canonical'

/** What a record of the trail carries beside its subject. */
export type TrailDetails = { readonly [key: string]: JsonValue | undefined }

/** For acts of which there is nothing more to say. */
export type NoDetails = { readonly [key: string]: never }

/**
 * Details as they were stored. Records of earlier versions may lack what today's have: what is not there reads as the empty
 * text, so that a record written once reads the same for good.
 */
export interface StoredDetails<D> {
  readonly text: (key: keyof D & string) => string
  readonly isTrue: (key: keyof D & string) => boolean
}

/**
 * Who is written to about an act, besides what each person has switched off. Nobody is written to about an act of their own.
 * Anyone who owns an account is told of what was done to it whatever they switched off.
 */
export type Audience =
  | 'nobody'
  | 'account-owner'
  | 'asked-company'
  | 'thread-readers'
  | 'proposal-readers'
  | 'action-readers'
  | 'sharing-company'
  | 'declaration-readers'
  | 'condition-readers'
  | 'stage-readers'
  | 'release-readers'
  | 'signer-and-leads'

export interface WordParts<S extends string, D> {
  /** The kind of thing that the act was done to. */
  readonly subject: S
  /** What a reader is told; the sentence's subject is the person who acted: `moved the revision from ... to ...`. */
  sentence(details: StoredDetails<D>): string
  readonly audience?: Audience
  /** Fabricators who see the revision find it in the project's timeline, although it is no act of theirs. */
  readonly concernsFabricators?: true
}

/** One word of the trail: what is recorded under it, how it reads and who is told. */
export interface TrailWord<S extends string, D> extends WordParts<S, D> {
  readonly audience: Audience
  /** For the compiler alone: the details that a record with this word has to carry. */
  readonly details?: D
}

/** Defines a word whose records carry details of the type `D`. */
export const word =
  <D extends TrailDetails = NoDetails>() =>
  <S extends string, A extends Audience = 'nobody'>(
    parts: WordParts<S, D> & { readonly audience?: A },
  ): TrailWord<S, D> & { readonly audience: A } => ({ ...parts, audience: (parts.audience ?? 'nobody') as A })

/** `: the reason`, where one was given. */
export function because(details: StoredDetails<{ reason: string }>): string {
  const reason = details.text('reason')
  return reason === '' ? '' : `: ${reason}`
}

/** `one input`, `3 inputs` */
export function countInputs(details: StoredDetails<{ changeCount: number }>): string {
  const count = details.text('changeCount')
  return count === '1' ? 'one input' : `${count} inputs`
}
