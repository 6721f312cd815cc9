import { describe, expect, test } from 'vitest'
import { type Design, evaluate, findLibraryMaterial, parseDesign, UNKNOWN_BEND } from '@/lib/engine'
import { CATALOGUE } from '@/lib/engine/catalogue'
import { listStartingConstructions } from '@/lib/engine/starting-constructions'
import { EMPTY_PLAN } from '@/lib/plan'
import { makeExampleDesign } from '../catalogue/example-design'
import { completeStart, judge } from './complete-start'

/*
 * No item may be out of reach: whatever does not meet on a starting construction that a team has filled in, meets after one of these edits,
 * each of which somebody would make in one sitting.
 */

type Edit = (design: Design) => void

const dielectrics = ({ construction }: Design) =>
  construction.layers.flatMap((layer) => (layer.kind === 'unbonded-gap' || layer.kind === 'conductor' ? [] : [layer]))
const coppers = ({ construction }: Design) =>
  construction.layers.flatMap((layer) => (layer.kind === 'conductor' ? [layer] : []))

const exampleBend = () => makeExampleDesign().bends[0]

const EDITS: Readonly<Record<string, Edit>> = {
  'states what each conductor carries': (d) => {
    for (const conductor of d.features.conductors) {
      Object.assign(conductor, {
        widthMm: 0.5,
        spaceMm: 0.3,
        lengthMm: 60,
        currentAmp: 0.1,
        allowedRiseDegC: 20,
        allowedDropVolt: 0.5,
        voltageVolt: 12,
        isCovered: true,
        frequencyMhz: 1,
      })
      for (const crossing of conductor.crossings)
        Object.assign(crossing, { angleToAxisDeg: 90, widthChangesInside: false, directionChangesInside: false })
    }
  },
  'states how each bend is made, held and tested': (d) => {
    const from = exampleBend()
    for (const bend of d.bends) {
      const { insideRadiusMm } = bend
      for (const key of Object.keys(UNKNOWN_BEND) as (keyof typeof UNKNOWN_BEND)[]) {
        if (key !== 'requiredCycles' && key !== 'motion' && key !== 'use') Object.assign(bend, { [key]: from?.[key] })
      }
      bend.use ??= 'fold-once'
      if (bend.use === 'dynamic') bend.requiredCycles ??= 100_000
      bend.flexTest = { ...bend.flexTest, mandrelDiameterMm: 2 * insideRadiusMm }
    }
  },
  'states the uses that the bends ask for': (d) => {
    const hasMoving = d.bends.some(({ use }) => use === 'dynamic')
    d.brief.installationUses = hasMoving ? ['use-a', 'use-b'] : ['use-a']
  },
  'leaves room for the inner leaves': (d) => {
    for (const bend of d.bends) bend.leafLengths = 'equal-free-to-buckle'
  },
  'folds the bend once': (d) => {
    for (const bend of d.bends)
      Object.assign(bend, { use: 'fold-once', requiredCycles: null, insideRadiusMm: 8, radiusToleranceMm: 0.2 })
  },
  'takes three times the radius, held closely': (d) => {
    for (const bend of d.bends)
      Object.assign(bend, { insideRadiusMm: bend.insideRadiusMm * 3, radiusToleranceMm: 0.05 })
  },
  'lets the moving bend be ten times as wide, held closely': (d) => {
    for (const bend of d.bends)
      Object.assign(bend, { insideRadiusMm: bend.insideRadiusMm * 10, radiusToleranceMm: 0.05 })
  },
  'states how often the moving bend must move': (d) => {
    for (const bend of d.bends) if (bend.use === 'dynamic') bend.requiredCycles = 1000
  },
  'plates pads alone, outside of bends': (d) => {
    for (const layer of coppers(d)) {
      if (layer.plating.process === 'none') continue
      layer.plating.process = 'button'
      for (const { presence, kind } of d.construction.zones)
        for (const each of presence)
          if (each.layerId === layer.id) each.platedCopper = kind === 'flex' ? 'none' : 'pads-only'
    }
  },
  'chooses epoxy for acrylic': (d) => {
    for (const layer of dielectrics(d)) if (layer.materialId === 'acrylic-adhesive') layer.materialId = 'epoxy-adhesive'
  },
  'says where the part lies flat, in mild service': (d) => {
    Object.assign(d.brief, { flatAtDegC: 23, operatingMinDegC: 20, operatingMaxDegC: 26 })
  },
  'holds the sheets closer': (d) => {
    for (const layer of d.construction.layers)
      if (layer.kind !== 'unbonded-gap') Object.assign(layer, { tolerancePlusUm: 0.2, toleranceMinusUm: 0.2 })
    for (const layer of coppers(d)) layer.plating.toleranceUm = Math.min(layer.plating.toleranceUm, 0.2)
  },
  'thickens the coverlay adhesive': (d) => {
    for (const layer of dielectrics(d))
      if (layer.kind === 'adhesive' || layer.kind === 'no-flow-prepreg') layer.thicknessUm *= 2
  },
  'says that mixed layers carry no plane': (d) => {
    for (const layer of coppers(d)) if (layer.role === 'mixed') layer.planePattern = 'none'
  },
  'calls out each material by its standard, or allows an equivalent': (d) => {
    for (const layer of d.construction.layers) {
      const found = layer.kind === 'unbonded-gap' ? null : findLibraryMaterial(layer.materialId)
      if (found === null || layer.kind === 'unbonded-gap') continue
      const id = `own-${found.id}`
      if (!d.materials.some((material) => material.id === id))
        d.materials.push({ ...found, id, specification: `${found.specification}, or equivalent` })
      layer.materialId = id
    }
  },
  'states the tolerance of each thickness': (d) => {
    for (const zone of d.construction.zones) zone.statedToleranceUm = 120
  },
  'measures holes from the edge of the stiffener': (d) => {
    for (const hole of d.features.holes) Object.assign(hole, { stiffenerEdgeDistanceMm: 3, stiffenerHoleMm: 1.5 })
  },
  'marks the packing': (d) => {
    Object.assign(d.brief.marking, { partNumber: 'on-packing', lotOrDate: 'on-packing', flameMark: 'none' })
    d.brief.marking.area = null
  },
  'measures what each material gives off': (d) => {
    const ids = new Set(
      d.construction.layers.flatMap((layer) => (layer.kind === 'unbonded-gap' ? [] : [layer.materialId])),
    )
    d.brief.outgassing = [...ids].map((materialId) => ({ materialId, totalLossPct: 0.5, condensablePct: 0.02 }))
  },
  'says that the part has no holes': (d) => {
    d.features.holes = []
    d.features.none = [...new Set([...d.features.none, 'holes' as const])]
  },
  'takes a connector for what the end comes to': (d) => {
    for (const zone of d.construction.zones) {
      if (zone.kind !== 'finger') continue
      zone.contactFinish = { thicknessUm: 1, toleranceUm: 0.3 }
      for (const presence of zone.presence)
        if (coppers(d).some(({ id, plating }) => id === presence.layerId && plating.process !== 'none'))
          presence.platedCopper = 'pads-only'
    }
    // A connector whose drawing allows what the end comes to over all tolerances, and little besides.
    const results = evaluate(d).zones
    for (const zone of d.construction.zones) {
      const result = results.find(({ zoneId }) => zoneId === zone.id)
      if (zone.kind !== 'finger' || result === undefined) continue
      const { low, high } = (result.contact ?? result).worstCaseUm
      zone.connectorWindow = { minUm: Math.floor(low) - 5, maxUm: Math.ceil(high) + 5 }
    }
  },
  'levels the halves of the boards': (d) => {
    const prepregs = dielectrics(d).filter(({ kind }) => kind === 'no-flow-prepreg')
    const laminateUm = dielectrics(d)
      .filter(({ kind }) => kind === 'rigid-laminate')
      .reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
    const [upper] = prepregs
    if (upper !== undefined) upper.thicknessUm += laminateUm
    for (const layer of coppers(d)) layer.thicknessUm = 17.1
  },
  'lists a conductor on each layer that carries some, and looks at each where it crosses a bend': (d) => {
    const [from] = d.features.conductors
    if (from === undefined) return
    for (const { crossings } of d.features.conductors)
      for (const crossing of crossings)
        Object.assign(crossing, { angleToAxisDeg: 90, widthChangesInside: false, directionChangesInside: false })
    for (const { id } of coppers(d)) {
      if (d.features.conductors.some(({ layerId }) => layerId === id)) continue
      // What has copper in a bend crosses it.
      const bends = d.bends.filter(({ zoneId }) =>
        d.construction.zones.some((zone) => zone.id === zoneId && zone.presence.some(({ layerId }) => layerId === id)),
      )
      const crossings = bends.map((bend) => ({
        bendId: bend.id,
        angleToAxisDeg: 90,
        widthChangesInside: false,
        directionChangesInside: false,
      }))
      d.features.conductors.push({ ...from, id: `on-${id}`, name: `On ${id}`, layerId: id, crossings })
    }
  },
  'draws the bends in plan': (d) => {
    d.plan = {
      ...EMPTY_PLAN,
      bendLines: d.bends.map(({ id }, at) => ({ id, bendId: id, fromMm: [10 * at, 0], toMm: [10 * at, 12] })),
    }
  },
  'measures each stiffener, and the straight film beside it': (d) => {
    const [from] = makeExampleDesign().features.stiffeners
    const bend = d.bends[0]
    for (const each of d.bends) each.distanceToRigidMm = 6
    d.features.stiffeners = dielectrics(d)
      .filter(({ kind }) => kind === 'stiffener')
      .map(({ id, name }) => ({
        ...structuredClone(from as NonNullable<typeof from>),
        id: `${id}-place`,
        name,
        layerId: id,
        nearestBend: bend === undefined ? null : { bendId: bend.id, distanceMm: 6 },
      }))
  },
}

/** Where a person judges the rest, the calculated part meets. */
const MET = new Set(['meets', 'needs-judgment'])

/** Where an answer makes the item inapplicable by right: no edit may get by with taking away what any other item is about. */
const RULED_OUT_BY_AN_ANSWER: Readonly<Record<string, string>> = {
  'hazardous-voltage-space': 'a voltage of 30 V or less',
  'plane-in-bend': 'a mixed layer that carries no plane',
  'plane-in-fold': 'a mixed layer that carries no plane',
  // One layer of copper has nothing that a plated hole could join.
  'hole-aspect': 'a part of one layer without plated holes',
  'hole-life': 'a part of one layer without plated holes',
  'via-structure': 'a part of one layer without plated holes',
}

/** What decides them is in the artwork files, which no edit of the design brings. */
const DECIDED_BY_FILES: ReadonlySet<string> = new Set(['netlist'])

describe('a starting construction that is filled in', () => {
  test.each(listStartingConstructions().map(({ id, makeDesign }) => [id, makeDesign] as const))(
    '%s: one edit makes each item meet',
    (_, makeDesign) => {
      const start = completeStart(makeDesign('Trial'))
      expect(parseDesign(start)).toMatchObject({ ok: true })
      const outOfReach: string[] = []
      for (const { id, check } of CATALOGUE) {
        if (check === null || DECIDED_BY_FILES.has(id)) continue
        const verdict = judge(id, start)
        if (MET.has(verdict) || verdict === 'not-applicable') continue
        const helps = Object.values(EDITS).some((edit) => {
          const edited = structuredClone(start)
          edit(edited)
          const after = judge(id, edited)
          const isMet = MET.has(after) || (after === 'not-applicable' && Object.hasOwn(RULED_OUT_BY_AN_ANSWER, id))
          // A requirement that no trade states is no cure.
          return isMet && judge('requirement-range', edited) !== 'fails'
        })
        if (!helps) outOfReach.push(`${id}: ${verdict}`)
      }
      expect(outOfReach).toEqual([])
    },
    120_000,
  )
})
