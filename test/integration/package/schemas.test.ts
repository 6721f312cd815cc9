import Ajv from 'ajv/dist/2020'
import { beforeAll, describe, expect, test } from 'vitest'
import { evaluate } from '@/lib/engine'
import { buildPackage, type PackageContent, type PackageFile, readArchive } from '@/lib/package'
import { getSchemaPath } from '@/lib/package/schemas'
import { makeContent, makeKeys, makeSnapshot, readSeedDesign } from './content-factory'

const noDocuments = async () => []

async function build(content: PackageContent): Promise<ReadonlyMap<string, unknown>> {
  const read = readArchive(await buildPackage(content, makeKeys(), noDocuments))
  if (!read.ok) throw new Error('the package cannot be read')
  const json = (file: PackageFile) => [file.path, JSON.parse(new TextDecoder().decode(file.bytes))] as const
  return new Map(read.value.filter(({ path }) => path.endsWith('.json')).map(json))
}

/** With a general validator of JSON Schema 2020-12, which knows nothing of this program. Formats are given as patterns as well. */
function findFaults(files: ReadonlyMap<string, unknown>, path: string): string[] {
  const ajv = new Ajv({ allErrors: true, validateFormats: false })
  const schema = files.get(getSchemaPath(path))
  if (typeof schema !== 'object' || schema === null) throw new Error(`there is no schema of ${path}`)
  const validate = ajv.compile(schema)
  validate(files.get(path))
  return (validate.errors ?? []).map(({ instancePath, message, params }) =>
    [instancePath, message, JSON.stringify(params)].join(' '),
  )
}

/** Files whose form is not said by a schema: what was signed, in canonical form. */
const UNDESCRIBED = /^(schemas\/|signed-content\.json$|signed-parts\/)/

/** All that a review may hold, said out. */
function makeFullContent(): PackageContent {
  const content = makeContent()
  const { snapshot } = content
  const at = '2027-03-01T09:00:00.000Z'
  const [item] = snapshot.items
  if (item === undefined) throw new Error('there are no items')
  const done = { kind: 'file', fileName: 'test.pdf', sha256: 'a'.repeat(64) } as const
  return {
    ...content,
    minutes: {
      meetings: [
        {
          id: 'm1',
          number: 1,
          title: 'Design review',
          heldOn: '2027-02-20',
          agenda: 'Hinge',
          present: ['Ines Calder'],
          excused: [],
          decisions: [
            {
              ordinal: 1,
              text: 'Order the clad.',
              points: { kind: 'action', id: 'a1', label: 'action 1: Order the clad' },
            },
          ],
          recordedByName: 'Ines Calder',
          recordedAt: at,
        },
      ],
      needs: [
        {
          id: 'n1',
          number: 1,
          text: 'Survives 100 000 cycles',
          itemIds: [item.id],
          method: 'test',
          plannedOn: '2027-02-25',
          result: 'survived',
          files: [{ id: 'f1', fileName: 'cycles.csv', sha256: 'c'.repeat(64) }],
          reportedById: 'u1',
          reportedByName: 'Joss Pell',
          reportedAt: at,
          acceptedByName: null,
          acceptedAt: null,
          acceptNote: '',
          droppedReason: null,
          statedByName: 'Ines Calder',
          version: 1,
        },
      ],
    },
    snapshot: {
      ...snapshot,
      threads: [
        {
          id: 'thread-9',
          kind: 'must-change',
          state: 'closed',
          title: 'The web is too narrow',
          anchor: { kind: 'bend', id: 'hinge', label: 'Hinge' },
          openedBy: 'u1',
          openedByName: 'Joss Pell',
          openedAt: at,
          audienceCompanyId: 'company-brackenfold',
          openedByCompanyId: 'company-brackenfold',
          openedByCompanyName: 'Brackenfold Circuits',
          comments: [
            {
              id: 'c1',
              authorId: 'u1',
              authorName: 'Joss Pell',
              companyName: 'Brackenfold Circuits',
              at,
              text: 'See the picture.',
              editedAt: at,
              attachments: [{ fileName: 'web.png', sha256: 'b'.repeat(64) }],
            },
          ],
          closed: {
            by: 'u1',
            byName: 'Ines Calder',
            at,
            reason: 'widened',
            done: { kind: 'fields', changes: ['web: 0.1 to 0.2'] },
          },
        },
      ],
      actions: [
        {
          id: 'a1',
          number: 1,
          origin: { kind: 'condition', id: 'k1', label: 'Only with our coverlay.' },
          audienceCompanyId: null,
          text: 'Fold ten samples',
          ownerId: 'u2',
          ownerName: 'Ines Calder',
          ownerCompanyName: 'Quillmoor Instruments',
          due: 'date',
          dueOn: '2027-04-01',
          isAfterRelease: false,
          state: 'closed',
          takenOnByName: 'Ines Calder',
          takenOnAt: at,
          evidence: 'Ten folded.',
          files: [{ fileName: 'ten.txt', sha256: 'c'.repeat(64) }],
          reportedByName: 'Ines Calder',
          reportedAt: at,
          closedByName: 'Joss Pell',
          closedAt: at,
          closeNote: '',
        },
      ],
      takenOff: [
        { companyId: 'o', companyName: 'Ostrel Flexible', reason: 'press too small', byName: 'Ines Calder', at },
      ],
      declarations: [
        {
          id: 'd1',
          companyId: 'company-brackenfold',
          companyName: 'Brackenfold Circuits',
          verdict: 'with-conditions',
          isFromBefore: true,
          note: '',
          conditions: [
            {
              id: 'k1',
              text: 'Only with our coverlay.',
              field: 'bends.hinge.insideRadiusMm',
              fieldLabel: 'inside radius',
              value: '8',
              state: 'taken-over',
              decidedByName: 'Ines Calder',
              decidedAt: at,
              decisionNote: '',
              done,
            },
          ],
          madeBy: 'u1',
          madeByName: 'Joss Pell',
          madeAt: at,
          contentHash: 'd'.repeat(64),
        },
      ],
      template: {
        version: 2,
        contentHash: 'e'.repeat(64),
        switchedOff: [{ itemId: item.id, question: item.question, reason: 'moulded' }],
        profiles: [{ id: 'worn', name: 'Worn on skin', requiredSignatures: 2 }],
      },
      waivers: snapshot.waivers.map((waiver) => ({
        ...waiver,
        decidedAsRole: 'lead',
        consequence: 'shorter life',
        validUntil: '2027-12-31',
        quantityLimit: 50,
        needsCustomerConsent: true,
        customerConsent: 'letter of 1 March',
        isLapsed: false,
      })),
    },
  }
}

describe('the schemas that a package ships', () => {
  let full: ReadonlyMap<string, unknown>
  beforeAll(async () => {
    full = await build(makeFullContent())
  }, 240_000)

  test('describe each JSON file, and nothing that is not there', () => {
    const described = [...full.keys()].filter((path) => !UNDESCRIBED.test(path))
    expect([...full.keys()].filter((path) => path.startsWith('schemas/'))).toEqual(described.map(getSchemaPath).sort())
    for (const path of described) expect([path, findFaults(full, path)]).toEqual([path, []])
  })

  test.each(['pipit-rev-a', 'skua-rev-a', 'skua-rev-b'])(
    'fit the package of the demo design %s',
    async (name) => {
      const design = readSeedDesign(name)
      const files = await build(makeContent(makeSnapshot(design)))
      expect(evaluate(design).items.length).toBeGreaterThan(0)
      for (const path of files.keys()) {
        if (!UNDESCRIBED.test(path)) expect([path, findFaults(files, path)]).toEqual([path, []])
      }
    },
    240_000,
  )

  test('refuse what is no such file: a field too many, one too few, a word that does not exist', () => {
    const change = (path: string, edit: (file: Record<string, unknown>) => void) => {
      const copy = structuredClone(full.get(path)) as Record<string, unknown>
      edit(copy)
      return findFaults(new Map([...full, [path, copy]]), path).join()
    }
    expect(change('release.json', (file) => Object.assign(file, { approvedBy: 'nobody' }))).toContain('approvedBy')
    expect(change('release.json', (file) => delete file.number)).toContain("required property 'number'")
    expect(change('release.json', (file) => Object.assign(file, { releasedAt: 'yesterday' }))).toContain('/releasedAt')
    expect(change('release.json', (file) => Object.assign(file, { statusAtRelease: 'fine' }))).toContain(
      'statusAtRelease',
    )
    expect(change('signatures.json', (file) => Object.assign(file, { signatures: [{}] }))).toContain('contentHash')
    expect(change('design.json', (file) => delete file.bends)).toContain('bends')
    expect(change('manifest.json', (file) => Object.assign(file, { contentHash: 'abc' }))).toContain('/contentHash')
  })

  test('leave out the design where it is kept in the form of an earlier format', async () => {
    const content = makeContent()
    const storedDesign = { ...content.snapshot.design, formatVersion: 4 }
    const files = await build({ ...content, snapshot: { ...content.snapshot, storedDesign } })
    expect(files.has(getSchemaPath('design.json'))).toBe(false)
    expect(files.has(getSchemaPath('release.json'))).toBe(true)
  }, 240_000)
})
