import type { Content } from 'pdfmake/interfaces'
import { describePoint, getNeedState, type Meeting, NEED_METHOD_WORDS, NEED_STATE_WORDS, type Need } from '@/lib/review'
import type { PackageContent } from '../content'
import { level1, level2, makeEmptyPart, makeFacts, makeTable } from './style'
import { formatTime } from './words'

const NEEDS = 'Annex B  Needs'
const MEETINGS = 'Annex C  Meetings'

/** The matrix of needs, and the minutes of each meeting: the team's own. */
export function makeMinutes({ minutes, snapshot, release }: PackageContent): Content[] {
  if (minutes === null) return []
  const question = (itemId: string) => snapshot.items.find(({ id }) => id === itemId)?.question ?? itemId
  const { needs, meetings } = minutes
  return [
    needs.length === 0
      ? makeEmptyPart(level1(NEEDS), 'No need was stated.')
      : makeTable(
          [
            { label: 'No.', width: 20, isNumeric: true },
            { label: 'Need, and the items that speak of it', width: '*' },
            { label: 'Shown by', width: 70 },
            { label: 'Planned', width: 58 },
            { label: 'Result', width: 120 },
            { label: 'Accepted', width: 84 },
          ],
          needs.map((need) => [
            String(need.number),
            { stack: [need.text, ...need.itemIds.map((id) => ({ text: question(id), style: 'small' }))] },
            NEED_METHOD_WORDS[need.method],
            need.plannedOn ?? 'not planned',
            { stack: makeResult(need, release.at.slice(0, 10)) },
            describeAcceptance(need),
          ]),
          level1(NEEDS),
        ),
    meetings.length === 0
      ? makeEmptyPart(level1(MEETINGS), 'No meeting was recorded.')
      : { text: MEETINGS, style: 'section' },
    ...meetings.flatMap(makeMeeting),
  ]
}

function makeResult(need: Need, day: string): Content[] {
  if (need.droppedReason !== null) return [`dropped: ${need.droppedReason}`]
  const files = need.files.map(({ fileName, sha256 }) => `${fileName} (SHA-256 ${sha256.slice(0, 16)}…)`)
  return [
    need.result === '' ? NEED_STATE_WORDS[getNeedState(need, day)] : need.result,
    ...(need.reportedByName === null || need.reportedAt === null
      ? []
      : [{ text: `${need.reportedByName}, ${formatTime(need.reportedAt)}`, style: 'small' }]),
    ...(files.length === 0 ? [] : [{ text: files.join(', '), style: 'small' }]),
  ]
}

function describeAcceptance({ acceptedByName, acceptedAt, acceptNote }: Need): string {
  if (acceptedByName === null || acceptedAt === null) return 'not accepted'
  return `${acceptedByName}, ${formatTime(acceptedAt)}${acceptNote === '' ? '' : `: ${acceptNote}`}`
}

function makeMeeting(meeting: Meeting): Content[] {
  const { number, title, heldOn, present, excused, agenda, decisions, recordedByName, recordedAt } = meeting
  const facts = [
    ['Present', present.join(', ')],
    ['Excused', excused.length === 0 ? 'nobody' : excused.join(', ')],
    ['Agenda', agenda === '' ? 'not stated' : agenda],
    ['Minutes', `${recordedByName}, ${formatTime(recordedAt)}`],
  ] as const
  return [
    makeFacts(facts, level2(`Meeting ${number}, ${heldOn}: ${title}`)),
    decisions.length === 0
      ? makeEmptyPart(level2('Decisions'), 'Nothing was decided.')
      : makeTable(
          [
            { label: 'No.', width: 20, isNumeric: true },
            { label: 'Decision', width: '*' },
            { label: 'Carried out by', width: 160 },
          ],
          decisions.map(({ ordinal, text, points }) => [String(ordinal), text, describePoint(points)]),
          level2(`Decisions of meeting ${number}`),
        ),
  ]
}
