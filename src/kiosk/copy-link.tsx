import { useState } from 'preact/hooks'
import { fragmentOf } from '#src/kiosk/job/address.ts'
import type { Job } from '#src/kiosk/job/job.ts'
import { SHELL } from '#src/words/kiosk/page.ts'

/** Copies the address with the whole job; where the browser does not let a page copy, it shows it to copy by hand. */
export function CopyLink({ job }: { readonly job: Job }) {
  const address = `${location.origin}${location.pathname}#${fragmentOf(job)}`
  const [told, setTold] = useState<{ readonly of: string; readonly isCopied: boolean }>()
  const copy = () => {
    const copied = navigator.clipboard?.writeText(address) ?? Promise.reject(new Error('no clipboard'))
    copied.then(
      () => setTold({ of: address, isCopied: true }),
      () => setTold({ of: address, isCopied: false }),
    )
  }
  return (
    <>
      <button type="button" onClick={copy}>
        {SHELL.copy}
      </button>
      <span role="status">
        {told?.of === address && told.isCopied && SHELL.copied}
        {told?.of === address && !told.isCopied && (
          <label class="by-hand">
            {SHELL.copyByHand} <input type="text" readOnly value={address} />
          </label>
        )}
      </span>
    </>
  )
}
