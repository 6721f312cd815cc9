import { expect, it } from 'vitest'
import * as data from '@/lib/data'
import { db } from '@/lib/data/store/client'
import { DESIGN_FORMAT_VERSION, type Design, readStoredDesign } from '@/lib/engine'
import { canonicalJson, sha256Hex } from '@/lib/review'
import { expectDone } from '@/test/factories/act-results'
import { answerEverything, declareByBoth, declareReview, makeSignInput } from '@/test/factories/reviews'
import { describeOnBothDatabases } from '@/test/setup/databases'

/** The same document as format 1 wrote it: without the fields that format 2 brought. */
function writeAsFormat1(design: Design): string {
  const newFields = new Set(['platedCopper', 'hatch', 'contactFinish', 'flexTest', 'wallPlatingUm', 'spread'])
  for (const field of ['cycleMinDegC', 'cycleMaxDegC', 'temperatureCycles', 'holePlatingQuality']) newFields.add(field)
  for (const field of ['throughExpansionPpmPerC', 'throughModulusGpa', 'glassTransitionDegC']) newFields.add(field)
  for (const field of ['voltageVolt', 'isCovered', 'frequencyMhz']) newFields.add(field)
  const strip = (node: unknown, key = ''): unknown => {
    if (Array.isArray(node)) return node.map((entry) => strip(entry, key))
    if (typeof node !== 'object' || node === null) return node
    const entries = Object.entries(node).filter(
      ([inner]) =>
        !newFields.has(inner) &&
        !(key === 'plating' && inner === 'materialId') &&
        !(key === 'holes' && inner === 'zoneId') &&
        !(key === 'features' && inner === 'none'),
    )
    return Object.fromEntries(entries.map(([inner, value]) => [inner, strip(value, inner)]))
  }
  return canonicalJson({ ...(strip(design) as object), formatVersion: 1 })
}

describeOnBothDatabases('a design of an older format in the database', (current) => {
  it('is read, evaluated and signed as it was stored, and an edit names nothing but itself', async () => {
    const { team, revisionId } = await current().startFrom('awaiting-signature')
    const row = await db().revision.findUniqueOrThrow({ where: { id: revisionId } })
    const designJson = writeAsFormat1(readStoredDesign(row.designJson))
    expect(JSON.parse(designJson).formatVersion).toBe(1)
    const lifted = readStoredDesign(designJson)
    expect(writeAsFormat1(lifted), 'reading loses nothing that format 1 said').toBe(designJson)
    await db().revision.update({ where: { id: revisionId }, data: { designJson, designHash: sha256Hex(designJson) } })

    // Declarations were made on the other text of the same design.
    await declareByBoth(team, revisionId)
    await expectDone(data.evaluateAgain(team.lead, { revisionId }))
    // What format 1 could not say was part of what some answers rest on.
    await answerEverything(team, revisionId)
    // What was reviewed was the other text too.
    const unreviewed = await data.getRevision(team.lead, revisionId)
    expect(unreviewed.blockers.map(({ code }) => code)).toEqual(['review-missing', 'signature-missing'])
    await declareReview(team.quality, revisionId)
    const before = await data.getRevision(team.lead, revisionId)
    expect(before.design.formatVersion).toBe(DESIGN_FORMAT_VERSION)
    expect(before.evaluationRecord.staleBecause).toEqual([])
    expect(before.blockers.map(({ code }) => code)).toEqual(['signature-missing'])
    const { signatureId } = await expectDone(data.signRevision(team.lead, makeSignInput(before)))
    const signed = await db().signature.findUniqueOrThrow({ where: { id: signatureId } })
    expect(JSON.parse(signed.contentJson).design.formatVersion, 'what is signed is what is stored').toBe(1)
    const live = await data.getRevision(team.lead, revisionId)
    expect(live.signatures.map(({ id, voidedAt }) => [id, voidedAt])).toEqual([[signatureId, null]])

    const [bend] = live.design.bends
    const changed = { ...live.design, bends: [{ ...bend, angleDeg: 61 }, ...live.design.bends.slice(1)] }
    await expectDone(
      data.saveDesign(team.lead, { revisionId, seenVersion: live.designVersion, design: changed as Design }),
    )
    const after = await db().revision.findUniqueOrThrow({ where: { id: revisionId } })
    expect(JSON.parse(after.designJson).formatVersion).toBe(DESIGN_FORMAT_VERSION)
    const voided = await db().signature.findUniqueOrThrow({ where: { id: signatureId } })
    const changes = JSON.parse(voided.changesJson ?? '[]') as string[]
    expect(
      changes.filter((sentence) =>
        /format version|plated copper|hatch|flex test|finish on contacts|wall plating/i.test(sentence),
      ),
    ).toEqual([])
    expect(changes.some((sentence) => /61/.test(sentence))).toBe(true)
  }, 400_000)
})
