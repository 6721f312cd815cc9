import { expect } from 'vitest'
import { type PackageFile, readArchive, verifyPackage } from '@/lib/package'
import { CAST } from '@/seed/sign-ins'
import { readPdfPages } from '@/test/unit/package/pdf-text'

/**
 * What a quality auditor looks for in a released package, read as they read it: from the files alone. The points are those of design control in general terms
 * (ISO 9001:2015, 8.3.4 to 8.3.6) and a list of our own.
 */
export function auditPipit(archive: Uint8Array): void {
  const verified = verifyPackage(archive)
  expect(verified.ok ? [] : verified.issues).toEqual([])
  const read = readArchive(archive)
  if (!read.ok) throw new Error(read.issues[0]?.message)
  const files = read.value
  const pages = readPdfPages(fileOf(files, 'report.pdf').bytes).map(lettersOf)
  checkFirstPage(pages)
  checkWholeReport(pages.join(''))
  checkOrderOfDates(files)
  checkIndependence(files)
  for (const { path, bytes } of files.filter((file) => /\.(json|txt)$/.test(file.path))) {
    expect(new TextDecoder().decode(bytes), path).not.toContain('Brackenfold')
  }
}

/** Lines break where the layout wants: letters alone are compared. */
const lettersOf = (text: string) => text.replaceAll(/\s+/g, '')

function fileOf(files: readonly PackageFile[], path: string): PackageFile {
  const file = files.find((one) => one.path === path)
  if (file === undefined) throw new Error(`the package has no ${path}`)
  return file
}

const jsonOf = (files: readonly PackageFile[], path: string) =>
  JSON.parse(new TextDecoder().decode(fileOf(files, path).bytes))

/** The decision, for what, what it replaces, who in which role, margins, risks, actions and changes: on one page. */
function checkFirstPage([first = '', second = '']: readonly string[]): void {
  for (const text of [
    'Released, for first articles',
    'Conditions',
    'nothing: first issue of this part number',
    'change QI-0207',
    'effective first lot',
    'Changed since the last issue',
    'Changed since the fabricator looked',
    `${CAST.lead.name} as lead engineer`,
    CAST.mechanical.name,
    `${CAST.quality.name} (quality)`,
    'buildable',
    'Smallest computed margins',
    'Accepted risks',
    'Open actions',
  ]) {
    expect(first).toContain(lettersOf(text))
  }
  expect(first).not.toContain('notstated')
  expect(second).toContain(lettersOf('1  Summary'))
}

function checkWholeReport(text: string): void {
  for (const part of ['13  Chronology', '14  Participants', 'Annex A', 'Words against numbers']) {
    expect(text).toContain(lettersOf(part))
  }
  for (const nonsense of ['nonenone', 'undefined', '[objectObject]', 'NaN']) expect(text).not.toContain(nonsense)
  // Times of day have seconds and their zone.
  const times = [...text.matchAll(/\d{4}-\d{2}-\d{2}\d{2}:\d{2}(:\d{2}UTC)?/g)]
  expect(times.length).toBeGreaterThan(20)
  expect(times.filter(([, rest]) => rest === undefined)).toEqual([])
  expect(text).not.toMatch(/note\d+ofthedrawing/)
}

/** Planned, declared, reviewed, signed, released: in this order, and nothing before the day that was planned for it. */
function checkOrderOfDates(files: readonly PackageFile[]): void {
  const { brief } = jsonOf(files, 'design.json')
  const { records } = jsonOf(files, 'trail.json')
  const dayOf = (action: string): string => {
    const record = records.findLast((one: { action: string }) => one.action === action)
    if (record === undefined) throw new Error(`the trail has no ${action}`)
    return record.at
  }
  const steps = ['declared-buildable', 'declared-reviewed', 'revision-signed', 'revision-released'].map(dayOf)
  expect([...steps].sort()).toEqual(steps)
  const [declared = ''] = steps
  expect(brief.manufacturingReviewDate <= declared.slice(0, 10)).toBe(true)
  expect(brief.layoutFreezeDate <= dayOf('revision-signed').slice(0, 10)).toBe(true)
  expect(brief.needDate > dayOf('revision-released').slice(0, 10)).toBe(true)
}

function checkIndependence(files: readonly PackageFile[]): void {
  const { authors, reviews, signatures, differences, loosened } = jsonOf(files, 'signatures.json')
  const made = authors.map(({ name }: { name: string }) => name)
  for (const { name } of [...reviews, ...signatures]) expect(made).not.toContain(name)
  expect(loosened).toEqual([])
  const left = differences.filter(
    (one: { acknowledged: unknown; isDecidedInChecklist: boolean }) =>
      one.acknowledged === null && !one.isDecidedInChecklist,
  )
  expect(left).toEqual([])
}
