import { readFileSync } from 'node:fs'
import { inRoot } from './places.mjs'

/**
 * Licences of what is shipped to people: each lets anybody use and pass on the program, with the notice kept. A new one is read by a person before it
 * is added here.
 */
const ALLOWED = new Set([
  '0BSD',
  'Apache-2.0',
  'BlueOak-1.0.0',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Bitstream-Vera',
  'BSL-1.0',
  'CC-BY-4.0',
  'CC0-1.0',
  'ISC',
  'MIT',
  'MIT-0',
  'OFL-1.1',
  'Python-2.0',
  'Unlicense',
  'Zlib',
])

/** Packages whose own note is no identifier of SPDX, or names a choice, with what was read in them. */
const READ = /** @type {Readonly<Record<string, string>>} */ ({
  '@visx/vendor': 'MIT AND ISC',
  'dejavu-fonts-ttf': 'Bitstream-Vera',
  'png-js': 'MIT',
  'seq-queue': 'MIT',
})

/** Under other terms, and why they may be there all the same. */
const EXCEPTIONS = [
  {
    name: /^@img\/sharp-/,
    why: 'optional, a scaler of pictures that the framework brings along unchanged as a library; it is switched off',
  },
  {
    name: /^elkjs$/,
    why: 'in a viewer that the database tools bring along unchanged; nothing of it is started or bundled',
  },
]

/**
 * @typedef {{ name: string, version: string, licence: string, isAllowed: boolean }} Licensed
 * @returns {Licensed[]}  of every package that an installation for use takes, by name
 */
export function listLicences() {
  const { packages } = JSON.parse(readFileSync(inRoot('package-lock.json'), 'utf8'))
  const found = new Map()
  for (const [place, entry] of Object.entries(packages)) {
    if (place === '' || entry.dev === true || entry.link === true) continue
    const name = place.slice(place.lastIndexOf('node_modules/') + 'node_modules/'.length)
    const licence = READ[name] ?? entry.license ?? readOwn(place)
    found.set(`${name} ${entry.version}`, {
      name,
      version: entry.version,
      licence,
      isAllowed: isAllowed(licence) || findException(name) !== null,
    })
  }
  return [...found.values()].sort(
    (a, b) => a.name.localeCompare(b.name, 'en') || a.version.localeCompare(b.version, 'en'),
  )
}

/** @param {string} place */
function readOwn(place) {
  try {
    const { license } = JSON.parse(readFileSync(inRoot(place, 'package.json'), 'utf8'))
    return typeof license === 'string' ? license : (license?.type ?? 'not stated')
  } catch {
    // Of another platform, and not installed here.
    return 'not stated'
  }
}

/** @param {string} name */
function findException(name) {
  return EXCEPTIONS.find((exception) => exception.name.test(name))?.why ?? null
}

/** @param {string} licence  an expression of SPDX: of a choice one suffices, of several all hold */
function isAllowed(licence) {
  return licence
    .replaceAll(/[()]/g, '')
    .split(' OR ')
    .some((choice) => choice.split(' AND ').every((one) => ALLOWED.has(one.trim())))
}

/** @returns {string} the page that lists them */
export function writeLicencePage() {
  const rows = listLicences().map(({ name, version, licence }) => {
    const why = findException(name)
    return `| ${name} | ${version} | ${licence}${why === null ? '' : `: ${why}`} |`
  })
  return `# Licences of what is shipped

Every package that an installation for use takes, as the lock file names it; written by \`npm run licences\`. Tools for development and tests are not
among them. The texts stand in each package's own folder.

| package | version | licence |
| --- | --- | --- |
${rows.join('\n')}
`
}
