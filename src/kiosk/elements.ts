/** An element that the page is written with. */
export function element<T extends HTMLElement>(id: string, kind: new () => T): T {
  const found = document.getElementById(id)
  if (found instanceof kind) return found
  throw new Error(`the page has no ${kind.name} #${id}`)
}

/** A field of a form by its name. */
export function field(form: HTMLFormElement, name: string): HTMLInputElement {
  const found = form.elements.namedItem(name)
  if (found instanceof HTMLInputElement) return found
  throw new Error(`the form has no field ${name}`)
}

/** What is chosen of buttons that go by one name. */
export const chosen = (form: HTMLFormElement, name: string): string => String(new FormData(form).get(name) ?? '')

/** A new element with text in it, which is never read as markup. */
export function made<Name extends keyof HTMLElementTagNameMap>(name: Name, text = ''): HTMLElementTagNameMap[Name] {
  const fresh = document.createElement(name)
  fresh.textContent = text
  return fresh
}

/** Fills a list with a line for each text. */
export function fillList(list: HTMLElement, texts: readonly string[]): void {
  list.replaceChildren(...texts.map((text) => made('li', text)))
}
