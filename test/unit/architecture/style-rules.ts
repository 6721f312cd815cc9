import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'

export interface StyleSheet {
  readonly file: string
  readonly text: string
}

export function readStyles(folder: string): StyleSheet[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => name.endsWith('.css'))
    .map((name) => path.posix.join(folder, name.split(path.sep).join('/')))
    .map((file) => ({ file, text: readFileSync(file, 'utf8') }))
}

const SPACE = /^(padding|margin|gap|row-gap|column-gap|inset|scroll-margin|scroll-padding)(-|$)/
const COLOURED = /^(color|background|border|outline|fill|stroke|box-shadow|text-decoration|accent-color)(-|$)/
/** What may stand beside tokens in a colour: no colour of its own. */
const COLOUR_WORDS =
  /var\(--[\w-]+\)|color-mix\(in srgb,|currentColor|inherit|transparent|none|solid|dashed|dotted|underline|line-through|inset|collapse|separate|-?\d*\.?\d+(px|em|%)?|[(),\s]/g

/** Declarations that state a space, a size of type, a face or a colour without a token, each as `file: declaration`. */
export function findUntokened({ file, text }: StyleSheet): string[] {
  const bare = text.replace(/\/\*[\s\S]*?\*\//g, '')
  return [...bare.matchAll(/(?:^|[{;])\s*([a-z-]+)\s*:\s*([^;{}]+);/g)].flatMap(([, property = '', value = '']) =>
    isTokened(property, value.trim()) ? [] : [`${file}: ${property}: ${value.trim()}`],
  )
}

function isTokened(property: string, value: string): boolean {
  if (SPACE.test(property)) return !/\d(rem|em|px|pt|ch|vh|vw|%)/.test(value)
  if (property === 'font-size') return /^var\(--type-[a-z]+\)$|^(inherit|100%)$/.test(value)
  if (property === 'font-family' || property === 'font') return value === 'inherit' || value === 'var(--font)'
  if (COLOURED.test(property) && !/^(border-(collapse|spacing|radius)|color-scheme)$/.test(property)) {
    return value.replace(COLOUR_WORDS, '') === ''
  }
  return true
}

export function findDeclaredClasses(css: string): string[] {
  return [...css.matchAll(/\.([A-Za-z][\w-]*)/g)].flatMap(([, name]) => name ?? [])
}

/** Names in `className="..."` and in `className:` of a column; names that are put together from parts are left to the eye. */
export function findClassNames(code: string): string[] {
  return [...code.matchAll(/[cC]lassName(?:=|: |=\{)(?:"([^"]*)"|'([^']*)')/g)].flatMap(
    ([, quoted = '', single = '']) => `${quoted} ${single}`.split(' ').filter((name) => name !== ''),
  )
}
