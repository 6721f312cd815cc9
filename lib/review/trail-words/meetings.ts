import { because, type StoredDetails, word } from './word'

type Cited = { number: number; text: string }
const cite = (details: StoredDetails<Cited>) => `need ${details.text('number')} "${details.text('text')}"`

/** Meetings of a review, and the needs that it shows to be met. */
export const MEETING_WORDS = {
  'meeting-recorded': word<{
    number: number
    title: string
    heldOn: string
    present: string[]
    excused: string[]
    decisions: string[]
  }>()({
    subject: 'meeting',
    sentence: (details) =>
      `recorded meeting ${details.text('number')} "${details.text('title')}", held ${details.text('heldOn')}`,
  }),
  'need-stated': word<Cited & { method: string; plannedOn: string | null; items: string[] }>()({
    subject: 'need',
    sentence: (details) => `stated ${cite(details)}, shown by ${details.text('method')}`,
  }),
  'need-reported': word<Cited & { result: string; files: string[] }>()({
    subject: 'need',
    sentence: (details) => `reported on ${cite(details)}: ${details.text('result')}`,
  }),
  'need-accepted': word<Cited & { reason: string }>()({
    subject: 'need',
    sentence: (details) => `accepted the result of ${cite(details)}${because(details)}`,
  }),
  'need-dropped': word<Cited & { reason: string }>()({
    subject: 'need',
    sentence: (details) => `dropped ${cite(details)}${because(details)}`,
  }),
  'needs-carried-over': word<{ from: string; fromId: string; needCount: number }>()({
    subject: 'revision',
    sentence: (details) => `carried ${details.text('needCount')} needs over from revision ${details.text('from')}`,
  }),
} as const
