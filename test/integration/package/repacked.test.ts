import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { buildPackage, type PackageFile, readArchive, verifyPackage } from '@/lib/package'
import { makeContent, makeKeys } from './content-factory'

const keys = makeKeys()
let place: string
/** The package as released, unpacked by another program. */
let folder: string
let zip: string
let files: readonly PackageFile[]

beforeAll(async () => {
  place = mkdtempSync(path.join(tmpdir(), 'bendworthy-package-'))
  zip = path.join(place, 'released.zip')
  const bytes = await buildPackage(makeContent(), keys)
  writeFileSync(zip, bytes)
  folder = path.join(place, 'released')
  execFileSync('unzip', ['-q', zip, '-d', folder])
  const read = readArchive(bytes)
  if (!read.ok) throw new Error('the package cannot be read')
  files = read.value
}, 400_000)

afterAll(() => rmSync(place, { recursive: true, force: true }))

function run(program: string, args: readonly string[], cwd: string) {
  const { status, stdout, stderr } = spawnSync(program, [...args], { cwd, encoding: 'utf8' })
  return { status, output: stdout + stderr }
}

/** The command as people call it. */
const verify = (...args: string[]) =>
  run(process.execPath, ['--conditions=react-server', '--import', 'tsx', 'lib/cli/package-verify.ts', ...args], '.')

/** A copy of the unpacked folder in which something is done. */
function copyFolder(name: string, change: (copy: string) => void): string {
  const copy = path.join(place, name)
  execFileSync('cp', ['-r', folder, copy])
  change(copy)
  return copy
}

const codesOf = (bytes: Uint8Array) => {
  const result = verifyPackage(bytes)
  return result.ok ? [] : result.issues.map(({ code, path: at }) => `${code} ${at.join('/')}`.trim())
}

describe('a package that somebody unpacked, and packed again', () => {
  test.each([
    ['a ZIP archive, compressed', ['zip', '-q', '-r'], 'again.zip', '.'],
    ['a ZIP archive with the folder in it', ['zip', '-q', '-r'], 'folder.zip', 'released'],
    ['a ZIP archive, stored', ['zip', '-q', '-0', '-r'], 'stored.zip', '.'],
    ['a TAR archive', ['tar', '-cf'], 'again.tar', 'released'],
    ['a compressed TAR archive', ['tar', '-czf'], 'again.tar.gz', '.'],
  ])(
    'is intact as %s, and --strict says that it is not the archive that was released',
    (_name, [program = '', ...args], file, what) => {
      const target = path.join(place, file)
      execFileSync(program, [...args, target, what], { cwd: what === '.' ? folder : place })
      const general = verify(target)
      expect(general.output).toContain(`${target}: contents intact, repacked`)
      expect(general.output).toContain('Skua, revision B')
      expect(general.status).toBe(0)
      const strict = verify(target, '--strict')
      expect(strict.output).toContain(`${target}: NOT intact`)
      expect(strict.output).not.toContain('was changed: its SHA-256')
      expect(strict.status).toBe(1)
    },
    400_000,
  )

  test('is intact as a folder, and the archive as released is intact either way', () => {
    expect(verify(folder)).toMatchObject({ status: 0, output: expect.stringContaining('contents intact, unpacked') })
    expect(verify(folder, '--strict').status).toBe(2)
    for (const args of [[], ['--strict']]) {
      const answer = verify(zip, ...args)
      expect(answer.output).toContain(`${zip}: intact`)
      expect(answer.status).toBe(0)
    }
  }, 400_000)

  test('and changed in it: each changed, missing and extra file is named, and no other', () => {
    const copy = copyFolder('tampered', (at) => {
      writeFileSync(path.join(at, 'results.json'), '{}\n')
      writeFileSync(path.join(at, 'artwork', '001-skua_outline.gbr'), 'M02*\n')
      rmSync(path.join(at, 'threads.json'))
      mkdirSync(path.join(at, 'more'))
      writeFileSync(path.join(at, 'more', 'drawing.pdf'), '%PDF-')
    })
    execFileSync('zip', ['-q', '-r', path.join(place, 'tampered.zip'), '.'], { cwd: copy })
    for (const target of [copy, path.join(place, 'tampered.zip')]) {
      const { status, output } = verify(target)
      expect(status).toBe(1)
      const named = [...output.matchAll(/^ {2}(\S+): .* \[([\w-]+)\]$/gm)].map(([, at, code]) => `${code} ${at}`)
      expect(named.sort()).toEqual([
        'changed artwork/001-skua_outline.gbr',
        'changed results.json',
        'extra more/drawing.pdf',
        'missing threads.json',
      ])
    }
  }, 400_000)

  test('each file changed is named, whichever it is', () => {
    const packed = (change: (file: PackageFile) => Uint8Array) =>
      zipSync(Object.fromEntries(files.map((file) => [file.path, change(file)])), { level: 6 })
    expect(codesOf(packed(({ bytes }) => bytes))).toEqual([])
    for (const { path: name } of files) {
      const other = packed((file) => (file.path === name ? Buffer.concat([file.bytes, Buffer.from(' ')]) : file.bytes))
      const found = codesOf(other).join(' ')
      expect(found, name).toMatch(name === 'manifest.json' ? /manifest\.sig/ : new RegExp(name.replaceAll('.', '\\.')))
    }
  }, 400_000)

  test('is refused where a name stands twice, leads out of the folder, or is no file', () => {
    const entries = Object.fromEntries(files.map((file) => [file.path, file.bytes]))
    expect(codesOf(zipSync({ ...entries, '../outside.txt': new Uint8Array([65]) }))).toEqual(['extra ../outside.txt'])
    // The same name twice: programs differ in which of the two they unpack.
    const twice = zipSync({ ...entries, 'design.jsom': new Uint8Array([65]) })
    const text = Buffer.from(twice).toString('latin1').replaceAll('design.jsom', 'design.json')
    expect(codesOf(Buffer.from(text, 'latin1'))).toEqual(['duplicate design.json'])
    const copy = copyFolder('linked', (at) => {
      rmSync(path.join(at, 'results.json'))
      execFileSync('ln', ['-s', '/etc/hostname', path.join(at, 'results.json')])
    })
    expect(verify(copy)).toMatchObject({ status: 2, output: expect.stringContaining('is a link') })
    execFileSync('tar', ['-cf', path.join(place, 'linked.tar'), 'linked'], { cwd: place })
    expect(codesOf(readFileSync(path.join(place, 'linked.tar')))[0]).toMatch(/^not-a-file /)
    expect(codesOf(new TextEncoder().encode('7z'.repeat(400)))).toEqual(['not-an-archive'])
  }, 400_000)
})

describe('without this program', () => {
  /** The lines of the package's own README, as somebody would copy them. */
  const lines = () => {
    const readme = readFileSync(path.join(folder, 'README.txt'), 'utf8')
    return [...readme.matchAll(/^ {2}((?:openssl|sha256sum) .*)$/gm)].map(([, line = '']) => line)
  }
  const shell = (line: string, cwd: string) => run('sh', ['-c', line], cwd)

  test('the lines of the README verify it: openssl the list, sha256sum each file, and the key its fingerprint', () => {
    const [signature = '', sums = '', fingerprint = ''] = lines()
    expect(lines()).toHaveLength(3)
    expect(shell(signature, folder)).toMatchObject({
      status: 0,
      output: expect.stringContaining('Signature Verified Successfully'),
    })
    const summed = shell(sums, folder)
    expect(summed.status, summed.output).toBe(0)
    // Every file but the list itself and its signature.
    expect(summed.output.trim().split('\n')).toHaveLength(files.length - 2)
    expect(summed.output).not.toContain('FAILED')
    const printed = shell(fingerprint, folder).output.split(' ')[0] ?? ''
    expect(printed).toMatch(/^[0-9a-f]{64}$/)
    expect(readFileSync(path.join(folder, 'README.txt'), 'utf8')).toContain(printed)
  })

  test('and they refuse a changed file, a changed list, and another key', async () => {
    const [signature = '', sums = ''] = lines()
    const changed = copyFolder('changed', (at) => writeFileSync(path.join(at, 'design.json'), '{}'))
    const failed = shell(sums, changed)
    expect(failed.status).not.toBe(0)
    expect(failed.output).toContain('design.json: FAILED')

    const list = copyFolder('list', (at) => {
      writeFileSync(path.join(at, 'design.json'), '{}')
      const made = execFileSync('sha256sum', ['-b', 'design.json'], { cwd: at, encoding: 'utf8' })
      const text = readFileSync(path.join(at, 'SHA256SUMS'), 'utf8')
      writeFileSync(path.join(at, 'SHA256SUMS'), text.replace(/^.* \*design\.json\n/m, made))
    })
    expect(shell(sums, list).status).toBe(0)
    expect(shell(signature, list)).toMatchObject({ status: 1, output: expect.stringContaining('Verification Failure') })
    expect(verify(list).output).toMatch(/SHA256SUMS\.sig: the signature does not fit SHA256SUMS/)

    const key = copyFolder('key', (at) => writeFileSync(path.join(at, 'verifying-key.pem'), makeKeys().verifyingKeyPem))
    expect(shell(signature, key).status).toBe(1)
  }, 400_000)

  test('a list that says otherwise than the manifest is caught, though both are signed', async () => {
    const { signBytesRaw } = await import('@/lib/package/signing')
    const entries = files.map(({ path: name, bytes }) => {
      if (name !== 'SHA256SUMS') return [name, bytes] as const
      const text = new TextDecoder().decode(bytes).replace(/^[0-9a-f]{64}( \*design\.json)$/m, `${'a'.repeat(64)}$1`)
      return [name, new TextEncoder().encode(text)] as const
    })
    const sums = entries.find(([name]) => name === 'SHA256SUMS')?.[1] ?? new Uint8Array()
    const signature = signBytesRaw(sums, keys.signingKeyPem)
    const made = Object.fromEntries([...entries, ['SHA256SUMS.sig', signature]])
    expect(codesOf(zipSync(made))).toEqual(['changed SHA256SUMS'])
  })
})
