import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, it } from 'vitest'
import { ACTS } from '@/lib/inputs'
import { ACTIONS, TRAIL_WORDS } from '@/lib/review'

/** Functions of the data layer's top floor that take the person who acts. */
function listFunctions(): string[] {
  const folder = path.join('lib', 'data', 'acts')
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.ts'))
    .flatMap((file) => {
      const text = readFileSync(path.join(folder, file), 'utf8')
      return [...text.matchAll(/^export (?:async )?function (\w+)\(\s*actor: Actor\b/gm)].map(([, name = '']) => name)
    })
}

/** Functions with an actor that are no act of a form: each with the reason. */
const NO_FORM: Readonly<Record<string, string>> = {
  getMail: 'a reading, which the trail records',
  getPackageFile: 'a reading, which the trail records',
  signOutEverywhere: 'the application says which devices',
  finishIdentityLink: 'comes back from the provider with a token',
  confirmPassword: 'a part of other acts',
  confirmPerson: 'a part of other acts',
  noteAccess: 'what the server notes of a reading',
  runArtworkReading: 'the server itself, for the person who changed the artwork',
  askForRemedies: 'a route that is followed, and changes nothing of a review',
  askForWayOut: 'a route that is followed, and changes nothing of a review',
  runRemedies: 'the server itself, for the person who asked',
  runWayOut: 'the server itself, for the person who asked',
  readJob: 'a reading',
  stopJob: 'anyone who followed a job went away',
}

/** Words that no act of a signed-in person's form records. */
const OTHER_WORDS: Readonly<Record<string, string>> = {
  'workspace-created': 'first set-up',
  'signed-in': 'signing in',
  'signed-out': 'signing out',
  'sessions-ended': 'signing out everywhere',
  'attempts-limited': 'the application refuses attempts',
  'reset-mailed': 'asked for by a visitor',
  'password-reset': 'by a link',
  'address-changed': 'by a link',
  'recovery-code-used': 'the second step of signing in',
  'identity-linked': 'comes back from the provider',
  'revision-looked-at': 'a fabricator opens the page',
  'mail-opened': 'a reading',
  'trail-exported': 'a reading',
  'package-fetched': 'a reading',
  'state-recorded': 'the application itself',
  'artwork-read': 'the application itself',
  'clock-set-back': 'the application itself',
  'act-refused': 'any act that asks for the person again',
  'state-adopted': 'the application itself',
}

/** Rules of what somebody sees, and rules that are asked as a part of another. */
const isViewing = (action: string) => /:(view|download|check|edit-own)/.test(action)

describe('the table of acts', () => {
  it('names every function that takes a person and what they sent', () => {
    const functions = new Set(listFunctions())
    expect(functions.size).toBeGreaterThan(50)
    expect([...functions].filter((name) => !(name in ACTS) && !(name in NO_FORM))).toEqual([])
    expect([...Object.keys(ACTS), ...Object.keys(NO_FORM)].filter((name) => !functions.has(name))).toEqual([])
  })

  it('accounts for every word of the trail', () => {
    const recorded = new Set<string>(Object.values(ACTS).flatMap(({ records }) => records))
    expect(Object.keys(TRAIL_WORDS).filter((word) => !recorded.has(word) && !(word in OTHER_WORDS))).toEqual([])
    expect(Object.keys(OTHER_WORDS).filter((word) => recorded.has(word))).toEqual([])
  })

  it('accounts for every rule that is not one of viewing', () => {
    const asked = new Set<string>(Object.values(ACTS).flatMap(({ rule }) => rule))
    expect(ACTIONS.filter((action) => !asked.has(action) && !isViewing(action))).toEqual([])
  })
})
