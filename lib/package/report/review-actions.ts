import type { Content } from 'pdfmake/interfaces'
import { ACTION_STATE_WORDS, describeDue, isOverdue, type ReviewAction } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, makeEmptyPart, makeTable } from './style'
import { asSentence, formatTime } from './words'

const TITLE = '9  Actions'

/** What is still to be done at release, and what was done: those due later are part of what was signed. */
export function makeActions({ snapshot, release }: PackageContent): Content[] {
  const day = release.at.slice(0, 10)
  return [
    snapshot.actions.length === 0
      ? makeEmptyPart(level1(TITLE), 'No action was taken on.')
      : makeTable(
          [
            { label: 'No.', width: 20, isNumeric: true },
            { label: 'What is to be done, and what shows that it was', width: '*' },
            { label: 'Owner', width: 96 },
            { label: 'Due', width: 84 },
            { label: 'State', width: 96 },
          ],
          snapshot.actions.map((action) => [
            String(action.number),
            {
              stack: [
                action.text,
                { text: asSentence(`From ${action.origin.label}`), style: 'small' },
                ...makeEvidence(action),
              ],
            },
            `${action.ownerName}, ${action.ownerCompanyName}`,
            describeDue(action),
            { stack: [describeState(action), ...(isOverdue(action, day) ? [{ text: 'overdue', bold: true }] : [])] },
          ]),
          level1(TITLE),
        ),
  ]
}

function makeEvidence({ evidence, files }: ReviewAction): Content[] {
  const listed = files.map(({ fileName, sha256 }) => `${fileName} (SHA-256 ${sha256.slice(0, 16)}…)`)
  return [
    ...(evidence === '' ? [] : [{ text: `Evidence: ${evidence}`, style: 'small' }]),
    ...(listed.length === 0 ? [] : [{ text: `Files: ${listed.join(', ')}`, style: 'small' }]),
  ]
}

function describeState(action: ReviewAction): string {
  const word = ACTION_STATE_WORDS[action.state]
  if (action.closedByName === null || action.closedAt === null) return word
  const note = action.closeNote === '' ? '' : `: ${action.closeNote}`
  return `${word} by ${action.closedByName}, ${formatTime(action.closedAt)}${note}`
}
