import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { FILE_UNITS, makeSheetContents } from '@/lib/drawing'
import { evaluate, parseDesignText } from '@/lib/engine'
import { citeNote } from '@/seed/cite'
import { type PIPIT_ARTWORK, readArtwork, readDesignText } from '@/seed/read-files'
import { readDrillFile, readProfile } from './read-artwork'

function readDesign(name: 'pipit-rev-a' | 'skua-rev-b') {
  const parsed = parseDesignText(readDesignText(name))
  if (!parsed.ok) throw new Error(`${name} cannot be read`)
  return parsed.value
}

const design = readDesign('pipit-rev-a')
const textOf = (name: (typeof PIPIT_ARTWORK)[number]) => new TextDecoder().decode(readArtwork(name))
const profile = readProfile(textOf('pipit-profile.gbr'))
const drills = [readDrillFile(textOf('pipit-drill-plated.drl')), readDrillFile(textOf('pipit-drill-unplated.drl'))]

function getOutline() {
  const { outline } = design.features
  if (outline == null) throw new Error('the design has no outline')
  return outline.verticesMm
}

describe('the artwork of the released demonstration', () => {
  it('has the outline of the design, corner for corner, with the inside corners rounded as stated', () => {
    const outline = getOutline()
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
    expect(profile.extents).toEqual({
      xMin: Math.min(...xs),
      yMin: Math.min(...ys),
      xMax: Math.max(...xs),
      yMax: Math.max(...ys),
    })
    const [corner] = design.features.outlineCorners
    const radius = corner?.insideRadiusMm ?? 0
    expect(design.features.outlineCorners).toHaveLength(1)
    expect(profile.arcRadiiMm).toEqual([radius, radius, radius, radius])
    // Each corner is an end of the profile, or lies where the two lines that an arc joins would meet.
    const isAtArc = ([x, y]: readonly [number, number]) =>
      profile.points.filter(([px, py]) => Math.abs(Math.hypot(px - x, py - y) - radius) < 1e-9).length === 2
    const isEnd = ([x, y]: readonly [number, number]) => profile.points.some(([px, py]) => px === x && py === y)
    for (const vertex of outline) expect(isEnd(vertex) || isAtArc(vertex), vertex.join(', ')).toBe(true)
    let twiceArea = 0
    outline.forEach(([x, y], at) => {
      const [nextX = 0, nextY = 0] = outline[(at + 1) % outline.length] ?? []
      twiceArea += x * nextY - nextX * y
    })
    // A rounded inside corner adds what lies between the square corner and its quarter circle.
    const added = 4 * (1 - Math.PI / 4) * radius ** 2
    expect(profile.areaMm2).toBeCloseTo(Math.abs(twiceArea / 2) + added, 6)
  })

  it('has the island and the three arms of the design side by side along it', () => {
    const [island, arm] = design.construction.zones
    const { xMin, xMax, yMin, yMax } = profile.extents
    expect((island?.lengthMm ?? 0) + (arm?.lengthMm ?? 0)).toBe(xMax - xMin)
    expect(island?.widthMm).toBe(yMax - yMin)
    const atTheEnd = [...new Set(profile.points.filter(([x]) => x === xMax).map(([, y]) => y))].sort((a, b) => a - b)
    const widths = [0, 2, 4].map((at) => (atTheEnd[at + 1] ?? 0) - (atTheEnd[at] ?? 0))
    expect(widths).toEqual([arm?.widthMm, arm?.widthMm, arm?.widthMm])
  })

  it('has plated and unplated holes in files apart, as the design lists them, inside the outline', () => {
    for (const { isPlated, holes } of drills) {
      const listed = design.features.holes.filter(({ plated }) => plated === isPlated)
      expect(listed.length, String(isPlated)).toBeGreaterThan(0)
      expect([...new Set(holes.map(({ drillMm }) => drillMm))]).toEqual(listed.map(({ drillMm }) => drillMm))
    }
    expect(drills.map(({ isPlated, holes }) => [isPlated, holes.length])).toEqual([
      [true, 13],
      [false, 2],
    ])
  })

  it('has them as far from the transition and the bend as the design says', () => {
    const [island] = design.construction.zones
    const transition = island?.lengthMm ?? 0
    const [bend] = design.bends
    const bendBegins = transition + (bend?.distanceToRigidMm ?? 0)
    for (const { isPlated, holes } of drills) {
      const listed = design.features.holes.find(({ plated }) => plated === isPlated)
      const edge = Math.max(...holes.map(({ xMm, drillMm }) => xMm + drillMm / 2))
      expect(transition - edge).toBeCloseTo(listed?.transitionDistanceMm ?? Number.NaN, 6)
      expect(bendBegins - edge).toBeCloseTo(listed?.nearestBend?.distanceMm ?? Number.NaN, 6)
    }
  })
})

describe('what people of the demonstration cite', () => {
  const cited = { design, evaluation: evaluate(design, { items: [], limits: [], facts: {} }) }
  const notes = makeSheetContents(design, cited.evaluation, FILE_UNITS).flatMap((block) =>
    block.kind === 'notes' ? block.notes : [],
  )
  const textOfNote = (id: string) => {
    const [, name = ''] = citeNote(cited, id).match(/^the note "(.+)"$/) ?? []
    return notes.find(({ text }) => text.startsWith(`${name}:`))?.text
  }

  it('stands on the drawing under the name that is cited, and says what they say that it does', () => {
    expect(textOfNote('registration')).toContain('corners of the openings rounded up to 0.15 mm')
    expect(textOfNote('bake')).toContain('opened and used within a shift')
    expect(() => citeNote(cited, 'no such note')).toThrow('has no note')
    const [stiffener] = design.features.stiffeners
    expect(stiffener?.name).toContain('1 mm corners')
    const skua = readDesign('skua-rev-b')
    const hinge = { design: skua, evaluation: evaluate(skua, { items: [], limits: [], facts: {} }) }
    expect(citeNote(hinge, 'bend-hinge')).toMatch(/^the note "[^"]+"$/)
    expect(skua.bends.find(({ id }) => id === 'hinge')?.note).toContain(
      'flexible epoxy, 1 mm wide, along both board edges',
    )
  })

  it('is never typed as a number', () => {
    for (const file of ['pipit', 'skua-first', 'skua-second']) {
      const text = readFileSync(`seed/${file}.ts`, 'utf8')
      expect(text, file).not.toMatch(/\b[Nn]ote \d|\bdetail [A-Z]\b|\d+ parts on/)
    }
  })

  it('agrees in how the openings are made', () => {
    const [opening] = design.features.coverlayOpenings
    expect(opening?.method).toBe('punch')
    expect(readFileSync('seed/pipit.ts', 'utf8')).not.toMatch(/laser/)
  })
})
