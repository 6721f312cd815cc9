import { SPEED_OF_LIGHT } from './constants'

/** A section counts as small up to this share of a wavelength. Common practice, no published source. */
const MOST_OF_WAVELENGTH = 0.1

/**
 * Whether a line is narrow enough against the wavelength along it for a field that is taken as static across it.
 *
 * @param acrossUm  what carries the field: width, and the dielectric to the reference on both sides of it
 */
export function isQuasiStatic(acrossUm: number, effectivePermittivity: number, frequencyMhz: number): boolean {
  const wavelengthUm = SPEED_OF_LIGHT / Math.sqrt(effectivePermittivity) / frequencyMhz
  return acrossUm <= MOST_OF_WAVELENGTH * wavelengthUm
}
