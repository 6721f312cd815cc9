import { expect } from 'vitest'
import { type PackageFile, readArchive, verifyPackage } from '@/lib/package'
import { CAST } from '@/seed/sign-ins'
import { readPdfPages } from '@/test/unit/package/pdf-text'

/**
 * What a quality auditor looks for in a released package, read as they read it: from the files alone. The points are those of design control in general terms
 * (ISO 9001:2015, 8.3.4 to 8.3.6) and a list of our own.
 */
export function auditPipit(archive: Uint8Array): void {
  const { files, pages } = openArchive(archive)
  checkFirstPage(pages, [
    'Released, for first articles, without a limit of number or date',
    'nothing: first issue of this part number',
    'change QI-0207',
    'effective first lot',
    `${CAST.lead.name} as lead engineer`,
    CAST.mechanical.name,
    `${CAST.quality.name} (quality)`,
    'buildable',
    `Approved by ${CAST.lead.name}.`,
  ])
  checkWholeReport(pages.join(''))
  checkOrderOfDates(files)
  checkIndependence(files)
  checkAgreement(files, pages)
  expectNoWordOf(files, pages, ['Brackenfold'])
}

/** Skua, released on a condition that became an action, with waivers for so many parts: in the team's edition and in each fabricator's. */
export function auditSkua(archives: Readonly<Record<'team' | 'brackenfold' | 'ostrel', Uint8Array>>): void {
  const { files, pages } = openArchive(archives.team)
  checkFirstPage(pages, [
    'Released conditionally, for prototypes, at most 10 parts',
    'Brackenfold Circuits: The 12 µm clad is ordered on the day of release: first articles take eight weeks from then. Turned into an action',
    'Brackenfold Circuits, Ostrel Flexible: nothing',
    'buildable with conditions',
    'Ostrel Flexible: buildable',
    'change QI-0219; One thinner layer through the hinge; effective first lot',
    CAST.designer.name,
    `${CAST.quality.name} (quality)`,
    'At most 10 parts.',
    `Approved by ${CAST.quality.name}.`,
    'before the first article',
  ])
  checkWholeReport(pages.join(''))
  checkIndependence(files)
  checkAgreement(files, pages)
  checkWaivers(files, pages)
  const report = pages.join('')
  for (const event of [
    'declared for Brackenfold Circuits: buildable with conditions',
    'meeting 1',
    'declined the proposal',
    'declared design and artwork reviewed',
  ]) {
    expect(report.slice(report.indexOf('13Chronology'))).toContain(lettersOf(event))
  }
  const people = report.slice(report.lastIndexOf('14Participants'))
  for (const { name } of [CAST.observer, CAST.auditor])
    expect(people, 'who was silent').toContain(`${lettersOf(name)}QuillmoorInstruments`)
  const own = { brackenfold: ['Ostrel', CAST.ostrel.name], ostrel: ['Brackenfold', CAST.brackenfold.name] }
  for (const company of ['brackenfold', 'ostrel'] as const) {
    const edition = openArchive(archives[company])
    checkWholeReport(edition.pages.join(''))
    checkAgreement(edition.files, edition.pages)
    expectNoWordOf(edition.files, edition.pages, own[company])
  }
}

function openArchive(archive: Uint8Array): { files: readonly PackageFile[]; pages: readonly string[] } {
  const verified = verifyPackage(archive)
  expect(verified.ok ? [] : verified.issues).toEqual([])
  const read = readArchive(archive)
  if (!read.ok) throw new Error(read.issues[0]?.message)
  return { files: read.value, pages: readPdfPages(fileOf(read.value, 'report.pdf').bytes).map(lettersOf) }
}

/** In no file and on no page: neither a company that has no part in an edition nor its people. */
function expectNoWordOf(files: readonly PackageFile[], pages: readonly string[], names: readonly string[]): void {
  for (const name of names) {
    for (const { path, bytes } of files.filter((file) => /\.(json|txt|svg)$/.test(file.path))) {
      expect(new TextDecoder().decode(bytes), path).not.toContain(name)
    }
    expect(pages.join('')).not.toContain(lettersOf(name))
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
function checkFirstPage([first = '', second = '']: readonly string[], own: readonly string[]): void {
  for (const text of [
    ...own,
    'Conditions',
    'Changed since the last issue',
    'Changed since the fabricator looked',
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
  for (const nonsense of ['nonenone', 'undefined', '[objectObject]', 'NaN', ';.', ',.'])
    expect(text).not.toContain(nonsense)
  // Two stops are a sentence that was set into another.
  expect(text.replaceAll('...', '')).not.toContain('..')
  checkParticipants(text)
  // Times of day have seconds and their zone.
  const times = [...text.matchAll(/\d{4}-\d{2}-\d{2}\d{2}:\d{2}(:\d{2}UTC)?/g)]
  expect(times.length).toBeGreaterThan(20)
  expect(times.filter(([, rest]) => rest === undefined)).toEqual([])
  expect(text).not.toMatch(/note\d+ofthedrawing/)
}

/** Each of the cast stands in the list of participants once at most, with what they did in one line. */
function checkParticipants(text: string): void {
  const list = text.slice(text.lastIndexOf('14Participants'), text.lastIndexOf('15Sources'))
  for (const { name } of Object.values(CAST)) expect(list.split(lettersOf(name)).length, name).toBeLessThan(3)
  expect(list).toContain('signed,released')
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

/** What two documents of a package state is the same in both. */
function checkAgreement(files: readonly PackageFile[], pages: readonly string[]): void {
  const [report, sheets] = [pages.join(''), readSheets(files)]
  const { brief, construction, bends } = jsonOf(files, 'design.json')
  const release = jsonOf(files, 'release.json')
  const { contentHash, revision } = jsonOf(files, 'manifest.json')
  expect([release.number, release.revision]).toEqual([brief.partNumber, brief.revisionLabel])
  expect(revision.label).toBe(brief.revisionLabel)
  const [signed] = jsonOf(files, 'signatures.json').signatures
  for (const signature of jsonOf(files, 'signatures.json').signatures) {
    expect(signature.contentHash).toBe(signed.contentHash)
  }
  // A fabricator's edition holds a part of what was signed: its manifest names no hash of the whole.
  if (contentHash !== null) expect(contentHash).toBe(signed.contentHash)
  expect(report).toContain(signed.contentHash)
  for (const document of [report, sheets]) expect(document).toContain(lettersOf(brief.partNumber))
  for (const { name } of release.approvers) expect(sheets).toContain(lettersOf(name))
  // The tolerance that the checklist holds a thickness against is the one that the drawing asks for.
  for (const { name, statedToleranceUm } of construction.zones) {
    if (statedToleranceUm === null) continue
    expect(report).toContain(lettersOf(`Stated tolerance, ± ${statedToleranceUm} µm`))
    const row = sheets.slice(sheets.indexOf('Zonesandfinishedthickness'))
    expect(row.slice(row.indexOf(lettersOf(name))), name).toContain(`±${statedToleranceUm}`)
  }
  for (const { name, insideRadiusMm, radiusToleranceMm } of bends) {
    expect(report, name).toContain(lettersOf(`inside radius ${insideRadiusMm} mm ± ${radiusToleranceMm} mm`))
    expect(sheets, name).toContain(`${insideRadiusMm}±${radiusToleranceMm}`)
  }
  // How far the place of a bend may be off is said once in the brief, and again at its dimensions.
  const { bendPositionMm } = brief.tolerances
  const { dimensions } = jsonOf(files, 'design.json').plan
  for (const { id, plusMm } of dimensions) {
    if (/axis-place|bend-place/.test(id)) expect(plusMm, id).toBe(bendPositionMm)
  }
}

function readSheets(files: readonly PackageFile[]): string {
  return readPdfPages(fileOf(files, 'drawing/sheets.pdf').bytes).map(lettersOf).join('')
}

/** Each approved waiver stands in its part whole: for what, with what consequence, for how many parts; and no accepted risk is of another revision's numbers. */
function checkWaivers(files: readonly PackageFile[], pages: readonly string[]): void {
  const report = pages.join('')
  // Its title stands again at the head of each further page: the part begins at the first of them.
  const part = report.slice(report.indexOf('7Waivers'), report.lastIndexOf('8Comments'))
  const { waivers, items } = jsonOf(files, 'checklist.json')
  for (const { reason, consequence, quantityLimit } of waivers) {
    expect(part).toContain(lettersOf(reason))
    if (consequence !== '') expect(part).toContain(lettersOf(consequence.slice(1)))
    if (quantityLimit !== null) expect(part).toContain(lettersOf(`At most ${quantityLimit} parts.`))
  }
  const counting = items.flatMap(({ state, waiver }: { state: string; waiver: { id: string } | null }) =>
    state === 'waived' && waiver !== null ? [waiver.id] : [],
  )
  expect(part.split('countsnolonger').length - 1).toBe(waivers.length - new Set(counting).size)
  for (const { question, state, verdict, answer } of items) {
    if (state === 'waived' && verdict === 'meets') expect(answer?.carriedFrom, question).toBeUndefined()
  }
}
