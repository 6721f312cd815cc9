import type { Content } from 'pdfmake/interfaces'
import {
  DECLARATION_WORDS,
  type Declaration,
  describeCondition,
  describeDecision,
  hashDeclaredContent,
} from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, makeEmptyPart, makeTable } from './style'
import { asSentence, formatTime } from './words'

/** What fabricators said, each condition with what became of it, who is off the release, and what is left to be done. */
export function makeDeclarations({ snapshot }: PackageContent): Content[] {
  const declared = hashDeclaredContent(snapshot)
  return [
    snapshot.declarations.length === 0
      ? makeEmptyPart(level1('10  Fabricator declarations'), 'No fabricator declared on this revision.')
      : makeTable(
          [
            { label: 'Fabricator', width: 110 },
            { label: 'Declared', width: '*' },
            { label: 'By', width: 130 },
            { label: 'Content', width: 74 },
          ],
          snapshot.declarations.map((declaration) => [
            declaration.companyName,
            { stack: [DECLARATION_WORDS[declaration.verdict], ...makeLines(declaration)] },
            `${declaration.madeByName}, ${formatTime(declaration.madeAt)}`,
            declaration.contentHash === declared ? 'as released' : 'earlier content',
          ]),
          level1('10  Fabricator declarations'),
        ),
    ...snapshot.takenOff.map(
      ({ companyName, byName, at, reason }): Content => ({
        text: `${companyName} was taken off this release by ${byName}, ${formatTime(at)}: ${reason}`,
        margin: [0, 3, 0, 3],
      }),
    ),
  ]
}

function makeLines({ note, isFromBefore, verdict, conditions }: Declaration): Content[] {
  const noted = note === '' ? [] : [{ text: note, style: 'small' }]
  const unclear =
    isFromBefore === true && verdict === 'buildable' && note !== ''
      ? [{ text: 'made before conditions were recorded apart: the note may hold one', style: 'small' }]
      : []
  return [
    ...noted,
    ...unclear,
    ...conditions.map((condition) => {
      const by = condition.decidedByName === null ? '' : ` Decided by ${condition.decidedByName}.`
      const decided = asSentence(describeDecision(condition) || 'not decided')
      return { text: `Condition: ${asSentence(describeCondition(condition))} ${decided}${by}`, style: 'small' }
    }),
  ]
}
