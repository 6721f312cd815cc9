import type { SheetTable } from './model'

/** A revision that was issued, or the one that is drawn, as the project's records have it. */
export interface RevisionEntry {
  readonly label: string
  /** Why it was issued, with the number of the change; empty where nobody wrote it, or where it is another party's. */
  readonly change: string
  /** Who released it; empty as `change`, or before that. */
  readonly releasedBy: string
  /** Calendar day of release (`2027-03-01`); null before that. */
  readonly issuedOn: string | null
}

/** Revisions that led to this one, the first at the top and this one last; null before any was issued: the title block says which this is. */
export function makeRevisionTable(entries: readonly RevisionEntry[]): SheetTable | null {
  if (entries.every(({ issuedOn }) => issuedOn === null)) return null
  const orDash = (text: string) => (text.trim() === '' ? '–' : text.trim())
  return {
    kind: 'table',
    id: 'revisions',
    title: 'Revisions issued',
    keyColumnCount: 1,
    columns: [
      { label: 'Revision', leastMm: 18, growth: 0 },
      { label: 'Change', leastMm: 40, growth: 2 },
      { label: 'Released by', leastMm: 28, growth: 1 },
      { label: 'Date of issue', leastMm: 24, growth: 0 },
    ],
    rows: entries.map(({ label, change, releasedBy, issuedOn }, index) => ({
      id: `revision-${index + 1}`,
      cells: [orDash(label), orDash(change), orDash(releasedBy), issuedOn ?? 'not issued'],
    })),
  }
}
