import { qrCode } from '#src/drawings/qr-code.ts'

/* The second script of the page, in the same document behind the first: the first drawing does not wait for it. */

Object.assign(globalThis, { qrCode })
