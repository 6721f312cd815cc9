import { saveSheet } from '@/lib/data'
import type { ConstructionFamily, MatrixContent, MatrixRow } from '@/lib/fabrication'
import type { Workspace } from './people'
import type { Stage } from './stage'

interface Conditions {
  readonly layers?: readonly [from: number | null, to: number | null]
  readonly foilUm?: readonly [from: number | null, to: number | null]
  readonly construction?: ConstructionFamily
  readonly note?: string
}

/** A row as a table would have it: parameter, comfortable, stretch, and what it is for. */
type Line = readonly [
  parameter: string,
  comfortable: MatrixRow['comfortable'],
  stretch: MatrixRow['stretch'],
  conditions?: Conditions,
]

function makeMatrix(lines: readonly Line[]): MatrixContent {
  return {
    rows: lines.map(([parameter, comfortable, stretch, { layers, foilUm, construction, note } = {}]) => ({
      parameter,
      comfortable,
      stretch,
      layersFrom: layers?.[0] ?? null,
      layersTo: layers?.[1] ?? null,
      foilFromUm: foilUm?.[0] ?? null,
      foilToUm: foilUm?.[1] ?? null,
      construction: construction ?? null,
      note: note ?? '',
    })),
  }
}

const POLYIMIDE_FILMS = ['pi-base-adhesiveless', 'pi-base-adhesive']

/** What both fabricators hold alike. */
const ALIKE: readonly Line[] = [
  ['hole-kind', ['through', 'blind', 'buried'], null],
  ['hole-filling', ['open', 'covered', 'filled'], null],
  ['hole-wall-plating', 25, 30],
  ['hole-to-stiffener-edge', 1.5, 1],
  ['prepreg-set-back', 0.5, 0.3],
  ['squeeze-out', 0.8, 0.5],
  ['flex-length-between-rigids', 10, 6],
  ['finish-thickness', 6, 8],
  ['contact-pitch', 0.5, 0.3],
  ['part-length-largest', 420, 560],
  ['part-width-largest', 280, 400],
  ['zone-thickness-tolerance', 10, 8, { note: 'Or 10 % of the thickness, whichever is more.' }],
  ['outline-tolerance', 0.1, 0.075],
  ['hole-position-tolerance', 0.075, 0.05],
  ['hole-to-edge-tolerance', 0.1, 0.075],
  ['drill-size-tolerance', 0.075, 0.05],
  ['coverlay-position-tolerance', 0.2, 0.15],
  ['coverlay-squeeze-out', 0.15, 0.1],
  ['stiffener-position-tolerance', 0.3, 0.2],
  ['bend-position-tolerance', 0.5, 0.3],
  ['bow-and-twist', 0.75, 0.5],
  ['finish-top-metal', 1, 2],
  ['finish-nickel', 6, 8],
  ['legend-line', 0.15, 0.1],
  ['legend-height', 1, 0.8],
  ['legend-to-pad', 0.2, 0.15],
  ['impedance-smallest', 45, 35],
  ['impedance-largest', 110, 120],
  ['impedance-tolerance', 10, 7],
  ['array-length-largest', 400, 500],
  ['array-width-largest', 280, 350],
]

const BRACKENFOLD: MatrixContent = makeMatrix([
  ['conductor-width', 0.1, 0.075, { foilUm: [null, 18] }],
  ['conductor-width', 0.075, 0.06, { foilUm: [null, 12], note: 'By direct imaging.' }],
  ['conductor-width', 0.15, 0.125, { foilUm: [30, null] }],
  ['conductor-space', 0.1, 0.075, { foilUm: [null, 18] }],
  ['conductor-space', 0.15, 0.125, { foilUm: [30, null] }],
  ['plated-conductor-width', 0.125, 0.1, { foilUm: [null, 18] }],
  ['plated-conductor-space', 0.125, 0.1, { foilUm: [null, 18] }],
  ['copper-to-outline', 0.5, 0.3],
  ['foil-thickness-smallest', 12, 9],
  ['foil-thickness-largest', 35, 70],
  ['finished-copper-largest', 45, 90],
  ['plating-thickness-largest', 25, 30],
  ['plating-process', ['panel', 'pattern', 'button'], null],
  ['foil-type', ['rolled-annealed', 'electrodeposited'], null],
  ['plated-drill', 0.25, 0.15],
  ['annular-ring', 0.2, 0.175, { construction: 'rigid-flex' }],
  ['annular-ring', 0.15, 0.125],
  ['hole-aspect-ratio', 6, 8],
  ['hole-to-bend', 2.5, 1.5],
  ['hole-to-transition', 2, 1.25, { construction: 'rigid-flex', note: 'No-flow prepreg runs that far.' }],
  ['inside-corner-radius', 0.8, 0.5],
  ['coverlay-opening', 1, 0.6],
  ['coverlay-web', 0.5, 0.25, { note: 'Punched; narrower strips tear.' }],
  ['coverlay-opening-method', ['drill', 'punch'], ['laser']],
  ['coverlay-registration', 0.2, 0.125],
  ['coverlay-opening-to-bend', 2.5, 1.5],
  ['coverlay-thickness-smallest', 25, 12.5],
  ['coverlay-thickness-largest', 50, 50],
  ['coverlay-material', ['pi-coverlay'], ['pi-black-coverlay']],
  ['stiffener-overlap', 0.75, 0.5],
  ['stiffener-to-bend', 2, 1],
  ['stiffener-material', ['fr4-laminate', 'pi-stiffener'], ['stainless-304']],
  ['bend-radius', 2, 1],
  ['bend-radius-to-thickness', 12, 6],
  ['bend-to-rigid', 3, 1.5],
  ['conductor-layer-count', 6, 10, { construction: 'rigid-flex' }],
  ['conductor-layer-count', 4, 6],
  ['flex-conductor-layer-count', 2, 4],
  ['rigid-zone-count', 3, 5],
  ['rigid-thickness-largest', 1600, 2000],
  ['rigid-thickness-smallest', 500, 400],
  ['flex-thickness-largest', 250, 400],
  ['flex-thickness-smallest', 75, 60],
  ['stiffened-thickness-largest', 1200, 1600],
  ['finger-thickness-window', 60, 50],
  ['base-film-thickness-smallest', 25, 12.5],
  ['adhesive-thickness-smallest', 20, 12.5],
  ['rigid-laminate-thickness-smallest', 100, 75],
  ['base-film-material', POLYIMIDE_FILMS, ['lcp-film']],
  ['adhesive-material', ['acrylic-adhesive', 'epoxy-adhesive'], null],
  ['prepreg-material', ['no-flow-prepreg-epoxy'], ['no-flow-prepreg-polyimide']],
  ['rigid-laminate-material', ['fr4-laminate'], ['polyimide-glass-laminate']],
  ['solder-mask-material', ['solder-mask-rigid', 'solder-mask-flexible'], null],
  [
    'surface-finish',
    ['immersion-gold-over-electroless-nickel', 'immersion-gold-over-palladium-nickel', 'immersion-tin'],
    ['electroplated-nickel-gold'],
  ],
  ['performance-class', ['class-1', 'class-2', 'class-3'], null],
  ['panel-form', ['single-parts', 'assembly-arrays', 'fabricator-decides'], null],
  ['operating-temperature', 105, 125],
  ...ALIKE,
])

const OSTREL: MatrixContent = makeMatrix([
  ['conductor-width', 0.1, 0.08],
  ['conductor-space', 0.12, 0.1, { foilUm: [null, 18] }],
  ['plated-conductor-width', 0.15, 0.12],
  ['plated-conductor-space', 0.15, 0.12],
  ['copper-to-outline', 0.5, 0.25],
  ['foil-thickness-smallest', 12, 12],
  ['foil-thickness-largest', 35, 35],
  ['plating-process', ['panel', 'button'], ['pattern']],
  ['plated-drill', 0.25, 0.2],
  ['annular-ring', 0.2, 0.15],
  ['hole-aspect-ratio', 5, 6],
  ['hole-to-transition', 1.5, 1],
  ['inside-corner-radius', 1, 0.5],
  ['coverlay-opening', 0.8, 0.4],
  ['coverlay-web', 0.4, 0.2],
  ['coverlay-opening-method', ['laser', 'punch'], null],
  ['coverlay-registration', 0.15, 0.12],
  ['coverlay-thickness-smallest', 25, 12.5],
  ['stiffener-overlap', 0.75, 0.5],
  ['stiffener-thickness-largest', 800, 1000],
  ['bend-radius', 3, 2],
  ['conductor-layer-count', 4, 4, { note: 'Rigid-flex up to four layers, two of them flexible.' }],
  ['flex-conductor-layer-count', 2, 2],
  ['rigid-thickness-largest', 1000, 1600],
  ['flex-thickness-smallest', 70, 60],
  ['finger-thickness-window', 80, 60],
  ['base-film-material', POLYIMIDE_FILMS, null],
  ['coverlay-material', ['pi-coverlay'], null],
  ['adhesive-material', ['acrylic-adhesive'], ['epoxy-adhesive']],
  [
    'surface-finish',
    ['organic-solderability-preservative', 'immersion-gold-over-electroless-nickel'],
    ['immersion-gold-over-palladium-nickel'],
  ],
  ['performance-class', ['class-1', 'class-2'], ['class-3']],
  ...ALIKE,
])

/** Capability matrices of both fabricators: they differ, and Ostrel leaves more unsaid. */
export async function setCapability({ carryOut }: Stage, { people, companies }: Workspace): Promise<void> {
  const sheets = [
    ['brackenfold', '2026-07-01', 'After the new imaging line.', BRACKENFOLD],
    ['ostrel', '2026-05-11', '', OSTREL],
  ] as const
  for (const [fabricator, issuedOn, note, content] of sheets) {
    await carryOut(`save the matrix of ${fabricator}`, () =>
      saveSheet(people[fabricator], {
        companyId: companies[fabricator],
        kind: 'matrix',
        seenVersion: 0,
        issuedOn,
        note,
        content,
      }),
    )
  }
}
