import { describe, expect, test } from 'vitest'
import { breaksOf, zonesOf } from './break-facts'
import { compare, factsOf, SETS, type SetName, truthOf } from './matching-designs'
import { listRealFiles } from './real-sets'

const hasSets = listRealFiles().length > 0

const outlineOf = (set: SetName) =>
  factsOf(set).files.find(({ role, outline }) => role.role === 'profile' && outline !== null)?.outline

type Found = ReturnType<typeof compare>
const contradictions = ({ pairs }: Found) => pairs.filter(({ agrees }) => !agrees)
const differences = (found: Found) => [...new Set(contradictions(found).map(({ fact }) => fact))]

describe.skipIf(!hasSets)('facts of real sets agree with what was measured independently', () => {
  test.each(SETS.filter((set) => truthOf(set).outlineMm !== null))('%s: outline', (set) => {
    const { outlineMm, areaMm2 } = truthOf(set)
    const outline = outlineOf(set)
    for (const [at, mm] of (outlineMm ?? []).entries())
      expect(Math.abs((outline?.extentMm[at] ?? Number.NaN) - mm), `extent ${at}`).toBeLessThan(0.001)
    expect(outline?.isClosed).toBe(areaMm2 !== null)
    if (areaMm2 === null) return
    expect(outline?.loops.filter(({ depth }) => depth === 0)).toHaveLength(1)
    expect(Math.abs((outline?.loops[0]?.areaMm2 ?? 0) - areaMm2)).toBeLessThan(1e-5 * areaMm2)
  })

  test.each([
    ['flex-breakout', 'flex_interface.GTL', 0.1],
    ['rigid-flex-interface', 'glasses_final.GTL', 0.2032],
    ['rigid-flex-interface', 'glasses_final.G1', 0.075],
    ['rigid-flex-interface', 'glasses_final.GBL', 0.1],
  ] as const)('%s %s: narrowest stroke %d mm', (set, name, mm) => {
    const narrowest = factsOf(set).files.find((file) => file.name === name)?.narrowestStrokeMm
    expect(Math.abs((narrowest ?? 0) - mm)).toBeLessThan(1e-4)
  })
})

describe.skipIf(!hasSets).each(SETS)('a design that says what %s says', (set) => {
  test('has no contradiction but those that the set is known for', () => {
    expect(differences(compare(set))).toEqual(truthOf(set).differs ?? [])
  })

  test('states the thickness of its job file, where there is one', () => {
    const thickness = factsOf(set).files.flatMap(({ job }) => job?.thicknessMm ?? [])
    for (const mm of thickness)
      expect(differences(compare(set, { zones: zonesOf(mm) }))).toEqual(truthOf(set).differs ?? [])
  })

  test('each fact that is broken by itself is found, where it is stated', () => {
    const breaks = breaksOf(set)
    const before = new Set(contradictions(compare(set)).map(({ fact }) => fact))
    expect(breaks.length).toBeGreaterThan(5)
    for (const { what, change, facts, file, path } of breaks) {
      const found = contradictions(compare(set, change))
      for (const fact of facts) {
        const own = found.filter((pair) => pair.fact === fact)
        expect(own.length, `${what}: ${fact}`).toBeGreaterThan(0)
        if (file !== undefined)
          expect(
            own.some(({ one, other }) => `${one.where} ${other.where}`.includes(file)),
            `${what}: in ${file}`,
          ).toBe(true)
        const isThere = own.some(({ other }) => path?.every((part, at) => other.path?.[at] === part))
        if (path !== undefined) expect(isThere, `${what}: at ${path.join('.')}`).toBe(true)
      }
      const rest = found.map(({ fact }) => fact).filter((fact) => !before.has(fact) && !facts.includes(fact))
      // What else it moves, such as the side of a layer that another one is missing above, is about the same place.
      const isSamePlace = (fact: string) => /^(Place|Side) of |^Which file is |^Layers that the holes of /.test(fact)
      expect(
        rest.filter((fact) => !isSamePlace(fact)),
        what,
      ).toEqual([])
    }
  })
})
