import type { Design } from '@/lib/engine'

/**
 * The design as this revision's: its letter has one source, the revision's label. A document that comes from elsewhere, or from
 * the revision that was copied, does not bring its own along.
 *
 * @param copiedLabel  of the revision that was copied: where the name says it, it says the new one
 */
export function stampRevision(design: Design, label: string, copiedLabel: string | null = null): Design {
  const name = copiedLabel === null ? design.name : renameRevision(design.name, copiedLabel, label)
  if (design.brief.revisionLabel === label && design.name === name) return design
  return { ...design, name, brief: { ...design.brief, revisionLabel: label } }
}

/** `Skua scanning head, revision A` under the label B is `Skua scanning head, revision B`. */
function renameRevision(name: string, from: string, to: string): string {
  const label = from.replaceAll(/[.*+?^${}()|[\]\\]/g, String.raw`\$&`)
  return name.replaceAll(
    new RegExp(String.raw`(\brev(?:ision)?[\s._-]*)${label}(?![\w])`, 'giu'),
    (_whole, word: string) => `${word}${to}`,
  )
}
