import { requireNumber } from './require-number'

/** A stream of draws that depends on nothing but its seed. */
export interface RandomStream {
  /** Uniform on (0, 1), 32 bits; never exactly 0 or 1. */
  nextUniform(): number
  /** Standard normal: mean 0, standard deviation 1. */
  nextNormal(): number
}

const TWO_POW_32 = 2 ** 32

/**
 * Seeded random stream: sfc32 (chaotic counter generator, period at least 2^32) for uniform draws, Marsaglia's polar
 * method for normal ones. The state is pure integer arithmetic, so that the same seed gives the same stream on every
 * machine; only the last digit of a normal draw depends on the machine's logarithm.
 *
 * @param seed  integer 0 to 2^32 - 1
 * @throws  RangeError for any other seed
 * Source   SOURCES.sfc32 (generator), SOURCES.marsagliaPolar (normal draws)
 */
export function createRandomStream(seed: number): RandomStream {
  requireNumber('seed', seed, { atLeast: 0, atMost: TWO_POW_32 - 1 })
  if (!Number.isInteger(seed)) throw new RangeError(`seed must be a whole number; found ${seed}`)
  let a = 0
  let b = seed | 0
  let c = 0
  let counter = 1
  let spareNormal = Number.NaN

  function nextInteger(): number {
    const sum = (((a + b) | 0) + counter) | 0
    counter = (counter + 1) | 0
    a = b ^ (b >>> 9)
    b = (c + (c << 3)) | 0
    c = ((c << 21) | (c >>> 11)) + sum
    c |= 0
    return sum >>> 0
  }
  // The generator's author asks for 12 idle rounds after seeding; 15 costs nothing.
  for (let round = 0; round < 15; round += 1) nextInteger()

  function nextUniform(): number {
    // Half a step up keeps clear of 0, whose logarithm does not exist.
    return (nextInteger() + 0.5) / TWO_POW_32
  }

  function nextNormal(): number {
    if (!Number.isNaN(spareNormal)) {
      const drawn = spareNormal
      spareNormal = Number.NaN
      return drawn
    }
    let u = 0
    let v = 0
    let s = 0
    do {
      u = 2 * nextUniform() - 1
      v = 2 * nextUniform() - 1
      s = u * u + v * v
    } while (s >= 1 || s === 0)
    const scale = Math.sqrt((-2 * Math.log(s)) / s)
    spareNormal = v * scale
    return u * scale
  }

  return { nextUniform, nextNormal }
}
