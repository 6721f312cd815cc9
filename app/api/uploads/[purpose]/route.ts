import { checkPackage, MAX_UPLOADED_PACKAGE_BYTES, packageInput } from '@/app/verify-package/check-package'
import {
  addArtwork,
  attachFile,
  getPackageStatus,
  getPackageTrust,
  importSheetFile,
  previewSheetFile,
} from '@/lib/data'
import { ACTS, previewSheetFileInput } from '@/lib/inputs'
import { streamed, uploadRoute, whole } from '@/lib/server'

/** Far above a matrix or a shelf with all the rows that it may have. */
const MOST_SHEET_BYTES = 4 * 1024 * 1024

/** Files on their way in, by what they are for. */
export const POST = uploadRoute({
  artwork: streamed(ACTS.addArtwork.input, addArtwork),
  attachment: streamed(ACTS.attachFile.input, attachFile),
  'sheet-preview': whole(previewSheetFileInput, MOST_SHEET_BYTES, previewSheetFile, { turn: 'calculations' }),
  'sheet-import': whole(ACTS.importSheetFile.input, MOST_SHEET_BYTES, importSheetFile, { turn: 'calculations' }),
  'package-check': whole(
    packageInput,
    MAX_UPLOADED_PACKAGE_BYTES,
    async (actor, input) =>
      checkPackage(input, await getPackageTrust(actor), (revisionId) => getPackageStatus(actor, revisionId)),
    { turn: 'documents' },
  ),
})
