/** Where the service says that it is, whatever name or proxy this page came by; null where it does not know. */
export const publicUrl = (): string | null =>
  document.querySelector('meta[name=public-url]')?.getAttribute('content') || null
