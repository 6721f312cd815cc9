import { DESIGN_PLACE } from '../results'
import { countOf } from '../units'
import { type ArtworkSubject, type Comparison, type OpenFact, unknownFiles } from './compared'

/** What was not read, or not whole: of that nobody can say that it agrees. */
export function listUnread({ artwork }: ArtworkSubject): Comparison {
  const open: OpenFact[] = artwork.refused.map(({ name, reason }) =>
    say(`${name} was refused: ${reason}`, 'pack it again'),
  )
  for (const file of artwork.files) {
    if (file.kind === 'other' || (file.role.role === null && file.objectCount === 0)) continue
    const [issue] = file.issues.filter(({ severity }) => severity === 'error')
    if (issue !== undefined) {
      const more = file.errorCount > 1 ? `, and ${countOf(file.errorCount - 1, 'place')} more` : ''
      open.push(say(`${file.name} was not read whole: line ${issue.line}: ${issue.reason}${more}`, 'export it again'))
    }
    for (const { text, taken } of file.questions) {
      open.push(say(`${file.name}: ${text}${taken === null ? '' : ` Taken: ${taken}.`}`, 'ask who exported the file'))
    }
  }
  for (const { name, role } of unknownFiles(artwork))
    open.push(say(`${name}: ${role.reason}`, 'say on the artwork page what it is for'))
  return { pairs: [], open }
}

const say = (because: string, decidedBy: string): OpenFact => ({
  fact: 'what the files say',
  because,
  decidedBy,
  places: [DESIGN_PLACE],
})
