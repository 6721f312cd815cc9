import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { LAYER_COLOURS } from '@/lib/artwork-picture'

type Rgb = readonly [number, number, number]
type Matrix = readonly [Rgb, Rgb, Rgb]

/**
 * Sight without the red or the green cone, on linear RGB: Machado, Oliveira, Fernandes, "A physiologically-based model for simulation of color vision deficiency",
 * IEEE TVCG 15 (2009), the tables for severity 1.0; the digits from memory. Each row adds up to 1, so that greys stay grey.
 */
const SIGHTS: Readonly<Record<string, Matrix>> = {
  'full colour': [
    [1, 0, 0],
    [0, 1, 0],
    [0, 0, 1],
  ],
  protanopia: [
    [0.152286, 1.052583, -0.204868],
    [0.114503, 0.786281, 0.099216],
    [-0.003882, -0.048116, 1.051998],
  ],
  deuteranopia: [
    [0.367322, 0.860646, -0.227968],
    [0.280085, 0.672501, 0.047413],
    [-0.01182, 0.04294, 0.968881],
  ],
}
/** Difference in CIELAB (CIE 1976, ISO/CIE 11664-4) that colours keep at least; about 2.3 is just noticed side by side. Our choice, ten times that. */
const LEAST_DIFFERENCE = 23
/** Of graphical objects against what is beside them (WCAG 2.2, 1.4.11). */
const LEAST_CONTRAST = 3

const tokens = readFileSync('app/styles/tokens.css', 'utf8')
function readToken(name: string, theme: 0 | 1): Rgb {
  const [, light = '', dark = ''] = new RegExp(`--${name}: light-dark\\((#\\w{6}), (#\\w{6})\\)`).exec(tokens) ?? []
  const hex = theme === 0 ? light : dark
  if (hex === '') throw new Error(`no colour ${name}`)
  const part = (at: number) => Number.parseInt(hex.slice(at, at + 2), 16) / 255
  return [part(1), part(3), part(5)]
}

/** IEC 61966-2-1. */
const linear = (part: number): number => (part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4)
const times = (rows: Matrix, by: Rgb): Rgb =>
  rows.map((row) => row[0] * by[0] + row[1] * by[1] + row[2] * by[2]) as never
const luminance = (rgb: Rgb): number => {
  const [red, green, blue] = rgb.map(linear) as never as Rgb
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

function lab(rgb: Rgb, sight: Matrix): Rgb {
  const seen = times(sight, rgb.map(linear) as never).map((part) => Math.min(1, Math.max(0, part))) as never as Rgb
  const [x, y, z] = times(
    [
      [0.4124564, 0.3575761, 0.1804375],
      [0.2126729, 0.7151522, 0.072175],
      [0.0193339, 0.119192, 0.9503041],
    ],
    seen,
  )
  const f = (t: number) => (t > 216 / 24389 ? Math.cbrt(t) : ((24389 / 27) * t + 16) / 116)
  const [fx, fy, fz] = [f(x / 0.95047), f(y), f(z / 1.08883)]
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)]
}

describe.each([
  ['light', 0],
  ['dark', 1],
] as const)('the colours of layers, %s', (_, theme) => {
  // Profile and others are drawn in ink and grey, which the theme has already.
  const names = LAYER_COLOURS.filter((name) => name !== 'profile' && name !== 'other')
  const colours = names.map((name) => ({ name, rgb: readToken(`layer-${name}`, theme) }))

  it.each(Object.entries(SIGHTS))('are told apart in %s', (_sight, sight) => {
    const near: string[] = []
    for (const [at, one] of colours.entries()) {
      for (const other of colours.slice(at + 1)) {
        const [a, b] = [lab(one.rgb, sight), lab(other.rgb, sight)]
        const difference = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])
        if (difference < LEAST_DIFFERENCE) near.push(`${one.name} and ${other.name}: ${difference.toFixed(1)}`)
      }
    }
    expect(near).toEqual([])
  })

  it('stand out from the ground', () => {
    const ground = luminance(readToken('tint', theme)) + 0.05
    const faint = colours.filter(({ rgb }) => {
      const own = luminance(rgb) + 0.05
      return Math.max(own / ground, ground / own) < LEAST_CONTRAST
    })
    expect(faint).toEqual([])
  })
})
