import type { Declaration, TakenOff } from './declared'

/**
 * How one fabricator stands to the content. `yes` is the only one that counts as buildable: said of this content, without a
 * condition that is open or was declined. `unclear` is a yes from before conditions were lines of their own, with a note.
 */
export type StandingKind =
  | 'silent'
  | 'yes'
  | 'conditions-open'
  | 'conditions-declined'
  | 'unclear'
  | 'no'
  | 'outdated'
  | 'taken-off'

export interface CompanyStanding {
  readonly companyId: string
  readonly companyName: string
  readonly kind: StandingKind
  /** The company's latest word; null where it said nothing. */
  readonly last: Declaration | null
  readonly takenOff: TakenOff | null
}

export interface Declared {
  readonly sharedWith: readonly { readonly companyId: string; readonly companyName: string }[]
  readonly declarations: readonly Declaration[]
  readonly takenOff: readonly TakenOff[]
}

/**
 * Each fabricator's standing, in the order in which the revision was shared. A company that no longer sees the revision speaks
 * for it no more; but its no, or its condition, is not gone with the share: only taking it off the release, with a reason,
 * sets that aside.
 *
 * @param contentHash  `hashDeclaredContent` of the present content
 */
export function listStandings(
  { sharedWith, declarations, takenOff }: Declared,
  contentHash: string,
): CompanyStanding[] {
  const companies = new Map(sharedWith.map(({ companyId, companyName }) => [companyId, companyName]))
  for (const { companyId, companyName } of declarations) {
    if (!companies.has(companyId)) companies.set(companyId, companyName)
  }
  const isShared = (id: string) => sharedWith.some(({ companyId }) => companyId === id)
  const standings = [...companies].map(([companyId, companyName]): CompanyStanding => {
    const own = declarations.filter((declaration) => declaration.companyId === companyId)
    const last = own.length === 0 ? null : own.reduce((a, b) => (b.madeAt >= a.madeAt ? b : a))
    const off = takenOff.find((entry) => entry.companyId === companyId) ?? null
    return {
      companyId,
      companyName,
      last,
      takenOff: off,
      kind: off === null ? readKind(last, contentHash) : 'taken-off',
    }
  })
  return standings.filter(
    (standing) => isShared(standing.companyId) || isUnresolved(standing) || standing.takenOff !== null,
  )
}

function readKind(last: Declaration | null, contentHash: string): StandingKind {
  if (last === null) return 'silent'
  if (last.contentHash !== contentHash) return 'outdated'
  if (last.verdict === 'not-buildable') return 'no'
  if (last.conditions.some(({ state }) => state === 'open')) return 'conditions-open'
  // What was asked for and refused is not a yes: the fabricator says whether it builds without.
  if (last.conditions.some(({ state }) => state === 'declined')) return 'conditions-declined'
  return last.isFromBefore === true && last.note !== '' ? 'unclear' : 'yes'
}

/** A word that was no plain yes stays in the way, also on earlier content, until the company says otherwise. */
export function isUnresolved({ kind, last }: CompanyStanding): boolean {
  switch (kind) {
    case 'no':
    case 'conditions-open':
    case 'conditions-declined':
    case 'unclear':
      return true
    case 'outdated':
      return last !== null && (last.verdict !== 'buildable' || (last.isFromBefore === true && last.note !== ''))
    default:
      return false
  }
}

/** Does a fabricator say that this content can be built, and none that it cannot? */
export function isDeclaredBuildable(declared: Declared, contentHash: string): boolean {
  const standings = listStandings(declared, contentHash)
  return standings.some(({ kind }) => kind === 'yes') && !standings.some(isUnresolved)
}
