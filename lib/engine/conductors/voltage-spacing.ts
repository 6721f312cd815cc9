import { requireNumber } from '../numerics'

/** A voltage at which a least spacing is known. */
interface QuotedSpacing {
  readonly volt: number
  readonly spaceMm: number
}

/** Least spacing on a face of the board, at the voltages that are known and at no other. Source SOURCES.voltageSpacing. */
export const QUOTED_SPACINGS: Readonly<Record<'bare' | 'covered', readonly QuotedSpacing[]>> = {
  bare: [
    { volt: 20, spaceMm: 0.3 },
    { volt: 36, spaceMm: 0.5 },
  ],
  covered: [
    { volt: 20, spaceMm: 0.12 },
    { volt: 36, spaceMm: 0.16 },
    { volt: 400, spaceMm: 0.8 },
  ],
}

/** Above this a shock is taken to matter, whatever the circuit does: our choice, no source. */
export const HAZARD_ABOVE_VOLT = 30

/** What is known of the least spacing at a voltage: no less than `atLeastMm`, and `enoughMm` suffices; null where nothing is. */
export interface KnownSpacing {
  readonly atLeastMm: number | null
  readonly enoughMm: number | null
}

/**
 * What the known points say of the spacing at a voltage.
 *
 * Model    the least spacing never falls with the voltage; nothing else is assumed, so nothing is interpolated
 * @param volt  above 0: peak or direct
 * @throws  RangeError naming the argument
 * Source   SOURCES.voltageSpacing, SOURCES.exactArithmetic (monotone); check values in test/standards/conductors
 */
export function findKnownSpacing(volt: number, surface: keyof typeof QUOTED_SPACINGS): KnownSpacing {
  requireNumber('volt', volt, { above: 0, atMost: 100_000, unit: 'V' })
  const points = QUOTED_SPACINGS[surface]
  const below = points.filter((point) => point.volt <= volt)
  const above = points.filter((point) => point.volt >= volt)
  return {
    atLeastMm: below.length === 0 ? null : Math.max(...below.map(({ spaceMm }) => spaceMm)),
    enoughMm: above.length === 0 ? null : Math.min(...above.map(({ spaceMm }) => spaceMm)),
  }
}
