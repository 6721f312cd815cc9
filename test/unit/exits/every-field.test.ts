import { describe, expect, it } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import type { Design } from '@/lib/engine'
import { composeMail } from '@/lib/mail'
import type { PackageContent } from '@/lib/package'
import { makeBends } from '@/lib/package/report/bends'
import { makeConstruction } from '@/lib/package/report/construction'
import { makeFeatures } from '@/lib/package/report/features'
import { makeBrief, makeSummary } from '@/lib/package/report/opening'
import { applyGuardedPatch, compareDesigns, makeDesignPatch } from '@/lib/review'
import { makeSnapshot } from '../review/snapshot-factory'
import { findAbsence, listIdle } from './declared-absences'
import { complete, FIELD_CASES, TYPED_PATTERNS, withValue } from './field-values'
import { results } from './full-design'

/*
 * Every field of the dictionary appears at every exit, or is declared to be absent there with a reason (declared-absences.ts). A field that
 * is added to the design fails here until somebody decides where it shows. That its digits are right is tried beside this file.
 */

const snapshot = makeSnapshot()
const content = (design: Design): PackageContent =>
  ({
    snapshot: {
      ...snapshot,
      design,
      evaluation: { results, engineVersion: results.engineVersion, evaluatedAt: '2026-11-28T00:00:00Z' },
    },
  }) as unknown as PackageContent

const listChanges = (design: Design) => compareDesigns(complete, design).map(({ sentence }) => sentence)

const EXITS: Readonly<Record<string, (design: Design) => string>> = {
  report: (design) =>
    JSON.stringify([
      makeSummary(content(design)),
      makeBrief(content(design)),
      makeConstruction(content(design), null),
      makeBends(content(design), null),
      makeFeatures(content(design)),
    ]),
  // A plan of fields that were filled one by one is none: what the sheet says of a plan is tried in test/unit/drawing/plan-sheets.test.ts.
  drawing: (design) => JSON.stringify(makeSheetContents({ ...design, plan: null }, results, FILE_UNITS)),
  comparison: (design) => listChanges(design).join('\n'),
  'mail of a proposal': (design) =>
    composeMail({
      kind: 'proposal',
      event: 'made',
      place: {
        projectName: 'Skua',
        revisionLabel: 'A',
        href: 'http://localhost:3000/projects/p/revisions/r/proposals/q',
      },
      title: 'A change',
      by: 'Bram Tolley',
      changes: listChanges(design),
      text: '',
      mayDecide: false,
      wanted: null,
    }).text,
}

function isShown(write: (design: Design) => string, { places }: (typeof FIELD_CASES)[number]): boolean {
  return places.some(({ path, one, other, probe }) => {
    const [first, second] = [write(withValue(path, one)), write(withValue(path, other))]
    return first !== second && (probe === null || first.includes(probe))
  })
}

it('has two values for every field of the dictionary', () => {
  expect(FIELD_CASES.filter(({ places }) => places.length === 0).map(({ pattern }) => pattern)).toEqual([])
  expect(FIELD_CASES.length).toBe(TYPED_PATTERNS.length)
  expect(FIELD_CASES.length).toBeGreaterThan(300)
})

describe.each(Object.keys(EXITS))('%s', (name) => {
  const write = EXITS[name] ?? (() => '')

  it('shows every field, or says why it does not', () => {
    const absent = FIELD_CASES.filter((field) => !isShown(write, field)).map(({ pattern }) => pattern)
    expect(absent.filter((pattern) => findAbsence(name, pattern) === null)).toEqual([])
    expect(listIdle(name, absent)).toEqual([])
  }, 60_000)

  it('writes words and names, never an object, an id of the list or a blank', () => {
    const text = write(complete)
    expect(text).not.toContain('[object')
    expect(text).not.toContain('undefined')
    expect(text).not.toMatch(/\b(NaN|null mm)\b/)
  })
})

it('the drawing answers every question that the dictionary has it asked', () => {
  const asked = TYPED_PATTERNS.filter(({ node }) => node.question !== undefined)
  const left = asked.filter(({ pattern }) => findAbsence('drawing', pattern) !== null).map(({ pattern }) => pattern)
  expect(left).toEqual(['brief.partNumber'])
  expect(asked.length).toBeGreaterThan(10)
})

it('a proposal carries every field', () => {
  const lost = FIELD_CASES.filter(({ places }) =>
    places.some(({ path, one }) => {
      const wanted = withValue(path, one)
      const patched = applyGuardedPatch(complete, makeDesignPatch(complete, wanted), complete)
      return !patched.ok || JSON.stringify(patched.document) !== JSON.stringify(wanted)
    }),
  )
  expect(lost.map(({ pattern }) => pattern)).toEqual([])
}, 60_000)
