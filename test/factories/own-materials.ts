import type { NewMaterial } from '@/lib/engine/design'

const SHEET = 'our test report 24-113, five specimens'

/** A film that somebody measured: a bound of every figure would be invented, so what was not measured is open. */
export const makeOwnMaterial = (change: Partial<NewMaterial> = {}): NewMaterial => ({
  name: 'Stiff polyimide of our measurement',
  kind: 'polymer-film',
  specification: '',
  modulusGpa: { value: 8.1, sourceKey: SHEET, spread: { low: 7.6, high: 8.6, sourceKey: SHEET } },
  poisson: { value: 0.34, sourceKey: SHEET, spread: null },
  densityGPerCm3: null,
  maxServiceDegC: null,
  maxSolderDegC: null,
  relativePermittivity: { value: 3.3, sourceKey: SHEET, spread: null },
  expansionPpmPerC: null,
  yieldStrainPct: null,
  flowFraction: null,
  foil: null,
  note: 'Machine direction alone was measured.',
  ...change,
})
