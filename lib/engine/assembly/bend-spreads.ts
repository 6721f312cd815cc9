import type { ConstantSpread } from '../bending'
import type { Material } from '../design'
import { type ConstantEnds, type DefaultSpreads, readEnds } from '../materials'

/** Spreads of a film's or adhesive's constants. `yieldStrainPct` is the one in use, which may be a default itself. */
export function listFilmSpreads(
  material: Material,
  yieldStrainPct: number | null,
  defaults: DefaultSpreads,
): ConstantSpread[] {
  return [
    ...listElasticSpreads(material, defaults),
    ...(yieldStrainPct === null ? [] : [makeYieldSpread('yieldStrainPct', material, yieldStrainPct, defaults)]),
  ]
}

/** Spreads of the copper of a conductor layer, and of what fills its gaps. */
export function listCopperSpreads(
  {
    material,
    fill,
    fillYieldStrainPct,
  }: { material: Material; fill: Material | null; fillYieldStrainPct: number | null },
  defaults: DefaultSpreads,
): ConstantSpread[] {
  const spreads = listElasticSpreads(material, defaults)
  if (material.foil !== null) {
    const ends = note(material, readEnds('yieldStrengthMpa', material.foil.yieldStrengthMpa), defaults)
    spreads.push({ constant: 'yieldStrengthMpa', low: ends.low, high: ends.high })
  }
  if (fill !== null) {
    const ends = note(fill, readEnds('modulusGpa', fill.modulusGpa), defaults)
    spreads.push({ constant: 'fillModulusGpa', low: ends.low, high: ends.high })
    if (fillYieldStrainPct !== null)
      spreads.push(makeYieldSpread('fillYieldStrainPct', fill, fillYieldStrainPct, defaults))
  }
  return spreads
}

function listElasticSpreads(material: Material, defaults: DefaultSpreads): ConstantSpread[] {
  const modulus = note(material, readEnds('modulusGpa', material.modulusGpa), defaults)
  const poisson = note(material, readEnds('poisson', material.poisson), defaults)
  return [
    { constant: 'modulusGpa', low: modulus.low, high: modulus.high },
    { constant: 'poisson', low: poisson.low, high: poisson.high },
  ]
}

function makeYieldSpread(
  constant: 'yieldStrainPct' | 'fillYieldStrainPct',
  material: Material,
  value: number,
  defaults: DefaultSpreads,
): ConstantSpread {
  const stated = material.yieldStrainPct ?? { value, sourceKey: 'ownChoice', spread: null }
  const ends = note(material, readEnds('yieldStrainPct', stated), defaults)
  return { constant, low: ends.low, high: ends.high }
}

function note(material: Material, ends: ConstantEnds, defaults: DefaultSpreads): ConstantEnds {
  if (ends.isDefault) defaults.add(material.name)
  return ends
}
