import { describe, expect, it, vi } from 'vitest'
import { type Design, evaluate, type RemedyOptions, type RemedyReport } from '@/lib/engine'
import {
  applyDesignPatch,
  findRemedies,
  RADIUS_FAMILIES,
  type RemedyFamily,
  searchRemedies,
} from '@/lib/engine/remedies'
import { assessBend } from '@/lib/engine/remedies/assess'
import { RANKED_FAMILIES } from '@/lib/engine/remedies/families'
import { isBreak } from '@/lib/engine/remedies/moves'
import type { Trial } from '@/lib/engine/remedies/trial'
import { findStartingConstruction } from '@/lib/engine/starting-constructions'
import { change, getEntry, readDemo } from './demo'
import { listAllSets, meets } from './every-set'

// Hundreds of evaluations per search: a busy machine needs more than the usual seconds.
vi.setConfig({ testTimeout: 120_000 })

const skua = readDemo('skua-rev-a')

/** Everything but these families, which keeps the space small enough to walk it whole. */
function leaveOutAllBut(...families: RemedyFamily[]): RemedyOptions {
  const leftOutFamilies = RANKED_FAMILIES.map(({ family }) => family).filter((family) => !families.includes(family))
  return { leftOutFamilies }
}

function expectSmallest(report: RemedyReport, sets: readonly Trial[]): void {
  const sizes = sets.filter(meets).map(({ changeCount }) => changeCount)
  if (sizes.length === 0) {
    expect(report.arrival.kind).toBe('falls-short')
    return
  }
  expect(report.arrival).toMatchObject({ kind: 'meets', changeCount: Math.min(...sizes) })
  expect(report.remedies[0]?.id).toBe(report.arrival.kind === 'meets' ? report.arrival.remedyId : '')
}

const SPACES: readonly { name: string; design: Design; bendId: string; families: RemedyFamily[] }[] = [
  {
    name: 'Skua A, foil and radius',
    design: skua,
    bendId: 'hinge',
    families: ['one-layer-in-bend', 'pads-only-plating', 'larger-radius', 'longer-zone'],
  },
  {
    name: 'Skua A, foil and covers without the radius',
    design: skua,
    bendId: 'hinge',
    families: ['one-layer-in-bend', 'pads-only-plating', 'radius-tolerance', 'base-film'],
  },
  {
    name: 'Skua A in a zone that is long enough, foil and radius',
    design: change(skua, (d) => {
      getEntry(d.construction.zones, 'hinge').lengthMm = 60
    }),
    bendId: 'hinge',
    families: ['one-layer-in-bend', 'pads-only-plating', 'larger-radius'],
  },
  {
    name: 'Skua A alternative, tolerances and covers',
    design: readDemo('skua-rev-a-alternative'),
    bendId: 'hinge',
    families: ['one-layer-in-bend', 'sheet-tolerance', 'radius-tolerance', 'larger-radius'],
  },
]

describe.each(SPACES)('$name', ({ design, bendId, families }) => {
  const options = leaveOutAllBut(...families)

  it('leads with the smallest allowed set that meets, as brute force finds it', () => {
    const report = findRemedies(design, bendId, options)
    expectSmallest(report, listAllSets(design, bendId, options, Math.max(2, report.search.deepest)))
  })
})

describe('remedies that arrive', () => {
  it('brings the hinge of Skua A to where it meets, and names the set', () => {
    const report = findRemedies(skua, 'hinge')
    const { arrival } = report
    if (arrival.kind !== 'meets') throw new Error(`it says ${JSON.stringify(arrival)}`)
    const lead = report.remedies[0]
    expect(lead?.id).toBe(arrival.remedyId)
    // No pair meets, and the smallest set makes the part longer: the search goes on for one that does not.
    expect(lead?.changes.map(({ family }) => family)).toEqual(['pads-only-plating', 'larger-radius', 'longer-zone'])
    expect(arrival.makesPartLarger).toBe(true)
    expect(report.search.deepest).toBe(4)
    const patched = applyDesignPatch(skua, lead?.patch ?? [])
    expect(assessBend(patched, 'hinge', {})?.state.verdict).toBe('meets')
  })

  it('tells what leads before it is through, and the whole report leads with the same', () => {
    const search = searchRemedies(skua, 'hinge')
    const leads: RemedyReport[] = []
    let triedAtLead = 0
    let step = search.next()
    while (step.done !== true) {
      if (step.value.lead !== undefined) {
        leads.push(step.value.lead)
        triedAtLead = step.value.triedCount
      }
      step = search.next()
    }
    const [lead, ...others] = leads
    const { tried, arrival, remedies } = step.value
    expect(others).toEqual([])
    expect(triedAtLead).toBeLessThan(tried.alone + tried.inPairs + tried.inLargerSets)
    expect(lead?.remedies).toEqual(remedies.slice(0, 1))
    expect(lead?.arrival).toMatchObject({ kind: 'meets', remedyId: arrival.kind === 'meets' ? arrival.remedyId : '' })
  })

  it('names two sets where the smallest one grows the part: that one, and the smallest that leaves its size', () => {
    // 12,000 cycles: a longer zone has room for the radius that is needed; without it thinner covers and closer sheets are needed besides.
    const eased = change(skua, (d) => {
      d.plan = null
      getEntry(d.bends, 'hinge').requiredCycles = 12_000
    })
    const options = leaveOutAllBut(
      'pads-only-plating',
      'larger-radius',
      'longer-zone',
      'coverlay-film',
      'radius-tolerance',
      'sheet-tolerance',
    )
    const { arrival, search, remedies, before } = findRemedies(eased, 'hinge', options)
    if (arrival.kind !== 'meets') throw new Error(`it says ${JSON.stringify(arrival)}`)
    expect(arrival).toMatchObject({ changeCount: 3, makesPartLarger: true })
    expect(search).toMatchObject({ completeUpTo: 3, deepest: 4 })
    const sizeOf = (id: string | null) => remedies.find((remedy) => remedy.id === id)?.after.planSizeMm ?? Number.NaN
    const plain = before.planSizeMm
    expect(sizeOf(arrival.remedyId)).toBeGreaterThan(plain)
    expect(sizeOf(arrival.sameSizeRemedyId)).toBe(plain)
    const meeting = listAllSets(eased, 'hinge', options, 4).filter(meets)
    const smallestOf = (sets: readonly Trial[]) => Math.min(...sets.map(({ changeCount }) => changeCount))
    expect(smallestOf(meeting)).toBe(3)
    expect(smallestOf(meeting.filter(({ after }) => after.planSizeMm <= plain))).toBe(4)
    const sameSize = remedies.find(({ id }) => id === arrival.sameSizeRemedyId)
    expect(sameSize?.changes).toHaveLength(4)
  })

  it('says with the radius fixed by how much the nearest set misses and what it still fails on', () => {
    const { arrival, search, tried, remedies, before } = findRemedies(skua, 'hinge', {
      leftOutFamilies: RADIUS_FAMILIES,
    })
    if (arrival.kind !== 'falls-short') throw new Error('it arrives')
    expect(tried.inLargerSets).toBeGreaterThan(0)
    expect(search).toMatchObject({ completeUpTo: 2, deepest: 4, isStopped: false })
    const nearest = remedies.find(({ id }) => id === arrival.remedyId)
    expect(nearest?.forbiddenBy).toEqual([])
    expect(nearest?.after.insideRadiusMm).toBe(before.insideRadiusMm)
    expect(arrival.marginFraction).toBe(nearest?.after.marginFraction)
    expect(arrival.marginFraction).toBeGreaterThan(before.marginFraction ?? 0)
    const allowed = remedies.filter(
      ({ forbiddenBy, worsens, movedItems }) => forbiddenBy.length + worsens.length === 0 && !movedItems.some(isBreak),
    )
    const best = Math.max(...allowed.map(({ after }) => after.marginFraction ?? Number.NEGATIVE_INFINITY))
    expect(arrival.marginFraction).toBe(best)
    expect(arrival.because).toContain('Mirror hinge')
    expect(arrival.because).toMatch(/at least .* cycles/)
  })

  it('names the needs that hold back sets which would meet', () => {
    const { arrival } = findRemedies(
      skua,
      'hinge',
      leaveOutAllBut('pads-only-plating', 'one-layer-in-bend', 'larger-radius'),
    )
    if (arrival.kind !== 'falls-short') throw new Error('it arrives')
    const [held] = arrival.heldBack
    expect(held?.need).toMatchObject({ kind: 'zone-length', name: 'Hinge' })
    expect(held?.need.because).toContain('at most 38 mm')
    expect(held?.setCount).toBeGreaterThan(0)
  })

  it('has nothing to arrive at where the bend meets', () => {
    expect(findRemedies(readDemo('skua-rev-b'), 'hinge').arrival).toEqual({ kind: 'meets-as-it-is' })
  })
})

describe('what a set does to the rest of the checklist', () => {
  const report = findRemedies(skua, 'hinge')
  const verdictsOf = (design: Design) => new Map(evaluate(design).items.map(({ itemId, verdict }) => [itemId, verdict]))

  it('is what a full evaluation of the design with the set says', () => {
    const before = verdictsOf(skua)
    for (const { id, patch, movedItems, forbiddenBy } of report.remedies) {
      const after = verdictsOf(applyDesignPatch(skua, patch))
      const moved = new Map(movedItems.map((item) => [item.itemId, item]))
      for (const [itemId, verdict] of after) {
        const item = moved.get(itemId)
        if (item !== undefined)
          expect([item.before, item.after], `${id} ${itemId}`).toEqual([before.get(itemId), verdict])
        // What stands against it as a need is not said twice.
        else if (forbiddenBy.length === 0 && verdict === 'fails')
          expect(before.get(itemId), `${id} ${itemId}`).toBe('fails')
      }
    }
  })

  it('keeps a set that makes a blocking or major item fail from the lead', () => {
    const lead = report.remedies[0]
    expect(lead?.movedItems.filter(isBreak)).toEqual([])
    const breaking = report.remedies.filter(({ movedItems }) => movedItems.some(isBreak))
    expect(breaking.some(({ movedItems }) => movedItems.some(({ itemId }) => itemId === 'stack-symmetry'))).toBe(true)
    const { arrival } = findRemedies(
      skua,
      'hinge',
      leaveOutAllBut('one-layer-in-bend', 'pads-only-plating', 'larger-radius', 'longer-zone'),
    )
    expect(arrival.kind === 'meets' && arrival.remedyId.includes('one-layer-in-bend')).toBe(false)
  })
})

describe('straight film beside a bend', () => {
  it('is what the larger radius takes of it, and what a longer zone has on either side', () => {
    const { remedies } = findRemedies(
      skua,
      'hinge',
      leaveOutAllBut('pads-only-plating', 'larger-radius', 'longer-zone'),
    )
    const longer = remedies.find(({ id }) => id.includes('longer-zone'))
    const tooLong = remedies.find(({ id }) => id === 'pads-only-plating:bend+larger-radius:meets')
    const bendOf = (patch: (typeof remedies)[number]['patch'] | undefined) =>
      getEntry(applyDesignPatch(skua, patch ?? []).bends, 'hinge')
    expect(tooLong?.movedItems).toContainEqual(expect.objectContaining({ itemId: 'straight-film', effect: 'fails' }))
    expect(bendOf(tooLong?.patch).distanceToRigidMm).toBe(0)
    expect(longer?.movedItems.filter(({ effect }) => effect !== 'better')).toEqual([])
    // 2.5 mm to rigid edges and 2.54 mm to components (the delivered limits): 2.54 mm on either side of the arc.
    const zone = getEntry(applyDesignPatch(skua, longer?.patch ?? []).construction.zones, 'hinge')
    const { insideRadiusMm, radiusToleranceMm, angleDeg } = bendOf(longer?.patch)
    const arcMm = ((insideRadiusMm + radiusToleranceMm) * angleDeg * Math.PI) / 180
    expect((zone.lengthMm ?? 0) - arcMm).toBeGreaterThanOrEqual(2 * 2.5)
    expect((zone.lengthMm ?? 0) - arcMm).toBeLessThan(2 * 2.54 + 1.5)
  })
})

describe('a set that leaves the part as it is', () => {
  const at = (requiredCycles: number) =>
    findRemedies(
      change(skua, (d) => {
        getEntry(d.bends, 'hinge').requiredCycles = requiredCycles
      }),
      'hinge',
    )

  it('leads where the zone holds the radius with straight film on either side', () => {
    const { arrival, remedies, before } = at(15_000)
    if (arrival.kind !== 'meets') throw new Error(JSON.stringify(arrival))
    const lead = remedies.find(({ id }) => id === arrival.remedyId)
    expect(lead?.after.planSizeMm).toBe(before.planSizeMm)
    expect(lead?.changes.map(({ detail }) => detail).join()).toContain('moved to the middle of Hinge')
    expect(arrival).toMatchObject({ makesPartLarger: false, sameSizeRemedyId: null })
  })

  it('is sought on where the smallest set makes the part longer, and none of them is said to fit that does not', () => {
    const { arrival, remedies, before, search } = at(20_000)
    if (arrival.kind !== 'meets') throw new Error(JSON.stringify(arrival))
    expect(arrival.makesPartLarger).toBe(true)
    expect(search.deepest).toBe(4)
    const fitting = remedies.filter(
      ({ after, forbiddenBy, worsens, movedItems }) =>
        after.verdict === 'meets' &&
        after.planSizeMm <= before.planSizeMm &&
        forbiddenBy.length + worsens.length === 0 &&
        !movedItems.some(isBreak),
    )
    expect(fitting.length > 0).toBe(arrival.sameSizeRemedyId !== null)
  })
})

describe('a search that is drawn step by step', () => {
  it('tells how far it is, and ends as the search at once does', () => {
    const options = leaveOutAllBut('pads-only-plating', 'one-layer-in-bend', 'larger-radius')
    const search = searchRemedies(skua, 'hinge', options)
    let triedCount = -1
    let doneFraction = 0
    for (;;) {
      const step = search.next()
      if (step.done === true) {
        expect(step.value).toEqual(findRemedies(skua, 'hinge', options))
        break
      }
      expect(step.value.triedCount).toBeGreaterThanOrEqual(triedCount)
      expect(step.value.doneFraction).toBeGreaterThanOrEqual(doneFraction)
      expect(step.value.doneFraction).toBeLessThan(1)
      ;({ triedCount, doneFraction } = step.value)
    }
  })

  it('stops when it is told to, and reports what it found', () => {
    const search = searchRemedies(skua, 'hinge')
    let step = search.next()
    for (let drawn = 0; drawn < 5 && step.done !== true; drawn += 1) step = search.next()
    step = search.next(true)
    if (step.done !== true) throw new Error('it goes on')
    expect(step.value.search).toMatchObject({ isStopped: true, completeUpTo: 1 })
    expect(step.value.tried.alone).toBeGreaterThan(10)
    expect(step.value.remedies.length).toBeGreaterThan(0)
  })
})

describe('changes of plan and tolerance', () => {
  it('gives the hinge the largest radius that its zone holds, and one that meets in a longer zone', () => {
    const { remedies } = findRemedies(
      skua,
      'hinge',
      leaveOutAllBut('pads-only-plating', 'larger-radius', 'longer-zone'),
    )
    const fits = remedies.find(({ id }) => id === 'pads-only-plating:bend+larger-radius:fits')
    const longer = remedies.find(({ id }) => /^pads-only-plating:bend\+larger-radius:meets\+longer-zone:\d+$/.test(id))
    const tooLong = remedies.find(({ id }) => id === 'pads-only-plating:bend+larger-radius:meets')
    expect(tooLong?.forbiddenBy).toMatchObject([{ kind: 'zone-length', name: 'Hinge' }])
    expect(fits?.forbiddenBy).toEqual([])
    expect(longer?.after.verdict).toBe('meets')
    expect(longer?.forbiddenBy).toEqual([])
    expect(longer?.after.insideRadiusMm).toBeGreaterThan(fits?.after.insideRadiusMm ?? Number.NaN)
    for (const remedy of [fits, longer]) {
      const patched = applyDesignPatch(skua, remedy?.patch ?? [])
      const room = assessBend(patched, 'hinge', {})?.check('bend-fit') ?? []
      const arcs = room.filter(({ places }) => places[0]?.kind === 'zone' && places[0].id === 'hinge')
      // The arcs by themselves, and with the straight film beside them.
      expect(arcs).toMatchObject([
        { kind: 'decided', verdict: 'meets' },
        { kind: 'decided', verdict: 'meets' },
      ])
    }
  })

  it('splits the angle over two zones where one is too short, and the second bend meets too or is named', () => {
    const report = findRemedies(skua, 'hinge', leaveOutAllBut('pads-only-plating', 'split-bend'))
    const split = report.remedies.find(({ id }) => id.includes('split-bend'))
    if (split === undefined) throw new Error(report.remedies.map(({ id }) => id).join())
    const { bends } = applyDesignPatch(skua, split.patch)
    const halves = bends.filter(({ name }) => name.startsWith('Mirror hinge'))
    expect(halves.map(({ angleDeg }) => angleDeg)).toEqual([45, 45])
    expect(new Set(halves.map(({ zoneId }) => zoneId)).size).toBe(2)
    const second = split.after.otherBends.find(({ name }) => name.includes('second half'))
    expect(second?.verdict === 'meets' || split.forbiddenBy.some(({ kind }) => kind === 'other-bend')).toBe(true)
  })

  it('makes room on one layer by a wider zone', () => {
    const sets = listAllSets(skua, 'hinge', leaveOutAllBut('wider-zone', 'one-layer-in-bend'), 2)
    const withoutRoom = sets.find(({ id }) => id === 'one-layer-in-bend:l3')
    const wider = sets.find(({ id }) => /^wider-zone:[\d.]+\+one-layer-in-bend:l3$/.test(id))
    if (wider === undefined) throw new Error(sets.map(({ id }) => id).join())
    expect(withoutRoom?.forbiddenBy.map(({ kind }) => kind)).toContain('room')
    expect(wider.forbiddenBy.map(({ kind }) => kind)).not.toContain('room')
    const widthOf = (design: Design) => getEntry(design.construction.zones, 'hinge').widthMm ?? Number.NaN
    expect(widthOf(wider.edited)).toBeGreaterThan(widthOf(skua))
  })

  it('halves tolerances, which moves the worst corner and nothing at nominal', () => {
    const design = readDemo('skua-rev-b')
    const { before, remedies } = findRemedies(design, 'hinge', leaveOutAllBut('sheet-tolerance', 'radius-tolerance'))
    expect(remedies.length).toBeGreaterThan(0)
    for (const { after } of remedies) {
      expect(after.peakStrainPct).toBe(before.peakStrainPct)
      expect(after.marginFraction).toBeGreaterThan(before.marginFraction ?? 0)
    }
  })

  it('names the conductor whose impedance narrower conductors would move', () => {
    const design = change(skua, (d) => {
      for (const conductor of d.features.conductors) conductor.impedanceOhm = 50
    })
    const { remedies } = findRemedies(design, 'hinge', leaveOutAllBut('pads-only-plating', 'narrower-conductors'))
    const narrower = remedies.filter(({ id }) => id.includes('narrower-conductors'))
    for (const { forbiddenBy } of narrower) expect(forbiddenBy.some(({ kind }) => kind === 'impedance')).toBe(true)
  })

  it('offers base films that clads are made with, for a single layer too', () => {
    const design = findStartingConstruction('single-sided')?.makeDesign('single')
    if (design === undefined) throw new Error('no such construction')
    const [bend] = design.bends
    const { remedies } = findRemedies(design, bend?.id ?? '', leaveOutAllBut('base-film', 'adhesive-kind'))
    expect(remedies.some(({ id }) => id.startsWith('base-film:'))).toBe(true)
  })
})
