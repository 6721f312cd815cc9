import { findItem } from '@/lib/engine/catalogue'
import type { DesignChange } from './compare-designs'

/** Fields of the brief that an item rests on, as paths below the brief; a record of terms by itself stands for all its fields. */
export function listBriefInputs(itemId: string): string[][] {
  return (findItem(itemId)?.restsOn ?? []).flatMap((pattern) => {
    const [part, ...path] = pattern.split('.')
    return part === 'brief' && path.length > 0 && !path.includes('*') ? [path] : []
  })
}

/** Texts that name or annotate a part without saying what it is like. */
const NAMING_FIELDS: readonly string[] = ['name', 'note', 'partNumber', 'revisionLabel', 'purpose']

/**
 * Does a change touch what an item rests on? An item that the catalogue lacks, such as a workspace's own, rests on the
 * whole design: better asked once too often.
 *
 * @param path  as a `DesignChange` has it
 */
export function isInputOf(itemId: string, path: readonly string[]): boolean {
  // That a value was confirmed changes no input: who answered looked at the value.
  if (path[0] === 'assumed') return false
  const patterns = findItem(itemId)?.restsOn
  if (patterns === undefined) return true
  const isNaming = path.length > 1 && NAMING_FIELDS.includes(path.at(-1) ?? '')
  return patterns.some((pattern) => {
    const keys = pattern.split('.')
    if (isNaming && keys.at(-1) !== path.at(-1)) return false
    // A part that is added or removed as a whole brings or takes along whatever lies below it.
    return keys.slice(0, path.length).every((key, index) => key === '*' || key === path[index])
  })
}

const ARTWORK_PATH = ['artwork'] as const

/** What differs between two contents, as far as answers rest on it. */
export interface InputChanges {
  readonly design: readonly DesignChange[]
  readonly isArtworkChanged: boolean
}

/** Which inputs of an item changed, in the trade's words. Empty where the item's answer rests on what it rested on. */
export function listChangedInputs(itemId: string, changes: InputChanges): string[] {
  const sentences = changes.design.filter(({ path }) => isInputOf(itemId, path)).map(({ sentence }) => sentence)
  return changes.isArtworkChanged && isInputOf(itemId, ARTWORK_PATH)
    ? [...sentences, 'the artwork files changed']
    : sentences
}
