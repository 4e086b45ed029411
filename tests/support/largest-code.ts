import { qrCode } from '#src/drawings/qr-code.ts'

/** As long as an address on a sheet may be. */
export const LARGEST_ADDRESS = `https://bearings.example.org/#${'x'.repeat(270)}`

export const LARGEST_CODE = qrCode(LARGEST_ADDRESS)
