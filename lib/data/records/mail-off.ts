import 'server-only'
import { isOptionalMailKind, type OptionalMailKind } from '@/lib/mail'

/** Kinds of mail that a person does without, as stored; a word that this version does not know is passed over. */
export function readMailOff(json: string): ReadonlySet<OptionalMailKind> {
  const words: unknown = JSON.parse(json)
  const list = Array.isArray(words) ? words.filter((word): word is string => typeof word === 'string') : []
  return new Set(list.filter(isOptionalMailKind))
}
