import { execFileSync, spawnSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import path from 'node:path'
import { zipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, inject, test } from 'vitest'
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

/** The command that people call. */
const verify = (...args: string[]) =>
  run(process.execPath, [path.join(inject('commandsFolder'), 'package-verify.mjs'), ...args], '.')

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
      // Compressed as fast as can be: what is asked is whether a changed file is found.
      zipSync(Object.fromEntries(files.map((file) => [file.path, change(file)])), { level: 1 })
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

describe('an archive that programs unpack differently is refused, though each file that this one finds is as signed', () => {
  const entries = () => Object.fromEntries(files.map((file) => [file.path, file.bytes]))
  const packed = () => Buffer.from(zipSync(entries(), { level: 6 }))
  const at = (bytes: Buffer, sign: string, name: string) => {
    for (let found = bytes.indexOf(sign, 0, 'latin1'); found >= 0; found = bytes.indexOf(sign, found + 4, 'latin1')) {
      const offset = found + (sign === 'PK\x01\x02' ? 46 : 30)
      if (bytes.subarray(offset, offset + name.length).toString('latin1') === name) return found
    }
    throw new Error(`no ${name}`)
  }
  /** A file that no list names, before all others: programs that read from the front unpack it. */
  function hideInFront(bytes: Buffer): Buffer {
    const other = Buffer.from(zipSync({ 'design.json': new TextEncoder().encode('{}') }, { level: 0 }))
    const local = other.subarray(0, at(other, 'PK\x01\x02', 'design.json'))
    const whole = Buffer.concat([local, bytes])
    const end = whole.length - 22
    whole.writeUInt32LE(whole.readUInt32LE(end + 16) + local.length, end + 16)
    for (let entry = whole.readUInt32LE(end + 16); entry < end; ) {
      whole.writeUInt32LE(whole.readUInt32LE(entry + 42) + local.length, entry + 42)
      entry += 46 + whole.readUInt16LE(entry + 28) + whole.readUInt16LE(entry + 30) + whole.readUInt16LE(entry + 32)
    }
    return whole
  }
  /** A second name in UTF-8, which some programs prefer. */
  function giveSecondName(): Buffer {
    const name = Buffer.from('other.json')
    const extra = Buffer.concat([Buffer.from([1, 0, 0, 0, 0]), name])
    const { 'design.json': design = new Uint8Array(), ...rest } = entries()
    return Buffer.from(zipSync({ 'design.json': [design, { extra: { 28789: extra } }], ...rest }, { level: 6 }))
  }

  test('a ZIP with a file that its list does not name, another name at the file itself, or a second name', () => {
    expect(codesOf(packed())).toEqual([])
    expect(codesOf(hideInFront(packed()))).toEqual(['ambiguous'])
    const renamed = packed()
    renamed.write('designs', at(renamed, 'PK\x03\x04', 'design.json') + 30, 'latin1')
    expect(codesOf(renamed)).toEqual(['ambiguous design.json'])
    expect(codesOf(giveSecondName())).toEqual(['ambiguous design.json'])
    expect(codesOf(Buffer.concat([packed(), Buffer.from('PK')]))).toEqual(['ambiguous'])
  })

  test('a ZIP that states a shorter file than it holds, or another sum', () => {
    const short = packed()
    for (const [sign, field] of [
      ['PK\x01\x02', 24],
      ['PK\x03\x04', 22],
    ] as const) {
      const place = at(short, sign, 'README.txt') + field
      short.writeUInt32LE(short.readUInt32LE(place) - 1, place)
    }
    expect(codesOf(short)[0]).toMatch(/^(damaged|unreadable)/)
    const summed = packed()
    for (const [sign, field] of [
      ['PK\x01\x02', 16],
      ['PK\x03\x04', 14],
    ] as const) {
      summed.writeUInt32LE(1, at(summed, sign, 'README.txt') + field)
    }
    expect(codesOf(summed)).toEqual(['damaged README.txt'])
  })

  test('a TAR that goes on after a header without a name, after its end, out of its folder, or with a second size', () => {
    execFileSync('tar', ['--format=ustar', '-cf', path.join(place, 'plain.tar'), '-C', folder, '.'])
    const plain = readFileSync(path.join(place, 'plain.tar'))
    expect(codesOf(plain)).toEqual([])
    /** As GNU tar reads it: a header with its sum right. */
    const header = (name: string, size: number, fields: Readonly<Record<number, string>>) => {
      const block = Buffer.alloc(512)
      block.write(name, 0, 'latin1')
      block.write(`${size.toString(8).padStart(11, '0')}\0`, 124, 'latin1')
      block.write('ustar\x0000', 257, 'latin1')
      for (const [offset, text] of Object.entries(fields)) block.write(text, Number(offset), 'latin1')
      block.write('        ', 148, 'latin1')
      const sum = block.reduce((total, byte) => total + byte, 0)
      block.write(`${sum.toString(8).padStart(6, '0')}\0 `, 148, 'latin1')
      return block
    }
    const evil = (name: string) => Buffer.concat([header(name, 2, { 156: '0' }), Buffer.from('{}'.padEnd(512, '\0'))])
    const end = plain.length - plain.toReversed().findIndex((byte) => byte !== 0)
    const body = plain.subarray(0, Math.ceil(end / 512) * 512)
    const tail = Buffer.alloc(1024)
    const nameless = header('', 0, { 156: '5', 345: 'x' })
    expect(codesOf(Buffer.concat([body, nameless, evil('./design.json'), tail]))).toEqual(['ambiguous'])
    expect(codesOf(Buffer.concat([body, tail, evil('./design.json'), tail]))).toEqual(['ambiguous'])
    expect(codesOf(Buffer.concat([body, evil('../design.txt'), tail]))).toEqual(['ambiguous ../design.txt'])
    expect(codesOf(Buffer.concat([body, evil('/design.txt'), tail]))).toEqual(['ambiguous /design.txt'])
    const sized = Buffer.concat([header('pax', 9, { 156: 'x' }), Buffer.from('9 size=1\n'.padEnd(512, '\0'))])
    expect(codesOf(Buffer.concat([sized, body, tail]))).toEqual(['ambiguous pax'])
    const broken = Buffer.from(plain)
    broken[0] = 0x2f
    expect(codesOf(broken)).toEqual(['ambiguous'])
  })

  test('what general programs pack is read as before', () => {
    for (const [name, order] of [
      ['gnu.tar', ['--format=gnu']],
      ['pax.tar', ['--format=pax']],
      ['packed.tar.gz', ['-z']],
    ] as const) {
      execFileSync('tar', [...order, '-cf', path.join(place, name), path.basename(folder)], {
        cwd: path.dirname(folder),
      })
      expect([name, codesOf(readFileSync(path.join(place, name)))]).toEqual([name, []])
    }
    // Written to a pipe, sizes and sums stand behind each file.
    const streamed = path.join(place, 'streamed.zip')
    execFileSync('sh', ['-c', 'zip -q -r - . | cat > "$0"', streamed], { cwd: folder })
    expect(codesOf(readFileSync(streamed))).toEqual([])
  })
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
    expect(verify(list).output).toMatch(/SHA256SUMS\.sig: the signature does not match SHA256SUMS/)

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
