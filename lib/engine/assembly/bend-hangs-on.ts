import type { HangsOn, Unit } from '../results'
import { inSentence } from '../units'
import type { BendInputs } from './bend-inputs'
import { findDecidingConstant, type HangingConstant } from './deciding-constant'

const WORDS: Readonly<Record<HangingConstant, { readonly word: string; readonly unit: Unit }>> = {
  modulusGpa: { word: 'modulus', unit: 'gpa' },
  fillModulusGpa: { word: 'modulus of the fill', unit: 'gpa' },
  yieldStrengthMpa: { word: 'yield strength', unit: 'mpa' },
  tensileStrengthMpa: { word: 'tensile strength', unit: 'mpa' },
  fatigueDuctility: { word: 'fatigue ductility', unit: 'ratio' },
  yieldStrainPct: { word: 'yield strain', unit: 'pct' },
  fillYieldStrainPct: { word: 'yield strain of the fill', unit: 'pct' },
}

/** The constant that a bend's verdict hangs on, with a sentence that says what it does alone. */
export function findHangsOn({ bend, section, demand }: BendInputs, layerId: string): HangsOn | null {
  const conductor = section.conductors.find(({ copper }) => copper.layer.id === layerId)
  if (conductor === undefined) return null
  const deciding = findDecidingConstant(bend, section, conductor, demand)
  if (deciding === null) return null
  const { quantity, low, high, nominalShare, worstShare } = deciding
  const { word, unit } = WORDS[quantity]
  const share = (value: number): string => inSentence(100 * value, 'pct')
  return {
    layerId: deciding.layerId,
    quantity,
    low,
    high,
    nominalShare,
    worstShare,
    sentence: `It hangs most on the ${word} of ${deciding.layerName} (${inSentence(low)} to ${inSentence(high, unit)}): by that alone ${conductor.copper.layer.name} goes from ${share(nominalShare)} of its allowable strain to ${share(worstShare)}.`,
  }
}
