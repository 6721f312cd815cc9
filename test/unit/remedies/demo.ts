import { readFileSync } from 'node:fs'
import { type Design, parseDesignText, type Remedy, type RemedyOptions, type RemedyReport } from '@/lib/engine'
import { findRemedies } from '@/lib/engine/remedies'

export function readDemo(name: string): Design {
  // Without its plan: what is changed by hand is what is judged.
  const parsed = parseDesignText(readFileSync(`seed/designs/${name}.json`, 'utf8'))
  if (!parsed.ok) throw new Error(`${name}: ${JSON.stringify(parsed.issues)}`)
  return { ...parsed.value, plan: null }
}

/** A copy of a design, edited in place. */
export function change(design: Design, edit: (copy: Design) => void): Design {
  const copy = structuredClone(design)
  edit(copy)
  return copy
}

/** Changes alone and in pairs: what larger sets add, and take, has tests of its own. */
export function findPairs(design: Design, bendId: string, options?: RemedyOptions): RemedyReport {
  return findRemedies(design, bendId, { ...options, mostChanges: 2 })
}

export function getRemedy(design: Design, bendId: string, id: string, options?: RemedyOptions): Remedy {
  const report = findPairs(design, bendId, options)
  const remedy = report.remedies.find((each) => each.id === id)
  if (remedy === undefined) {
    throw new Error(`no remedy "${id}"; there are ${report.remedies.map((each) => each.id).join(', ')}`)
  }
  return remedy
}

export function getEntry<T extends { readonly id: string }>(list: readonly T[], id: string): T {
  const entry = list.find((each) => each.id === id)
  if (entry === undefined) throw new Error(`no "${id}" in the list`)
  return entry
}
