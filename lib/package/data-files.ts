import { CAUTIONS, makeResultsDocument, tallyVerdicts } from '@/lib/engine'
import { listAskedRoles } from '@/lib/engine/catalogue'
import { fillWhatHelps, readWhatHelps } from '@/lib/engine/catalogue/prose'
import {
  getNeedState,
  getStoredDesign,
  listDifferences,
  listItemStates,
  listLoosenedUses,
  NEED_STATE_WORDS,
  type ReviewThread,
} from '@/lib/review'
import { type PackageContent, type PackageFile, SIGNED_CONTENT_PATH } from './content'
import { hashBytes } from './file-hash'
import { FLEX_TESTS_INDEX_PATH, makeFlexTestFiles } from './flex-tests'
import { makeReleaseFile } from './release-file'
import { makeSchemaFiles } from './schemas'
import { makeStampFiles, TIME_STAMP_PATH } from './stamped-release'
import { makeTrailFile } from './trail-file'

const encode = (text: string) => new TextEncoder().encode(text)

function makeJsonFile(path: string, value: unknown): PackageFile {
  return { path, bytes: encode(`${JSON.stringify(value, null, 2)}\n`) }
}

/** The machine-readable files of a package, artwork included. */
export function makeDataFiles(content: PackageContent): PackageFile[] {
  const { snapshot } = content
  const files: PackageFile[] = [
    // As it was stored and signed, in the format of its day.
    makeJsonFile('design.json', getStoredDesign(snapshot)),
    makeJsonFile('release.json', makeReleaseFile(content)),
    makeJsonFile('results.json', makeResultsDocument(snapshot.evaluation, snapshot.evaluation?.results ?? null)),
    makeJsonFile('checklist.json', {
      cautions: CAUTIONS,
      items: listItemStates(snapshot).map(
        ({ item, result, state, decidedBy, basis, answer, waiver, setAside, follows }) => ({
          ...item,
          state,
          decidedBy,
          basis,
          askedOf: listAskedRoles(item.id),
          whatHelps:
            result?.verdict === 'fails' || result?.verdict === 'thin-margin'
              ? fillWhatHelps(readWhatHelps(item.id), result.outcomes)
              : [],
          headline: result?.headline ?? null,
          verdict: result?.verdict ?? null,
          followsFrom: follows.map(({ id }) => id),
          answer,
          waiver,
          setAside,
        }),
      ),
      counts: tallyVerdicts(snapshot.evaluation?.results.items ?? []),
      waivers: snapshot.waivers,
      settings: snapshot.settings,
      template: snapshot.template,
    }),
    makeJsonFile('threads.json', { threads: snapshot.threads.map(toThreadInFile) }),
    makeJsonFile('actions.json', { actions: snapshot.actions }),
    makeJsonFile('signatures.json', {
      signatures: snapshot.signatures.map(({ substanceHash: _, ...signature }) => signature),
      declarations: snapshot.declarations,
      takenOffThisRelease: snapshot.takenOff,
      authors: snapshot.authors,
      reviews: snapshot.reviews,
      signOffPolicy: snapshot.signOffPolicy,
      differences: listDifferences(snapshot).map(({ saidById: _, ...difference }) => difference),
      loosened: listLoosenedUses(snapshot, content.release.byUserId ?? null),
    }),
    ...(content.minutes === null
      ? []
      : [
          makeJsonFile('meetings.json', { meetings: content.minutes.meetings }),
          makeJsonFile('needs.json', {
            needs: content.minutes.needs.map(({ version: _, ...need }) => ({
              ...need,
              state: NEED_STATE_WORDS[getNeedState(need, content.release.at.slice(0, 10))],
            })),
          }),
        ]),
    ...makeArtworkFiles(content),
    ...makeFlexTestFiles(content),
    ...content.signedParts,
    ...makeStampFiles(content.release.stamped),
    ...makeSchemaFiles(getStoredDesign(snapshot), content.minutes !== null),
  ]
  if (content.signedContent !== null) {
    files.push({ path: SIGNED_CONTENT_PATH, bytes: encode(content.signedContent) })
  }
  return files
}

/** The trail up to the release itself. */
export function makeTrailDataFile({ trail, checkpoints }: PackageContent): PackageFile {
  return makeJsonFile('trail.json', makeTrailFile(trail, true, checkpoints))
}

/** The file keeps the names that readers of packages know: there `companyId` and `companyName` are the opener's. */
function toThreadInFile({ openedByCompanyId, openedByCompanyName, ...thread }: ReviewThread) {
  return { ...thread, companyId: openedByCompanyId, companyName: openedByCompanyName }
}

/**
 * Artwork under names that every system can unpack: numbered, with what is not plain in the name replaced. The names as
 * uploaded stand in `artwork/index.json`.
 */
function makeArtworkFiles(content: PackageContent): PackageFile[] {
  const bytesByHash = new Map(content.artwork.map(({ sha256, bytes }) => [sha256, bytes]))
  const listed = [...content.snapshot.artwork].sort((a, b) =>
    a.fileName === b.fileName ? (a.sha256 < b.sha256 ? -1 : 1) : a.fileName < b.fileName ? -1 : 1,
  )
  const files = listed.map((file, index): PackageFile & { fileName: string; sha256: string } => {
    const bytes = bytesByHash.get(file.sha256)
    if (bytes === undefined) throw new RangeError(`the bytes of artwork ${file.fileName} are missing`)
    if (hashBytes(bytes) !== file.sha256) {
      throw new RangeError(`artwork ${file.fileName} does not have the content that was recorded`)
    }
    const number = String(index + 1).padStart(3, '0')
    const plain = file.fileName.replaceAll(/[^A-Za-z0-9._-]+/g, '-').slice(-100)
    return { path: `artwork/${number}-${plain}`, bytes, fileName: file.fileName, sha256: file.sha256 }
  })
  const index = files.map(({ path, fileName, sha256, bytes }) => ({ path, fileName, sha256, sizeBytes: bytes.length }))
  return [...files.map(({ path, bytes }) => ({ path, bytes })), makeJsonFile('artwork/index.json', { files: index })]
}

/** A page of plain text for the person who unpacks the archive. */
export function makeReadme(
  content: PackageContent,
  keyFingerprint: string,
  dataFiles: readonly PackageFile[],
): PackageFile {
  const { snapshot, edition, release } = content
  const lines = [
    `Release package of ${snapshot.projectName}, revision ${snapshot.label}`,
    `Released ${release.at} by ${release.byName}, ${content.workspaceName}`,
    edition.kind === 'team' ? 'Edition: team' : `Edition: for ${edition.companyName}`,
    '',
    'report.pdf             the review, to read and to file (tagged, and written as PDF/A-2b, ISO 19005-2; tested against its rules one by one, by no validator)',
    'drawing/               drawing sheets: layer table, sections, bend call-outs (PDF, and SVG of each)',
    'design.json            the design document',
    'results.json           results, each item calculated, typed, stated or judged, with the version of the engine',
    'checklist.json         items, answers and waivers',
    'release.json           the decision, for document systems: number, revision, status, approvers, dates, what it replaces',
    'actions.json           what is still to be done, by whom and by when',
    ...(content.minutes === null
      ? []
      : [
          'meetings.json          minutes of meetings',
          'needs.json             what the part must do, and what was shown of it',
        ]),
    'threads.json           comments and engineering queries',
    'signatures.json        authors, reviews, signatures, fabricator declarations with conditions, and the sign-off policy',
    'artwork/               artwork as uploaded; index.json has the original names',
    ...(dataFiles.some(({ path }) => path === FLEX_TESTS_INDEX_PATH)
      ? [
          'flex-tests/            own flex tests that lives rest on: specimens as entered; index.json has what they give',
        ]
      : []),
    'trail.json             who did what up to the release itself, hash-chained (an extract of the whole trail)',
    'signed-parts/          proves which design and artwork were signed: see RECIPES below',
    ...(content.signedContent === null ? [] : ['signed-content.json    the canonical form (RFC 8785) that was signed']),
    'schemas/               the form of each JSON file (JSON Schema 2020-12), for any validator',
    ...(dataFiles.some(({ path }) => path === TIME_STAMP_PATH)
      ? [
          'time-stamp/            a trusted time stamp (RFC 3161) of the key’s signature on what was released: see TIME STAMP below',
        ]
      : []),
    'manifest.json          SHA-256 of each file; signed in manifest.sig (Ed25519, RFC 8032)',
    'SHA256SUMS             the same sums for general tools; signed in SHA256SUMS.sig (Ed25519, 64 bytes)',
    'verifying-key.pem      public key of both signatures; compare its fingerprint by another channel:',
    `                       ${keyFingerprint}`,
    '',
    ...VERIFYING,
    '',
    ...RECIPES,
    '',
    ...makeStampLines(content),
    '',
    ...CAUTIONS.flatMap((caution) => wrap(caution, 90)),
    '',
  ]
  return { path: 'README.txt', bytes: encode(lines.join('\n')) }
}

/** How anybody checks a package with tools that every system has; a test runs the lines as they stand here. */
const VERIFYING: readonly string[] = [
  'To verify without the program that wrote it, in the unpacked folder (GNU coreutils; OpenSSL 3):',
  '',
  '  openssl pkeyutl -verify -pubin -inkey verifying-key.pem -rawin -in SHA256SUMS -sigfile SHA256SUMS.sig',
  '  sha256sum --check --strict SHA256SUMS',
  '',
  'The first shows that the holder of the key signed the list, the second that each file is as listed. Neither detects',
  'a file that was added: compare the list with the folder. The fingerprint of the key in the folder is printed by',
  '',
  '  openssl pkey -pubin -in verifying-key.pem -outform DER | sha256sum',
]

/** How each hash in the package is made; a test runs the lines as they stand here. */
const RECIPES: readonly string[] = [
  'RECIPES. All hashes are SHA-256, in hexadecimal.',
  '',
  '  What was signed ("contentHash" of each signature): of signed-content.json, byte for byte, where the edition holds it.',
  '  Its parts: each part of it is hashed in its canonical form (RFC 8785); signed-parts/SHA256SUMS lists them, and the',
  '  hash of that list is "partsRoot" in the trail’s record of the signature. The edition holds the parts that are built:',
  '',
  '    cd signed-parts && sha256sum --check --ignore-missing SHA256SUMS && sha256sum SHA256SUMS',
  '',
  '  signed-parts/design.json is design.json in that form. Artwork: of each file, byte for byte; signed-parts/artwork.json.',
  '  Trail: of the record’s canonical form without its own hash, with the hash of the record before as "previousHash".',
  '  Key: of its DER form, as above.',
  '',
  'SIGNATURES. One key signs, that of the installation; no person holds one. A person’s signature is an entry that the',
  'installation made after that person had signed in and confirmed who they are; it is as good as the installation and its',
  'accounts are kept. Compare the fingerprint of the key with the one that the sender publishes.',
  '',
  'STATUS. This package cannot say whether the revision is still in force. Ask the sender for a status list, then:',
  '',
  '  npm run package:verify -- package.zip --status status.json',
]

/** How the time stamp is checked with OpenSSL; or that there is none, and why. */
function makeStampLines({ release }: PackageContent): string[] {
  const token = release.stamped?.token
  if (token === undefined || token.response === null) {
    return [`TIME STAMP. This package has no trusted time stamp: ${token?.because ?? 'none was asked for'}.`]
  }
  return [
    'TIME STAMP. An authority says when it saw the signature of the key on what was released (RFC 3161). With its root certificate:',
    '',
    '  openssl pkeyutl -verify -pubin -inkey verifying-key.pem -rawin -in time-stamp/statement.txt -sigfile time-stamp/statement.sig',
    '  openssl ts -verify -data time-stamp/statement.sig -in time-stamp/answer.tsr -CAfile ca.pem',
  ]
}

function wrap(text: string, width: number): string[] {
  const lines: string[] = []
  let line = ''
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + word.length + 1 > width) {
      lines.push(line)
      line = ''
    }
    line = line === '' ? word : `${line} ${word}`
  }
  return line === '' ? lines : [...lines, line]
}
