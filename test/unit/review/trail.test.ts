import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { chainRecord, checkTrail, TRAIL_START, type TrailRecord } from '@/lib/review'

function makeTrail(count: number): TrailRecord[] {
  const records: TrailRecord[] = []
  for (let index = 0; index < count; index += 1) {
    records.push(
      chainRecord(records.at(-1) ?? null, {
        at: `2027-03-01T09:00:${String(index).padStart(2, '0')}.000Z`,
        actor: { userId: `user-${index % 3}`, name: 'Mara Tolland' },
        action: 'design-saved',
        subject: { kind: 'revision', id: 'r', projectId: 'p', revisionId: 'r', companyId: null },
        details: { version: index, changes: ['L2 foil 35 um to 18 um'] },
      }),
    )
  }
  return records
}

describe('trail', () => {
  test('an untouched trail fits, and says where it ends', () => {
    const records = makeTrail(5)
    expect(checkTrail(records)).toEqual({ ok: true, count: 5, headHash: records[4]?.hash })
    expect(checkTrail([])).toEqual({ ok: true, count: 0, headHash: TRAIL_START })
  })

  const tampers: Record<string, (record: TrailRecord) => TrailRecord> = {
    at: (r) => ({ ...r, at: '2027-03-01T09:00:00.001Z' }),
    'actor id': (r) => ({ ...r, actor: { ...r.actor, userId: null } }),
    'actor name': (r) => ({ ...r, actor: { ...r.actor, name: 'Joss Pell' } }),
    action: (r) => ({ ...r, action: 'stage-moved' }),
    'subject kind': (r) => ({ ...r, subject: { ...r.subject, kind: 'thread' } }),
    'subject id': (r) => ({ ...r, subject: { ...r.subject, id: 'other' } }),
    project: (r) => ({ ...r, subject: { ...r.subject, projectId: null } }),
    revision: (r) => ({ ...r, subject: { ...r.subject, revisionId: null } }),
    company: (r) => ({ ...r, subject: { ...r.subject, companyId: 'company-ostrel' } }),
    details: (r) => ({ ...r, details: { ...r.details, version: 99 } }),
    'previous hash': (r) => ({ ...r, previousHash: 'f'.repeat(64) }),
    hash: (r) => ({ ...r, hash: 'f'.repeat(64) }),
    sequence: (r) => ({ ...r, sequence: 40 }),
  }

  test.each(Object.entries(tampers))('a changed %s of any record is found at that record', (_field, tamper) => {
    for (let at = 0; at < 5; at += 1) {
      const records = makeTrail(5).map((record, index) => (index === at ? tamper(record) : record))
      const check = checkTrail(records)
      expect(check).toMatchObject({ ok: false, fault: { sequence: at + 1 } })
    }
  })

  test('a record that was changed and rehashed is found at the record after it', () => {
    const records = makeTrail(4)
    const second = records[1]
    if (second === undefined) throw new Error('no record')
    records[1] = chainRecord(records[0] ?? null, { ...second, action: 'nothing-happened' })
    expect(checkTrail(records)).toMatchObject({ ok: false, fault: { sequence: 3, code: 'link' } })
  })

  test('removed, swapped and repeated records are found', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), (a, b) => {
        const records = makeTrail(8)
        const removed = records.filter((_, index) => index !== a)
        expect(checkTrail(removed)).toMatchObject({ ok: false, fault: { sequence: a + 1, code: 'sequence' } })
        const repeated = [...records.slice(0, a + 1), ...records.slice(a)]
        expect(checkTrail(repeated)).toMatchObject({ ok: false, fault: { code: 'sequence' } })
        if (a !== b) {
          const swapped = records.map((record, index) => records[index === a ? b : index === b ? a : index] ?? record)
          expect(checkTrail(swapped)).toMatchObject({ ok: false, fault: { sequence: Math.min(a, b) + 1 } })
        }
      }),
      { seed: 1, numRuns: 60 },
    )
  })

  test('a tail that was cut off shows against a known head only', () => {
    const records = makeTrail(6)
    const head = { sequence: 6, hash: records[5]?.hash ?? '' }
    expect(checkTrail(records, { expectedHead: head }).ok).toBe(true)
    expect(checkTrail(records.slice(0, 4)).ok).toBe(true)
    expect(checkTrail(records.slice(0, 4), { expectedHead: head })).toMatchObject({
      ok: false,
      fault: { sequence: 6, code: 'head' },
    })
  })

  test('an extract with gaps is checked record by record', () => {
    const records = makeTrail(6)
    const extract = records.filter((_, index) => index !== 2)
    expect(checkTrail(extract, { allowGaps: true }).ok).toBe(true)
    const tampered = extract.map((record) => (record.sequence === 4 ? { ...record, action: 'x' } : record))
    expect(checkTrail(tampered, { allowGaps: true })).toMatchObject({ ok: false, fault: { sequence: 4, code: 'hash' } })
  })

  test('details that JSON cannot hold are a malformed record, not a crash', () => {
    const [record] = makeTrail(1)
    if (record === undefined) throw new Error('no record')
    const broken = { ...record, details: { value: Number.NaN } }
    expect(checkTrail([broken])).toMatchObject({ ok: false, fault: { sequence: 1, code: 'malformed' } })
  })
})
