import type { Material, SourcedNumber } from '../design/material'
import { tidy } from '../numerics'
import { ALLOWABLE, ANNEALED_COPPER, MEMORY, OWN_CHOICE } from './source-keys'

/** Lowest and highest value that parts of one description have, and where that comes from. */
type Ends = readonly [low: number, high: number, sourceKey: string]

type FoilConstants = NonNullable<Material['foil']>
type MaterialConstant = Exclude<
  { [K in keyof Material]: Material[K] extends SourcedNumber | null ? K : never }[keyof Material],
  undefined
>
type FoilConstant = Exclude<
  { [K in keyof FoilConstants]: FoilConstants[K] extends SourcedNumber | null ? K : never }[keyof FoilConstants],
  undefined
>

/** Spreads that a material has of its own; the others come from its kind. */
type Spreads = Partial<Record<MaterialConstant | FoilConstant, Ends>>

/** How far a constant is taken to lie from its value where nothing is known of the material itself: our choice, of order. */
const GENERAL: Partial<Record<MaterialConstant | FoilConstant, (value: number) => readonly [number, number]>> = {
  modulusGpa: share(0.25),
  poisson: (value) => [Math.max(0, value - 0.03), Math.min(0.499, value + 0.03)],
  densityGPerCm3: share(0.05),
  maxServiceDegC: (value) => [value - 10, value + 10],
  relativePermittivity: share(0.08),
  expansionPpmPerC: share(0.3),
  yieldStrainPct: share(0.3),
  flowFraction: (value) => [0.7 * value, Math.min(1, 1.2 * value)],
  yieldStrengthMpa: share(0.25),
  tensileStrengthMpa: share(0.15),
  fatigueDuctility: share(0.3),
  resistivityOhmMm2PerM: share(0.05),
}

function share(fraction: number): (value: number) => readonly [number, number] {
  return (value) => [value * (1 - fraction), value * (1 + fraction)]
}

/** A limit that a text prints is what it is: a check is against the figure itself. */
const PRINTED: readonly FoilConstant[] = ['allowableFoldOncePct', 'allowableInstallPct']

/**
 * Spreads by material, as the notes of the records have them. The conductivity of annealed foil starts at the standard, and 92 % of it was
 * measured on a 12 um foil. Foil moduli below bulk are largely an artefact of tensile tests (Materials & Design 196, 2020, 109149, abstract).
 * Films are sold in types, adhesives soften with temperature and cure: a part is not told apart by its name.
 */
const OWN: Readonly<Record<string, Spreads>> = {
  'copper-ra': {
    modulusGpa: [90, 130, OWN_CHOICE],
    yieldStrengthMpa: [60, 110, MEMORY],
    tensileStrengthMpa: [138, 220, MEMORY],
    fatigueDuctility: [0.5, 1, MEMORY],
    resistivityOhmMm2PerM: [0.017241379, 0.0187406, ANNEALED_COPPER],
  },
  'copper-ra-lta': {
    modulusGpa: [90, 130, OWN_CHOICE],
    yieldStrengthMpa: [60, 130, MEMORY],
    tensileStrengthMpa: [138, 220, MEMORY],
    fatigueDuctility: [0.5, 1, MEMORY],
    resistivityOhmMm2PerM: [0.017241379, 0.0187406, ANNEALED_COPPER],
  },
  'copper-ed': {
    modulusGpa: [90, 130, OWN_CHOICE],
    yieldStrengthMpa: [150, 280, MEMORY],
    tensileStrengthMpa: [250, 400, MEMORY],
    fatigueDuctility: [0.15, 0.35, MEMORY],
  },
  'copper-ed-hte': {
    modulusGpa: [90, 130, OWN_CHOICE],
    yieldStrengthMpa: [130, 260, MEMORY],
    tensileStrengthMpa: [240, 380, MEMORY],
    fatigueDuctility: [0.2, 0.4, MEMORY],
  },
  'copper-plated': {
    modulusGpa: [70, 115, OWN_CHOICE],
    yieldStrengthMpa: [140, 220, OWN_CHOICE],
    tensileStrengthMpa: [230, 340, OWN_CHOICE],
    fatigueDuctility: [0.2, 0.4, OWN_CHOICE],
  },
  'pi-base-adhesive': { modulusGpa: [2.5, 5.5, MEMORY] },
  'pi-base-adhesiveless': { modulusGpa: [3.5, 7, MEMORY] },
  'pi-coverlay': { modulusGpa: [2.5, 5.5, MEMORY] },
  'pi-stiffener': { modulusGpa: [2.5, 5.5, MEMORY] },
  'pi-black-coverlay': { modulusGpa: [2.5, 4, MEMORY] },
  'lcp-film': { modulusGpa: [2.2, 3.5, MEMORY], relativePermittivity: [2.9, 3.2, MEMORY] },
  'pet-film': { modulusGpa: [3.5, 5, MEMORY], maxServiceDegC: [80, 105, MEMORY] },
  'pen-film': { modulusGpa: [5, 6, MEMORY] },
  'bondply-acrylic-pi': { modulusGpa: [1, 2, MEMORY] },
  'acrylic-adhesive': { modulusGpa: [0.2, 1.4, MEMORY], relativePermittivity: [3, 4, MEMORY] },
  'acrylic-adhesive-flame-retardant': { modulusGpa: [0.4, 1.5, MEMORY] },
  'epoxy-adhesive': { modulusGpa: [1, 3.5, MEMORY], relativePermittivity: [3.5, 4, MEMORY] },
  'epoxy-adhesive-flame-retardant': { modulusGpa: [1, 3.5, MEMORY] },
  'polyimide-adhesive': { modulusGpa: [2, 3.5, MEMORY] },
  'bondply-epoxy': { modulusGpa: [1, 3, MEMORY] },
  'bondply-acrylic': { modulusGpa: [0.2, 1.4, MEMORY] },
  'pressure-sensitive-adhesive': { modulusGpa: [0.0001, 0.01, MEMORY], poisson: [0.45, 0.499, OWN_CHOICE] },
  'no-flow-prepreg-epoxy': { modulusGpa: [15, 22, MEMORY] },
  'no-flow-prepreg-polyimide': { modulusGpa: [16, 22, MEMORY] },
  'polyimide-cover-coat': { modulusGpa: [2, 4, MEMORY] },
  'fr4-laminate': {
    modulusGpa: [18, 25, MEMORY],
    poisson: [0.12, 0.18, MEMORY],
    relativePermittivity: [4.2, 4.7, MEMORY],
  },
  'polyimide-glass-laminate': { modulusGpa: [18, 24, MEMORY] },
  'solder-mask-rigid': { modulusGpa: [2.5, 5, MEMORY] },
  'solder-mask-flexible': { modulusGpa: [0.8, 2.5, MEMORY] },
  'stainless-304': { modulusGpa: [193, 200, MEMORY] },
  'aluminium-5052': { modulusGpa: [69, 71, MEMORY] },
  'shield-film': { modulusGpa: [1.5, 4, MEMORY] },
  'shield-silver-ink': { modulusGpa: [1, 3, MEMORY] },
}

/** A record with a low and a high value, each with a source, on every constant. */
export function withSpreads(material: Material): Material {
  const own = OWN[material.id] ?? {}
  const fill = <T extends SourcedNumber | null>(constant: MaterialConstant | FoilConstant, number: T): T =>
    number === null || number.spread !== null ? number : { ...number, spread: findSpread(constant, number, own) }
  const { foil } = material
  return {
    ...material,
    modulusGpa: fill('modulusGpa', material.modulusGpa),
    poisson: fill('poisson', material.poisson),
    densityGPerCm3: fill('densityGPerCm3', material.densityGPerCm3),
    maxServiceDegC: fill('maxServiceDegC', material.maxServiceDegC),
    relativePermittivity: fill('relativePermittivity', material.relativePermittivity),
    expansionPpmPerC: fill('expansionPpmPerC', material.expansionPpmPerC),
    yieldStrainPct: fill('yieldStrainPct', material.yieldStrainPct),
    flowFraction: fill('flowFraction', material.flowFraction),
    foil:
      foil === null
        ? null
        : {
            ...foil,
            yieldStrengthMpa: fill('yieldStrengthMpa', foil.yieldStrengthMpa),
            tensileStrengthMpa: fill('tensileStrengthMpa', foil.tensileStrengthMpa),
            fatigueDuctility: fill('fatigueDuctility', foil.fatigueDuctility),
            allowableFoldOncePct: fill('allowableFoldOncePct', foil.allowableFoldOncePct),
            allowableInstallPct: fill('allowableInstallPct', foil.allowableInstallPct),
            resistivityOhmMm2PerM: fill('resistivityOhmMm2PerM', foil.resistivityOhmMm2PerM),
          },
  }
}

function findSpread(
  constant: MaterialConstant | FoilConstant,
  number: SourcedNumber,
  own: Spreads,
): NonNullable<SourcedNumber['spread']> {
  const ends = own[constant]
  if (ends !== undefined) return { low: ends[0], high: ends[1], sourceKey: ends[2] }
  if ((PRINTED as readonly string[]).includes(constant)) {
    return { low: number.value, high: number.value, sourceKey: number.sourceKey || ALLOWABLE }
  }
  return makeDefaultSpread(constant, number.value)
}

function makeDefaultSpread(
  constant: MaterialConstant | FoilConstant,
  value: number,
): { low: number; high: number; sourceKey: string } {
  const [low, high] = GENERAL[constant]?.(value) ?? [value, value]
  return { low: tidy(Math.min(low, value)), high: tidy(Math.max(high, value)), sourceKey: OWN_CHOICE }
}

/** Ends of a constant that verdicts rest on. */
export interface ConstantEnds {
  readonly low: number
  readonly high: number
  /** Nobody stated a spread: a default stands in, our choice, which results name. */
  readonly isDefault: boolean
}

export function readEnds(constant: MaterialConstant | FoilConstant, number: SourcedNumber): ConstantEnds {
  if (number.spread !== null) return { low: number.spread.low, high: number.spread.high, isDefault: false }
  if ((PRINTED as readonly string[]).includes(constant))
    return { low: number.value, high: number.value, isDefault: false }
  const { low, high } = makeDefaultSpread(constant, number.value)
  return { low, high, isDefault: true }
}

/** Materials whose ends are used although nobody stated them: results name them. */
export type DefaultSpreads = Set<string>

export function describeDefaultSpreads(defaults: DefaultSpreads): string[] {
  return [...defaults].map(
    (name) => `The record of ${name} states no spread of its constants: a default stands in, our choice.`,
  )
}
