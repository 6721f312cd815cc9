import { because, type StoredDetails, word } from './word'

type Cited = {
  readonly number: number
  readonly text: string
}

type Changed = Cited & {
  owner: string
  due: string
  dueOn: string | null
  before: { owner: string; due: string; dueOn: string | null }
  reason: string
}

const cite = (details: StoredDetails<Cited>) => `action ${details.text('number')} "${details.text('text')}"`

/** Actions that a review takes on; those due after the release live on with it. */
export const ACTION_WORDS = {
  'action-taken-on': word<Cited & { owner: string; due: string; dueOn: string | null; origin: string }>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `took on ${cite(details)}, owner ${details.text('owner')}`,
  }),
  'action-changed': word<Changed>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `changed ${cite(details)}, owner ${details.text('owner')}${because(details)}`,
  }),
  'action-reported': word<Cited & { evidence: string }>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `reported ${cite(details)} done: ${details.text('evidence')}`,
  }),
  'action-reopened': word<Cited & { was: string; reason: string }>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `reopened ${cite(details)}${because(details)}`,
  }),
  'action-closed': word<Cited & { reason: string }>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `closed ${cite(details)}${because(details)}`,
  }),
  'action-dropped': word<Cited & { reason: string }>()({
    subject: 'action',
    audience: 'action-readers',
    sentence: (details) => `dropped ${cite(details)}${because(details)}`,
  }),
} as const
