import type { BendResult } from './bend'

/**
 * Why no least radius is given for a bend whose section is known.
 *
 * @returns a sentence; null where the radius is given, and where nothing of the bend is computed
 */
export function explainNoMinRadius(result: BendResult): string | null {
  const { conductors, minRadiusByStrainMm, modelLimits, states, leafPull, use } = result
  if (minRadiusByStrainMm !== null || conductors.length === 0) return null
  const beyond = modelLimits.find(({ kind }) => kind === 'states' || kind === 'loads' || kind === 'leaves')
  if (beyond !== undefined) return `Not sought: ${beyond.because}.`
  if (leafPull !== null || (states !== null && (states.pullN > 0 || states.twistDeg > 0))) {
    return 'Not sought beside a pull or a twist.'
  }
  const unproven = conductors.filter(({ ductilityLifeCycles }) => ductilityLifeCycles !== null)
  if (use === 'dynamic' && unproven.length > 0) {
    return `Not sought: at this life the relation does not tell how much strain copper that is not rolled-annealed stands (${unproven.map(({ name }) => name).join(', ')}).`
  }
  const open = conductors.filter(({ allowablePct }) => allowablePct === null)
  return open.length === 0
    ? null
    : `Not sought: no strain is known to be allowed for ${open.map(({ name }) => name).join(', ')}.`
}
