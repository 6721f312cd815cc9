import type { HangsOn, Unit } from '../results'
import { inSentence } from '../units'
import type { BendInputs } from './bend-inputs'
import { findDecidingConstant, type SwingQuantity } from './tornado'

const WORDS: Partial<Record<SwingQuantity, { readonly word: string; readonly unit: Unit }>> = {
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
  const deciding = conductor === undefined ? null : findDecidingConstant(bend, section, conductor, demand)
  if (deciding === null) return null
  const { swing, nominalShare, layerName } = deciding
  const { word, unit } = WORDS[swing.quantity] ?? { word: swing.quantity, unit: 'ratio' }
  const share = (value: number): string => inSentence(100 * value, 'pct')
  return {
    layerId: swing.layerId ?? layerId,
    quantity: swing.quantity,
    low: swing.low,
    high: swing.high,
    nominalShare,
    worstShare: swing.worstShare,
    sentence: `It hangs most on the ${word} of ${swing.layerName} (${inSentence(swing.low)} to ${inSentence(swing.high, unit)}): by that alone ${layerName} goes from ${share(nominalShare)} of its allowable strain to ${share(swing.worstShare)}.`,
  }
}
