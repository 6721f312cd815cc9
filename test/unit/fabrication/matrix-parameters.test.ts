import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Design } from '@/lib/engine'
import { getItem } from '@/lib/engine/catalogue'
import { openWidthMm } from '@/lib/engine/catalogue/items/geometry/open-land'
import { findParameter, measureDesign, TRADE_PARAMETERS } from '@/lib/fabrication'
import { allowedSqueezeOutMm } from '@/lib/fabrication/matrix/delivery-parameters'
import { MATRIX_TABLE } from '@/lib/fabrication/table'
import { measureDemo, readDemoDesign } from './designs'

const DEMOS = ['skua-rev-a', 'skua-rev-b', 'pipit-rev-a'] as const

function measure(key: string, design: Design) {
  const parameter = findParameter(key)
  if (parameter === null) throw new Error(key)
  const found = parameter.measure({ design, evaluation: { zones: [] } })
  return found.kind === 'values' ? found.values.map(({ value }) => value) : found
}

const change = (name: (typeof DEMOS)[number], edit: (design: Design) => void): Design => {
  const design = structuredClone(readDemoDesign(name))
  edit(design)
  return design
}

describe('the dictionary', () => {
  it('asks of each parameter a question of its own, which is not its name again', () => {
    expect(TRADE_PARAMETERS.filter(({ question }) => !question.endsWith('?'))).toEqual([])
    expect(new Set(TRADE_PARAMETERS.map(({ question }) => question)).size).toBe(TRADE_PARAMETERS.length)
    const bare = (text: string) => text.toLowerCase().replace(/[^a-z ]/g, '')
    expect(TRADE_PARAMETERS.filter(({ name, question }) => bare(name) === bare(question))).toEqual([])
  })

  // What fabricators' sheets state: common practice, no published source.
  it.each([
    ['profile and hole position', ['outline-tolerance', 'hole-position-tolerance', 'hole-to-edge-tolerance']],
    ['inner layers and non-plated holes', ['inner-layer-clearance', 'unplated-hole-clearance']],
    ['laser and buried holes, and their filling', ['laser-drill', 'hole-kind', 'hole-filling']],
    ['contacts', ['contact-pitch', 'finger-thickness-window']],
    ['coverlay', ['coverlay-position-tolerance', 'coverlay-registration', 'coverlay-squeeze-out', 'squeeze-out']],
    ['stiffeners', ['stiffener-position-tolerance']],
    ['mask and legend', ['mask-dam', 'mask-registration', 'legend-line', 'legend-height', 'legend-to-pad']],
    ['finish', ['finish-thickness', 'finish-top-metal', 'finish-nickel']],
    ['impedance', ['impedance-smallest', 'impedance-largest', 'impedance-tolerance']],
    ['arrays', ['array-length-largest', 'array-width-largest']],
    ['rigid edges', ['flex-length-between-rigids', 'prepreg-set-back']],
    ['flatness and bends', ['bow-and-twist', 'bend-position-tolerance']],
  ])('knows %s', (_name, keys) => {
    for (const key of keys) expect(findParameter(key), key).not.toBeNull()
  })

  it('reads nothing of the brief whose change would leave an answer to the item on the matrix standing', () => {
    const covered: readonly string[] = getItem('capability-match').restsOn
    const read = new Set<string>()
    const watch = <T extends object>(value: T, path: string, depth: number): T =>
      new Proxy(value, {
        get: (target, key) => {
          const found: unknown = Reflect.get(target, key)
          const own = `${path}.${String(key)}`
          if (typeof found === 'object' && found !== null && !Array.isArray(found) && depth > 0)
            return watch(found, own, depth - 1)
          read.add(own)
          return found
        },
      })
    for (const name of DEMOS) {
      const { design, evaluation } = measureDemo(name)
      measureDesign({ ...design, brief: watch(design.brief, 'brief', 1) }, evaluation)
    }
    expect(read.size).toBeGreaterThan(12)
    const isCovered = (path: string) => covered.some((pattern) => path === pattern || path.startsWith(`${pattern}.`))
    expect([...read].filter((path) => !isCovered(path))).toEqual([])
  })
})

describe('squeeze-out that an opening allows', () => {
  const mm = (max: number) => fc.double({ min: 0.05, max, noNaN: true })

  it('leaves open just what must be, by the width that the item on open land works out', () => {
    fc.assert(
      fc.property(mm(8), mm(8), mm(8), fc.double({ min: 0, max: 0.5, noNaN: true }), (opening, land, needed, shift) => {
        const squeeze = allowedSqueezeOutMm(opening, land, needed, shift)
        if (squeeze === null) {
          expect(needed).toBeGreaterThan(land)
          return
        }
        expect(openWidthMm(opening, land, squeeze, shift)).toBeCloseTo(needed, 9)
        expect(openWidthMm(opening, land, squeeze + 0.01, shift)).toBeLessThan(needed)
      }),
    )
  })

  it('is below 0 where the shift alone takes too much: that lies outside of every matrix', () => {
    expect(allowedSqueezeOutMm(1, 1, 0.9, 0.3)).toBeCloseTo(-0.2, 12)
  })

  it('is worked out of the demonstration, and not without a tolerance of the coverlay', () => {
    // Pipit: 6/2 - 5.5/2, and 11/2 - (0.3 - 0.6/2 + 0.2).
    expect(measure('coverlay-squeeze-out', readDemoDesign('pipit-rev-a'))).toEqual([0.25, 5.3])
    const silent = change('pipit-rev-a', ({ brief }) => {
      brief.tolerances.coverlayMm = null
    })
    expect(measure('coverlay-squeeze-out', silent)).toMatchObject({ kind: 'unknown' })
  })
})

describe('what the brief and the array state', () => {
  it('the array by its longer and shorter side, frame and all', () => {
    // Skua: an outline of 114 x 63 mm, two by two in steps of 118 and 67 mm, in a frame of 8 mm.
    const drawn = readDemoDesign('skua-rev-b')
    expect(measure('array-length-largest', drawn)).toEqual([114 + 118 + 16])
    expect(measure('array-width-largest', drawn)).toEqual([63 + 67 + 16])
    const edited = (edit: (design: Design) => void) => measure('array-length-largest', change('skua-rev-b', edit))
    expect(
      edited(({ brief }) => {
        brief.panelForm = 'single-parts'
      }),
    ).toMatchObject({ kind: 'absent' })
    expect(
      edited(({ plan }) => {
        if (plan?.array != null) plan.array.frameMm = null
      }),
    ).toMatchObject({ kind: 'unknown' })
  })

  it('the legend, where the part is marked in ink', () => {
    expect(measure('legend-line', readDemoDesign('skua-rev-b'))).toEqual([0.15])
    expect(measure('legend-to-pad', readDemoDesign('skua-rev-b'))).toEqual([0.3])
    // Pipit is marked in copper.
    expect(measure('legend-line', readDemoDesign('pipit-rev-a'))).toMatchObject({ kind: 'absent' })
    const unsaid = change('pipit-rev-a', ({ brief }) => {
      brief.marking = { ...brief.marking, method: null, lineWidthMm: null }
    })
    expect(measure('legend-line', unsaid)).toMatchObject({ kind: 'unknown' })
  })

  it('flatness, the metals of the finish and where bends lie', () => {
    const design = readDemoDesign('skua-rev-b')
    expect(measure('bow-and-twist', design)).toEqual([0.75])
    expect(measure('finish-top-metal', design)).toEqual([0.03])
    expect(measure('finish-nickel', design)).toEqual([3])
    expect(measure('bend-position-tolerance', design)).toEqual([0.5])
    expect(measure('hole-to-edge-tolerance', design)).toEqual([0.1])
  })

  it('impedances from both ends, those of net classes among them', () => {
    const design = change('skua-rev-b', ({ features }) => {
      const [first, second, third] = features.conductors
      if (first === undefined || second === undefined || third === undefined) throw new Error('too few conductors')
      features.netClasses = [
        {
          id: 'fast',
          name: 'Fast',
          impedanceOhm: 90,
          tolerancePct: 10,
          kind: 'pair',
          referenceLayerId: null,
          coupon: null,
          crosstalkLimitPct: null,
          riseTimePs: null,
        },
      ]
      first.impedanceOhm = 50
      second.netClassId = 'fast'
    })
    expect(measure('impedance-smallest', design)).toEqual([50, 90])
    expect(measure('impedance-largest', design)).toEqual([90, 50])
    expect(measure('impedance-largest', readDemoDesign('skua-rev-b'))).toMatchObject({ kind: 'absent' })
  })
})

it.each(['Ω', 'ohm', 'Ohm', 'ohms', '\u2126'])('a sheet may call the unit of an impedance %s', (unit) => {
  const row = { parameter: 'impedance-largest', comfortable: '110', stretch: '', unit, note: '' }
  const empty = { layersFrom: null, layersTo: null, foilFromUm: null, foilToUm: null, construction: null }
  expect(MATRIX_TABLE.readRow({ ...row, ...empty })).toMatchObject({ ok: true, row: { comfortable: 110 } })
})
