import 'server-only'
import { z } from 'zod'
import { PICTURE_VERSION } from '@/lib/artwork-picture'
import { readStoredJson } from '@/lib/engine'
import { hashJson } from '@/lib/review'
import type { TransactionClient } from '../store/client'

/** The row that names the kept file with the picture of a set. @param artworkKey  of the files with their roles */
export const makePictureKey = (artworkKey: string): string =>
  hashJson({ kind: 'artwork picture', artworkKey, version: PICTURE_VERSION })

/** The whole content of such a row, so that a row is found by its file too. */
export const writePictureContent = (sha256: string): string => JSON.stringify({ sha256 })

/** @returns the SHA-256 of the kept file; null where no picture was made yet */
export async function findPicture(tx: TransactionClient, artworkKey: string): Promise<string | null> {
  const row = await tx.artworkReading.findUnique({ where: { key: makePictureKey(artworkKey) } })
  return row === null ? null : readPictureContent(row.contentJson)
}

export const hasPicture = async (tx: TransactionClient, artworkKey: string): Promise<boolean> =>
  (await findPicture(tx, artworkKey)) !== null

/** Which of the files are pictures. */
export async function listPictures(tx: TransactionClient, hashes: readonly string[]): Promise<{ sha256: string }[]> {
  const rows = await tx.artworkReading.findMany({
    where: { part: 'picture', contentJson: { in: hashes.map(writePictureContent) } },
    select: { contentJson: true },
  })
  return rows.map(({ contentJson }) => ({ sha256: readPictureContent(contentJson) }))
}

const pictureContent = z.object({ sha256: z.string() })

const readPictureContent = (contentJson: string): string =>
  readStoredJson('where a picture of artwork is kept', pictureContent, contentJson).sha256
